package tramontane.invented;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Rotors by the way air goes through them, in dimensionless figures: flow φ = Q/(π/4 D² u), pressure ψ = Δp/(ρ/2 u²), both with the
 * tip speed u; of cross-flow rotors φ = Q/(D L u). The figures are from memory of handbooks (B. Eck, "Fans", 1973; T. Carolus,
 * "Ventilatoren", 2013) and of what data sheets of small air movers show, read on fan static pressure.
 */
enum Rotor {
    /** Propeller in a short duct. */
    AXIAL("axial", 37, 0.52, 60),
    /** Diagonal rotor. */
    MIXED("mixed-flow", 35, 0.56, 55),
    /** Drum rotor with blades curved forward, in a scroll. */
    FORWARD("centrifugal", 36, 0.42, 28),
    /** Blades curved backward, without a scroll. */
    BACKWARD("centrifugal", 34, 0.60, 50),
    /** Long drum that air crosses twice. */
    CROSS("cross-flow", 35, 0.22, 9);

    /** Diameter at which half of the efficiency of very large rotors is reached, m; fitted by eye to 4 % at 20 mm. */
    private static final double HALF = 0.1;

    private static final double EXPONENT = 1.3;

    private final String type;
    private final double specificNoise;
    private final double efficiency;
    private final double tip;

    Rotor(String type, double specificNoise, double efficiency, double tip) {
        this.type = type;
        this.specificNoise = specificNoise;
        this.efficiency = efficiency;
        this.tip = tip;
    }

    /** The type as a part names it. */
    String type() {
        return type;
    }

    /** Specific level of A-weighted sound power, dB, with flow in m³/s and pressure in Pa. */
    double specificNoise() {
        return specificNoise;
    }

    /** Highest tip speed, m/s. */
    double tip() {
        return tip;
    }

    /** Overall static efficiency at the best point of an ordinary one with a rotor of that diameter, m. */
    double efficiency(double diameter) {
        double part = StrictMath.pow(diameter / HALF, EXPONENT);
        return efficiency * part / (part + 1);
    }

    /**
     * Shape of one family of rotors.
     *
     * @param flow     share of the free delivery at each point, 0 to 1
     * @param pressure share of the pressure at no flow
     * @param shaft    shaft power over its highest
     */
    record Shape(double[] flow, double[] pressure, double[] shaft) {

        /** The point with the most power in the air. */
        int best() {
            int best = 0;
            for (int i = 1; i < flow.length; i++) {
                best = flow[i] * pressure[i] > flow[best] * pressure[best] ? i : best;
            }
            return best;
        }
    }

    /** Flow coefficient at free delivery; {@code slender} is depth over rotor diameter. */
    double flowCoefficient(double diameter, double slender) {
        double small = 1 - 0.3 * StrictMath.exp(-diameter / 0.025); // thick boundary layers, wide tip gaps
        return small * switch (this) {
            case AXIAL -> 0.20 + 0.08 * Math.min(slender, 0.5);
            case MIXED -> 0.25;
            case FORWARD -> 0.55 * Math.min(slender, 1);
            case BACKWARD -> 0.16 + 0.2 * Math.min(slender, 0.5);
            case CROSS -> 0.85;
        };
    }

    /** Pressure coefficient at no flow. */
    double pressureCoefficient(double diameter, double slender) {
        double small = 1 - 0.35 * StrictMath.exp(-diameter / 0.025);
        return small * switch (this) {
            case AXIAL -> 0.24 + 0.5 * Math.min(slender, 0.5);
            case MIXED -> 0.80;
            case FORWARD -> 2.0;
            case BACKWARD -> 1.05;
            case CROSS -> 2.6;
        };
    }

    /**
     * A shape with its own scatter.
     *
     * @param dips whether it stalls with a dip left of a peak
     */
    Shape shape(boolean dips, Random random) {
        double bend = random.nextDouble();
        double dip = 0.50 + 0.12 * random.nextDouble();
        double rise = 0.02 + 0.06 * random.nextDouble();
        double[] flow = dips ? new double[] {0, 0.12, 0.24, 0.32, DIP, 0.46, PEAK, 0.64, 0.72, 0.80, 0.90, 1}
                : new double[] {0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1};
        List<double[]> points = new ArrayList<>();
        for (double x : flow) {
            points.add(new double[] {dips ? stalling(x, dip, dip + rise) : falling(x, bend), shaft(x)});
        }
        return new Shape(flow, points.stream().mapToDouble(point -> point[0]).toArray(),
                points.stream().mapToDouble(point -> point[1]).toArray());
    }

    private static final double DIP = 0.38;

    private static final double PEAK = 0.55;

    private static double stalling(double x, double dip, double peak) {
        if (x < DIP) {
            return dip + (1 - dip) * StrictMath.pow(1 - x / DIP, 1.6);
        }
        if (x < PEAK) {
            double s = (x - DIP) / (PEAK - DIP);
            return dip + (peak - dip) * s * s * (3 - 2 * s);
        }
        return peak * (1 - StrictMath.pow((x - PEAK) / (1 - PEAK), 1.7));
    }

    private double falling(double x, double bend) {
        double line = switch (this) {
            case AXIAL -> 0.55 + 0.15 * bend;
            case MIXED -> 0.3 + 0.15 * bend;
            case FORWARD -> 0.2 + 0.15 * bend;
            case BACKWARD -> 0.08 + 0.12 * bend;
            case CROSS -> 0.35 + 0.2 * bend;
        };
        double power = this == AXIAL ? 3 : 2.3;
        return 1 - line * x - (1 - line) * StrictMath.pow(x, power);
    }

    private double shaft(double x) {
        return switch (this) {
            case AXIAL -> 1 - 0.22 * x * x * x;
            case MIXED -> 0.92 + 0.16 * x - 0.12 * x * x * x;
            case FORWARD -> 0.4 + 0.6 * x;
            case BACKWARD -> 0.6 + 0.9 * x - 0.75 * x * x;
            case CROSS -> 0.5 + 0.5 * x;
        };
    }
}
