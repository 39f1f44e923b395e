package tramontane.physics.heat;

import static tramontane.physics.heat.Inputs.notNegative;
import static tramontane.physics.heat.Inputs.positive;

/**
 * Flow in channels; Reynolds number Re = u d/ν and Nusselt number Nu = h d/k on the hydraulic diameter d = 4 A/P, h from the wall
 * to the mixed temperature of the air, for means over a length L with the logarithmic mean of the differences at both ends.
 */
public final class Channels {

    /** Reynolds number at which laminar flow ends. */
    public static final double LAMINAR = 2300;
    /** Reynolds number from which flow is turbulent. */
    public static final double TURBULENT = 4000;

    private Channels() {
    }

    /**
     * Developed laminar flow in a rectangle with walls of one temperature: R. K. Shah, A. L. London, Laminar Flow Forced
     * Convection in Ducts (1978); within 0.21 % of the exact values.
     *
     * @param aspect short over long side, 0 for parallel plates, to 1
     */
    public static double developedEvenTemperature(double aspect) {
        double a = aspect(aspect);
        return 7.541 * (1 + a * (-2.610 + a * (4.970 + a * (-5.119 + a * (2.702 - 0.548 * a)))));
    }

    /**
     * Developed laminar flow in a rectangle with even heat flux along the channel and an even temperature round it (H1 of Shah and
     * London, 1978); within 0.1 % of the exact values.
     *
     * @param aspect short over long side, 0 for parallel plates, to 1
     */
    public static double developedEvenFlux(double aspect) {
        double a = aspect(aspect);
        return 8.235 * (1 + a * (-2.0421 + a * (3.0853 + a * (-2.4765 + a * (1.0578 - 0.1861 * a)))));
    }

    /**
     * Mean of laminar flow whose velocity and temperature develop together from the entry on: K. Stephan, Chem. Ing. Tech. 31
     * (1959) 773-778, for parallel plates of one temperature, 7.55 + 0.024 y^1.14/(1 + 0.0358 Pr^0.17 y^0.64), y = Re Pr d/L, as in
     * Shah and London (1978). For other rectangles the developed part is that of their shape; the part of the entry is taken as is.
     *
     * <p>Published for Pr 0.1 to 1000. Against a solution of the boundary-layer equations between plates, y to 1e4, it is 0 to 6 %
     * low in air (most at y 500) and 4 % low to 1 % high at Pr 10, but 14 % low to 6 % high at Pr 0.1, and up to 32 % low at Pr 1000.
     *
     * @param reynolds   to {@link #LAMINAR}
     * @param prandtl    0.7 to 10 for the better figures above
     * @param overLength hydraulic diameter over length
     * @param aspect     short over long side, 0 for parallel plates, to 1
     */
    public static double laminar(double reynolds, double prandtl, double overLength, double aspect) {
        double y = notNegative("Reynolds number", reynolds) * positive("Prandtl number", prandtl) * notNegative("d/L", overLength);
        return developedEvenTemperature(aspect) + 0.024 * Math.pow(y, 1.14) / (1 + 0.0358 * Math.pow(prandtl, 0.17) * Math.pow(y, 0.64));
    }

    /**
     * Developed turbulent flow: V. Gnielinski, Int. Chem. Eng. 16 (1976) 359-368, with f = (0.79 ln Re - 1.64)^-2; Re 3000 to
     * 5e6, Pr 0.5 to 2000, mostly within 10 % of measurements. Below {@link #LAMINAR} it is refused: it falls to below nothing at 1000.
     */
    public static double gnielinski(double reynolds, double prandtl) {
        if (!(reynolds >= LAMINAR && reynolds < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("Reynolds number of turbulent flow must be at least " + LAMINAR
                    + " and finite, got " + reynolds);
        }
        double root = 0.79 * Math.log(reynolds) - 1.64;
        double eighth = 1 / (8 * root * root);
        return eighth * (reynolds - 1000) * prandtl
                / (1 + 12.7 * Math.sqrt(eighth) * (Math.pow(positive("Prandtl number", prandtl), 2.0 / 3) - 1));
    }

    /**
     * Developed turbulent flow that is heated: W. H. McAdams' form of Dittus and Boelter, 0.023 Re^0.8 Pr^0.4; Re above 1e4, Pr 0.6 to
     * 160; within 25 %.
     */
    public static double dittusBoelter(double reynolds, double prandtl) {
        return 0.023 * Math.pow(notNegative("Reynolds number", reynolds), 0.8) * Math.pow(positive("Prandtl number", prandtl), 0.4);
    }

    /**
     * Mean over a channel at any Reynolds number: {@link #laminar} to 2300, from 4000 on {@link #gnielinski} with 1 + (d/L)^(2/3)
     * for the entry (H. Hausen, 1959), straight in Re between (V. Gnielinski, Int. J. Heat Mass Transfer 63 (2013) 134-140). Where a
     * short channel would give less turbulent than laminar at 2300, it stays as it is there.
     *
     * @param reynolds   0 to 5e6
     * @param overLength hydraulic diameter over length, to 1
     * @param aspect     short over long side, 0 for parallel plates, to 1
     */
    public static double mean(double reynolds, double prandtl, double overLength, double aspect) {
        if (reynolds <= LAMINAR) {
            return laminar(reynolds, prandtl, overLength, aspect);
        }
        double last = laminar(LAMINAR, prandtl, overLength, aspect);
        double entry = 1 + Math.cbrt(overLength * overLength);
        double turbulent = Math.max(last, gnielinski(Math.max(reynolds, TURBULENT), prandtl) * entry);
        return reynolds >= TURBULENT ? turbulent : last + (turbulent - last) * (reynolds - LAMINAR) / (TURBULENT - LAMINAR);
    }

    private static double aspect(double value) {
        if (!(value >= 0 && value <= 1)) {
            throw new IllegalArgumentException("short over long side must be 0 to 1, got " + value);
        }
        return value;
    }
}
