package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.List;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.physics.Air;
import tramontane.physics.units.QuantityKind;

/** What is worth saying of a flow that was found, whatever kind of passage it goes through. */
final class Remarks {

    /** Velocity above which air is not to be taken as incompressible: Mach 0.3, where density changes by some 5 %. */
    private static final double FAST = 100;
    private static final double VISCOSITY = Air.viscosity(293.15);

    private Remarks() {
    }

    /** Reynolds number of a flow, with the viscosity of air of 20 °C. */
    static double reynolds(OperatingPoint.PassageFlow flow, double area, double diameter) {
        return Math.abs(flow.massFlow()) * diameter / (area * VISCOSITY);
    }

    /** A caution where air goes too fast for laws of incompressible flow. */
    static List<Finding> speed(OperatingPoint.PassageFlow flow, double area) {
        double velocity = Math.abs(flow.flow()) / area;
        List<Finding> findings = new ArrayList<>();
        if (velocity > FAST) {
            findings.add(Finding.caution(flow.passage(), "air goes through passage " + flow.passage() + " at ",
                    new Amount(velocity, QuantityKind.VELOCITY), ", too fast to be taken as incompressible")
                    .remedy("check its size and units").source("common practice: Mach 0.3"));
        }
        return findings;
    }
}
