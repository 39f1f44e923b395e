package tramontane.physics;

/**
 * Friction of fully developed flow in ducts, as Darcy friction factor f in Δp = f L/d ρ v²/2, Re and d on the hydraulic
 * diameter.
 *
 * <p>Where a solver needs it, f·Re is given in place of f: it stays finite down to rest.
 */
public final class Friction {

    /** f·Re of laminar flow in a round duct (Hagen, Poiseuille). */
    public static final double LAMINAR_ROUND = 64;
    /** f·Re of laminar flow between parallel plates. */
    public static final double LAMINAR_PLATES = 96;

    /** Odd terms of the series of {@link #laminarRectangle}; the next one is below 1e-9 of the sum. */
    private static final int LAST_TERM = 61;
    /** Reynolds number below which the turbulent part of Churchill's formula is a power of it to the last digit. */
    private static final double CREEPING = 1;

    private Friction() {
    }

    /**
     * f·Re of fully developed laminar flow in a rectangular duct, by the exact series.
     *
     * <p>R. K. Shah, A. L. London, Laminar Flow Forced Convection in Ducts (1978), ch. VII:
     * f·Re = 96 / {(1+a)² [1 - (192 a/π⁵) Σ tanh(nπ/2a)/n⁵]}, n = 1, 3, 5 …
     *
     * @param aspect a, short over long side; 0 for parallel plates, to 1
     * @return f·Re, 56.9 for a square to 96 for parallel plates
     */
    public static double laminarRectangle(double aspect) {
        if (!(aspect >= 0 && aspect <= 1)) {
            throw new IllegalArgumentException("short over long side must be 0 to 1, got " + aspect);
        }
        double sum = 0;
        for (int n = LAST_TERM; n > 0; n -= 2) {
            sum += Math.tanh(n * Math.PI / (2 * aspect)) / ((double) n * n * n * n * n);
        }
        return LAMINAR_PLATES / ((1 + aspect) * (1 + aspect) * (1 - 192 * aspect / Math.pow(Math.PI, 5) * sum));
    }

    /**
     * Turbulent friction factor of C. F. Colebrook, J. Inst. Civil Eng. 11 (1939) 133-156:
     * 1/√f = -2 log(ε/3.7 + 2.51/(Re √f)). Valid above Re 4000.
     *
     * @param reynolds  Re, above zero
     * @param roughness ε, roughness over hydraulic diameter
     * @return f
     */
    public static double colebrook(double reynolds, double roughness) {
        requireFlow(reynolds, roughness);
        double x = 1 / Math.sqrt(haaland(reynolds, roughness));
        double step;
        do {
            double inner = roughness / 3.7 + 2.51 * x / reynolds;
            step = (x + 2 * Math.log10(inner)) / (1 + 2 * 2.51 / (Math.log(10) * reynolds * inner));
            x -= step;
        } while (Math.abs(step) > 1e-13 * x);
        return 1 / (x * x);
    }

    /**
     * Turbulent friction factor of S. E. Haaland, J. Fluids Eng. 105 (1983) 89-90:
     * 1/√f = -1.8 log[(ε/3.7)^1.11 + 6.9/Re]. Within some 1.5 % of {@link #colebrook} above Re 4000.
     *
     * @param reynolds  Re, above zero
     * @param roughness ε, roughness over hydraulic diameter
     * @return f
     */
    public static double haaland(double reynolds, double roughness) {
        requireFlow(reynolds, roughness);
        double x = -1.8 * Math.log10(Math.pow(roughness / 3.7, 1.11) + 6.9 / reynolds);
        return 1 / (x * x);
    }

