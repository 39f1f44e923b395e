package tramontane.thermal.internal;

import tramontane.physics.AirState;
import tramontane.physics.RootSearch;
import tramontane.physics.heat.FlatPlate;
import tramontane.physics.heat.NaturalConvection;
import tramontane.physics.heat.Radiation;
import tramontane.thermal.ThermalState;

/**
 * Heat through one wall, from the air of a bay to outside.
 *
 * <p>Inside: natural convection, joined with a flat plate along which the air of the bay goes, by the third power of both (S. W.
 * Churchill, "A comprehensive correlating equation for laminar, assisting, forced and free convection", AIChE J. 23 (1977)
 * 10-16). The sheet: conduction. Outside: natural convection, radiation to surroundings at the temperature of the air outside,
 * and sunshine. Faces inside do not radiate to each other. Properties of air are those at the mean of face and air.
 */
final class WallModel {

    /** Difference of temperatures to which its faces are found, K. */
    private static final double EXACT = 1e-12;
    private static final double STEP = 1e-3;

    private final EnclosureSection.Wall wall;
    private final AirState outside;
    private final double sun;

    /**
     * A wall.
     *
     * @param wall    what is stated of it
     * @param outside air outside
     * @param sun     irradiance, W/m²
     */
    WallModel(EnclosureSection.Wall wall, AirState outside, double sun) {
        this.wall = wall;
        this.outside = outside;
        this.sun = wall.sunlit() * wall.absorptance() * sun;
    }

    /** Temperatures of its faces and heat per area. */
    private record Faces(double inner, double outer, double flux) {
    }

    /**
     * Heat that leaves the bay, W.
     *
     * @param air      temperature of the bay, K
     * @param velocity of its air along the wall, m/s
     */
    double heat(double air, double velocity) {
        return wall.area() * faces(air, velocity).flux();
    }

    /** Slope of the heat with the temperature of the bay, W/K. */
    double slope(double air, double velocity) {
        return Math.max(0, (heat(air + STEP, velocity) - heat(air - STEP, velocity)) / (2 * STEP));
    }

    ThermalState.WallState state(String bay, double air, double velocity) {
        Faces faces = faces(air, velocity);
        return new ThermalState.WallState(bay, wall.area() * faces.flux(), faces.inner(), faces.outer());
    }

    /** The outer face is where what comes through the sheet equals what leaves; both change with it one way only. */
    private Faces faces(double air, double velocity) {
        double ambient = outside.temperature();
        double low = Math.min(air, ambient) - 1;
        double high = Math.max(air, ambient) + 1;
        while (excess(high, air, velocity) > 0) {
            high += 2 * (high - ambient);
        }
        double outer = RootSearch.between(face -> excess(face, air, velocity), low, high, excess(low, air, velocity),
                excess(high, air, velocity), EXACT, 0).at();
        double flux = leaves(outer);
        return new Faces(outer + flux * wall.resistance(), outer, flux);
    }

    /** What comes to the outer face less what leaves it, W/m². */
    private double excess(double outer, double air, double velocity) {
        double flux = leaves(outer);
        double inner = outer + flux * wall.resistance();
        return inside(air, inner, velocity) - flux;
    }

    /** What leaves the outer face, W/m². */
    private double leaves(double outer) {
        double ambient = outside.temperature();
        return natural(outer, ambient, outer > ambient) * (outer - ambient)
                + wall.emissivity() * Radiation.STEFAN_BOLTZMANN * (pow4(outer) - pow4(ambient)) - sun;
    }

    private static double pow4(double t) {
        return t * t * t * t;
    }

    /** What comes from the air inside to the inner face, W/m². */
    private double inside(double air, double inner, double velocity) {
        // a lid that is colder than the air below it stirs that air as one that is warmer than the air above it does
        double free = natural(inner, air, inner < air);
        double forced = 0;
        if (velocity > 0) {
            AirState film = film(inner, air);
            double length = Math.sqrt(wall.area());
            forced = FlatPlate.mean(velocity * length / film.kinematicViscosity(), film.prandtl()) * film.conductivity() / length;
        }
        return Math.cbrt(free * free * free + forced * forced * forced) * (air - inner);
    }

    /** Coefficient of natural convection, W/(m² K). */
    private double natural(double face, double air, boolean stirs) {
        AirState film = film(face, air);
        double length = wall.height();
        double rayleigh = NaturalConvection.rayleigh(Math.abs(face - air), length, film.temperature(), film.kinematicViscosity(),
                film.conductivity() / (film.density() * film.specificHeat()));
        double nusselt = switch (wall.facing()) {
            case SIDE -> NaturalConvection.verticalPlate(rayleigh, film.prandtl());
            case UP -> stirs ? NaturalConvection.hotFaceUp(rayleigh) : NaturalConvection.hotFaceDown(rayleigh);
            case DOWN -> stirs ? NaturalConvection.hotFaceDown(rayleigh) : NaturalConvection.hotFaceUp(rayleigh);
        };
        return nusselt * film.conductivity() / length;
    }

    private AirState film(double face, double air) {
        double mean = Math.max(outside.temperature() - 80, Math.min(outside.temperature() + 600, 0.5 * (face + air)));
        return mean == outside.temperature() ? outside : outside.heatedTo(mean);
    }
}
