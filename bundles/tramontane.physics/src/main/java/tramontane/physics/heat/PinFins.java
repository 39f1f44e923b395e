package tramontane.physics.heat;

import static tramontane.physics.heat.Inputs.notNegative;
import static tramontane.physics.heat.Inputs.positive;

/**
 * Banks of round pins across the flow: A. Zukauskas, "Heat transfer from tubes in crossflow", in Handbook of Single-Phase
 * Convective Heat Transfer (1987), as in Y. A. Cengel, Heat and Mass Transfer, table 7-2, from memory; fewer than 20 rows as in
 * F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer, ch. 7.6 (Cengel's table 7-3 is up to 1 % above it from five
 * rows on). Re = u D/ν and Nu = h D/k on the diameter D and the velocity in the narrowest section, h to the logarithmic mean of the
 * differences before and behind; properties at the mean of surface and air, so without the factor for the wall. Pr 0.7 to 500, Re 0 to 2e6 (few
 * measurements below 10). Spread some 15 %.
 *
 * <p>The pieces of the relation do not meet. In air Nu jumps by -8 %, +27 %, -4 % at Re 100, 1000, 2e5 for pins in line; staggered by
 * +27 % at 500, by -14 % (pitches 1:2) to +13 % (2:1) at 1000, by +2 % at 2e5. Within 25 % of where they change Nu runs straight in
 * the logarithms from one to the other, so that it is continuous and rises; it stays within 14.5 % of the pieces.
 *
 * <p>The effect of staggered pitches, (St/Sl)^(1/5), is held at St/Sl 2 (Zukauskas: 0.40 in place of 0.35 (St/Sl)^(1/5)) and, so that Nu
 * still rises at Re 1000, at 1/2. In slow flow, Re below 1000, few staggered rows do better than their factor, one by 30 % (Zukauskas,
 * Advances in Heat Transfer 8 (1972) 93-160).
 *
 * @param staggered    whether every second row stands in the gaps of the one before
 * @param across       pins per row
 * @param rows         rows along the flow
 * @param diameter     D, m
 * @param height       H, m
 * @param pitchAcross  St, between pins of a row, m
 * @param pitchAlong   Sl, between rows, m
 * @param conductivity of the pins, W/(m K)
 */
public record PinFins(boolean staggered, int across, int rows, double diameter, double height, double pitchAcross, double pitchAlong,
        double conductivity) {

    private static final double[] COUNTS = {1, 2, 3, 4, 5, 7, 10, 13, 16, 20};
    private static final double[] IN_LINE = {0.70, 0.80, 0.86, 0.90, 0.92, 0.95, 0.97, 0.98, 0.99, 1};
    private static final double[] STAGGERED = {0.64, 0.76, 0.84, 0.89, 0.92, 0.95, 0.97, 0.98, 0.99, 1};
    /** How far from where pieces change they are joined. */
    private static final double JOIN = 1.25;

    public PinFins {
        if (across < 1 || rows < 1) {
            throw new IllegalArgumentException("a bank needs pins, got " + across + " across and " + rows + " rows");
        }
        positive("diameter", diameter);
        positive("height", height);
        positive("conductivity", conductivity);
        positive("pitch across", pitchAcross);
        positive("pitch along", pitchAlong);
        if (!(pitchAcross > diameter) || !(staggered ? diagonal(pitchAcross, pitchAlong) > diameter : pitchAlong > diameter)) {
            throw new IllegalArgumentException("pins of " + diameter + " m leave no room at pitches of " + pitchAcross + " and " + pitchAlong + " m");
        }
    }

    private static double diagonal(double across, double along) {
        return Math.hypot(along, across / 2);
    }

    /** Velocity in the narrowest section over that before the bank. */
    public double contraction() {
        double straight = pitchAcross / (pitchAcross - diameter);
        return staggered ? Math.max(straight, pitchAcross / (2 * (diagonal(pitchAcross, pitchAlong) - diameter))) : straight;
    }

    /** Mean Nusselt number of the bank at a Reynolds number on diameter and largest velocity, 0 to 2e6. */
    public double nusselt(double reynolds, double prandtl) {
        return rowFactor(staggered, rows) * deep(staggered, pitchAcross / pitchAlong, reynolds, prandtl);
    }

    /** Nusselt number of a bank over that of one with many rows. */
    static double rowFactor(boolean staggered, int rows) {
        double[] factors = staggered ? STAGGERED : IN_LINE;
        if (rows >= COUNTS[COUNTS.length - 1]) {
            return 1;
        }
        int i = 0;
        while (COUNTS[i + 1] < rows) {
            i++;
        }
        return factors[i] + (factors[i + 1] - factors[i]) * (rows - COUNTS[i]) / (COUNTS[i + 1] - COUNTS[i]);
    }

    private static double deep(boolean staggered, double ratio, double reynolds, double prandtl) {
        notNegative("Reynolds number", reynolds);
        positive("Prandtl number", prandtl);
        double[] ends = staggered ? new double[] {500, 1000, 2e5} : new double[] {100, 1000, 2e5};
        for (int i = 0; i < ends.length; i++) {
            if (reynolds < ends[i] / JOIN) {
                return piece(staggered, i, ratio, reynolds, prandtl);
            }
            if (reynolds <= ends[i] * JOIN) {
                double low = Math.log(piece(staggered, i, ratio, ends[i] / JOIN, prandtl));
                double high = Math.log(piece(staggered, i + 1, ratio, ends[i] * JOIN, prandtl));
                double share = Math.log(reynolds * JOIN / ends[i]) / Math.log(JOIN * JOIN);
                return Math.exp(low + (high - low) * share);
            }
        }
        return piece(staggered, ends.length, ratio, reynolds, prandtl);
    }

    private static double piece(boolean staggered, int i, double ratio, double reynolds, double prandtl) {
        double spread = staggered && i >= 2 ? Math.pow(Math.max(0.5, Math.min(2, ratio)), 0.2) : 1;
        double factor = spread * (staggered ? new double[] {1.04, 0.71, 0.35, 0.031} : new double[] {0.9, 0.52, 0.27, 0.033})[i];
        double power = (staggered ? new double[] {0.4, 0.5, 0.6, 0.8} : new double[] {0.4, 0.5, 0.63, 0.8})[i];
        return factor * Math.pow(reynolds, power) * Math.pow(prandtl, i == 3 && !staggered ? 0.4 : 0.36);
    }

    /**
     * Heat transfer coefficient, W/(m² K).
     *
     * @param velocity           before the bank, m/s
     * @param kinematicViscosity m²/s
     * @param airConductivity    W/(m K)
     */
    public double coefficient(double velocity, double kinematicViscosity, double airConductivity, double prandtl) {
        double reynolds = notNegative("velocity", velocity) * contraction() * diameter / positive("kinematic viscosity", kinematicViscosity);
        return nusselt(reynolds, prandtl) * positive("conductivity of air", airConductivity) / diameter;
    }

    /**
     * Heat per kelvin between base and the mean of the air, W/K: h [N π D H η + (A - N π D²/4)], A the base of the pins by their
     * pitches. The pins' tips count as a quarter of a diameter of height (corrected length).
     *
     * @param coefficient h, W/(m² K)
     */
    public double conductance(double coefficient) {
        double length = height + diameter / 4;
        double efficiency = Fin.efficiency(Fin.pin(coefficient, conductivity, diameter) * length);
        double pins = (double) across * rows;
        double base = pins * (pitchAcross * pitchAlong - Math.PI / 4 * diameter * diameter);
        return coefficient * (pins * Math.PI * diameter * length * efficiency + base);
    }
}