    /**
     * Friction factor of a round duct at any Reynolds number, laminar or turbulent, by S. W. Churchill, Chem. Eng. 84 (1977)
     * no. 24, 91-92: f = 8 [(8/Re)¹² + (A+B)^-1.5]^(1/12).
     *
     * @param reynolds  Re, above zero
     * @param roughness ε, roughness over hydraulic diameter
     * @return f
     */
    public static double churchill(double reynolds, double roughness) {
        requireFlow(reynolds, roughness);
        return blend(LAMINAR_ROUND, turbulentProduct(reynolds, roughness)) / reynolds;
    }

    /**
     * f·Re of Churchill's formula without its laminar part: 8 Re (A+B)^(-1/8), A = {2.457 ln[1/((7/Re)^0.9 + 0.27 ε)]}¹⁶,
     * B = (37530/Re)¹⁶; written in Re/37530, so that it goes to 0 at rest.
     *
     * @param reynolds  Re, not negative
     * @param roughness ε, roughness over hydraulic diameter, below 0.1
     * @return f·Re of the turbulent part
     */
    public static double turbulentProduct(double reynolds, double roughness) {
        double r = reynolds / 37530;
        double start = 8 * reynolds * r * r;
        if (reynolds < CREEPING) {
            return start;
        }
        return start / Math.pow(1 + share(reynolds, roughness), 0.125);
    }

    /**
     * Slope of {@link #turbulentProduct} in Re.
     *
     * @param reynolds  Re, not negative
     * @param roughness ε, roughness over hydraulic diameter, below 0.1
     * @return d(f·Re)/dRe of the turbulent part
     */
    public static double turbulentSlope(double reynolds, double roughness) {
        double r = reynolds / 37530;
        if (reynolds < CREEPING) {
            return 24 * r * r;
        }
        double rough = 0.27 * roughness * Math.pow(reynolds / 7, 0.9);
        double log = logarithm(reynolds, rough);
        double a = share(reynolds, roughness);
        // d ln a^(1/8) / d ln Re = 2 + 1.8/((1 + rough) log); times a, which has the log's 16th power, it is regular
        double change = a == 0 ? 0 : a / (1 + a) * (2 + 1.8 / ((1 + rough) * log));
        return turbulentProduct(reynolds, roughness) / reynolds * (3 - change);
    }

    /** A/B of Churchill's formula. */
    private static double share(double reynolds, double roughness) {
        double r = reynolds / 37530;
        double base = 2.457 * logarithm(reynolds, 0.27 * roughness * Math.pow(reynolds / 7, 0.9)) * r;
        double square = base * base;
        double fourth = square * square;
        double eighth = fourth * fourth;
        return eighth * eighth;
    }

    /** ln[1/((7/Re)^0.9 + 0.27 ε)], with 0.27 ε (Re/7)^0.9 given. */
    private static double logarithm(double reynolds, double rough) {
        return 0.9 * Math.log(reynolds / 7) - Math.log1p(rough);
    }

    /**
     * Laminar and turbulent f·Re in one, (l¹² + t¹²)^(1/12), after Churchill.
     *
     * @param laminar   l, above zero
     * @param turbulent t, not negative
     * @return f·Re
     */
    static double blend(double laminar, double turbulent) {
        return laminar * Math.pow(1 + power(turbulent / laminar, 12), 1.0 / 12);
    }

    /** Slope of {@link #blend} from the slopes of both. */
    static double blendSlope(double laminar, double laminarSlope, double turbulent, double turbulentSlope) {
        double w = turbulent / laminar;
        double eleventh = power(w, 11);
        return (laminarSlope + eleventh * turbulentSlope) * Math.pow(1 + eleventh * w, -11.0 / 12);
    }

    private static double power(double x, int n) {
        double square = x * x;
        double fourth = square * square;
        return n == 12 ? fourth * fourth * fourth : fourth * fourth * square * x;
    }

    private static void requireFlow(double reynolds, double roughness) {
        Resistance.requirePositive("Reynolds number", reynolds);
        if (!(roughness >= 0 && roughness < 1)) {
            throw new IllegalArgumentException("roughness over hydraulic diameter must be 0 to 1, got " + roughness);
        }
    }
}
