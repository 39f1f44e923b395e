package tramontane.airflow;

import java.util.Arrays;

/** Density and viscosity of the air outside and in each bay of a network. */
public final class NetworkAir {

    private final double[] density;
    private final double[] viscosity;
    private final double outsideDensity;
    private final double outsideViscosity;

    private NetworkAir(double[] density, double[] viscosity, double outsideDensity, double outsideViscosity) {
        this.density = density;
        this.viscosity = viscosity;
        this.outsideDensity = outsideDensity;
        this.outsideViscosity = outsideViscosity;
        requirePositive(outsideDensity);
        requirePositive(outsideViscosity);
        for (double each : density) {
            requirePositive(each);
        }
        for (double each : viscosity) {
            requirePositive(each);
        }
    }

    private static void requirePositive(double value) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("density and viscosity must be above zero and finite, got " + value);
        }
    }

    /**
     * The same air everywhere.
     *
     * @param bays      number of bays
     * @param density   kg/m³
     * @param viscosity dynamic viscosity, Pa s
     */
    public static NetworkAir uniform(int bays, double density, double viscosity) {
        double[] densities = new double[bays];
        double[] viscosities = new double[bays];
        Arrays.fill(densities, density);
        Arrays.fill(viscosities, viscosity);
        return new NetworkAir(densities, viscosities, density, viscosity);
    }

    /**
     * Air that differs from bay to bay.
     *
     * @param density          of each bay, kg/m³
     * @param viscosity        dynamic viscosity in each bay, Pa s
     * @param outsideDensity   kg/m³
     * @param outsideViscosity Pa s
     */
    public static NetworkAir of(double[] density, double[] viscosity, double outsideDensity, double outsideViscosity) {
        if (density.length != viscosity.length) {
            throw new IllegalArgumentException(density.length + " densities but " + viscosity.length + " viscosities");
        }
        return new NetworkAir(density.clone(), viscosity.clone(), outsideDensity, outsideViscosity);
    }

    /** Number of bays. */
    public int bays() {
        return density.length;
    }

    /** Density in a bay or outside, kg/m³. */
    public double density(int bay) {
        return bay == Network.OUTSIDE ? outsideDensity : density[bay];
    }

    /** Dynamic viscosity in a bay or outside, Pa s. */
    public double viscosity(int bay) {
        return bay == Network.OUTSIDE ? outsideViscosity : viscosity[bay];
    }
}
