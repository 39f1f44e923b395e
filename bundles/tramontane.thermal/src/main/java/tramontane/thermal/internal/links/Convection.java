package tramontane.thermal.internal.links;

import java.util.function.DoubleUnaryOperator;
import tramontane.analysis.AirStream;
import tramontane.physics.heat.Channels;
import tramontane.physics.heat.CrossFlow;
import tramontane.physics.heat.FlatPlate;

/** Heat transfer coefficients of bodies in an air stream, W/(m² K): NaN where the velocity is, from 0 at rest. */
final class Convection {

    /** Least Péclet number of the relation for cylinders. */
    private static final double LEAST_PECLET = 0.2;
    /** Developed laminar flow between plates of one temperature. */
    private static final double BOTH_WALLS = 7.541;
    /** The same where the other wall gives off no heat. */
    private static final double ONE_WALL = 4.861;

    private Convection() {
    }

    private static double coefficient(double size, double velocity, AirStream air, DoubleUnaryOperator nusselt) {
        return Double.isNaN(velocity) ? Double.NaN
                : nusselt.applyAsDouble(velocity * size / air.kinematicViscosity()) * air.conductivity() / size;
    }

    /**
     * Mean along a flat plate.
     *
     * @param length   along the flow, m
     * @param velocity m/s
     */
    static double alongPlate(double length, double velocity, AirStream air) {
        return coefficient(length, velocity, air, reynolds -> FlatPlate.mean(reynolds, air.prandtl()));
    }

    /**
     * Mean round a cylinder across the flow. Below its range the relation has an end that stays without any flow; there Nu is
     * taken in proportion to velocity.
     *
     * @param diameter m
     * @param velocity m/s
     */
    static double acrossCylinder(double diameter, double velocity, AirStream air) {
        double least = LEAST_PECLET / air.prandtl();
        return coefficient(diameter, velocity, air,
                reynolds -> Math.min(1, reynolds / least) * CrossFlow.cylinder(Math.max(reynolds, least), air.prandtl()));
    }

    /**
     * Mean along a channel between boards. Where one wall only gives off heat, the developed part is that of one wall: 4.86 for
     * 7.54 between plates (R. K. Shah, A. L. London, Laminar Flow Forced Convection in Ducts, 1978, from memory).
     *
     * @param gap       distance of the boards, m
     * @param width     width of the boards across the flow, m
     * @param length    along the flow, m
     * @param bothWalls whether both walls give off heat, else one
     * @param velocity  in the channel, m/s
     */
    static double inChannel(double gap, double width, double length, boolean bothWalls, double velocity, AirStream air) {
        double diameter = 2 * gap * width / (gap + width);
        double aspect = Math.min(gap, width) / Math.max(gap, width);
        double less = bothWalls ? 0 : (1 - ONE_WALL / BOTH_WALLS) * Channels.developedEvenTemperature(aspect);
        return coefficient(diameter, velocity, air,
                reynolds -> Channels.mean(reynolds, air.prandtl(), diameter / length, aspect) - less);
    }
}
