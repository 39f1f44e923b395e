package tramontane.physics.sound;

import static tramontane.physics.sound.Inputs.positive;

/**
 * Sound power of a source against the sound pressure around it: far from it in the open, and on a surface around it that is
 * measured.
 *
 * <p>Lp = Lw − 10 lg(4πr²/Q), with Lw in dB re 1 pW, Lp in dB re 20 µPa; exact where ρc = 400 N s/m³, at 20 °C and 1013 hPa
 * 0.14 dB more. Holds for a distance well beyond the size of the source and a third of a wavelength.
 *
 * <p>Measured surfaces and corrections: ISO 3744:2010, clauses 7 and 8 (sound power from sound pressure over a reflecting plane);
 * formulas and limits from memory.
 */
public final class Spreading {

    /** More than this above the background, dB, needs no correction for it (ISO 3744:2010, 8.2.3). */
    public static final double BACKGROUND_NEGLIGIBLE = 15;
    /** Less than this above the background, dB, is beyond what is corrected: what comes out is an upper bound. */
    public static final double BACKGROUND_LEAST = 6;
    /** The largest correction for the room, dB, with which ISO 3744:2010 (grade 2) may be used; ISO 3746 goes up to 7 dB. */
    public static final double ENVIRONMENT_MOST = 4;

    private Spreading() {
    }

    /** @param distance m, positive
     *  @return 10 lg(4πr²), by what the pressure level is below the power level around a source in the open, dB */
    public static double sphere(double distance) {
        return loss(1, distance);
    }

    /** @param distance m, positive
     *  @return 10 lg(2πr²), by what the pressure level is below the power level of a source on a reflecting plane, dB */
    public static double hemisphere(double distance) {
        return loss(2, distance);
    }

    /**
     * By what the pressure level is below the power level: 10 lg(4πr²/Q), dB.
     *
     * @param directivity Q, positive: 1 even in all directions, 2 over one reflecting plane, 4 along an edge, 8 in a corner
     * @param distance    m, positive
     */
    public static double loss(double directivity, double distance) {
        return -Levels.of(factor(directivity, distance));
    }

    /**
     * Mean square of sound pressure over (20 µPa)² for a sound power of 1 pW: Q/(4πr²), 1/m².
     *
     * @param directivity Q, positive
     * @param distance    m, positive
     */
    public static double factor(double directivity, double distance) {
        positive("directivity factor", directivity);
        positive("distance", distance);
        return directivity / (4 * Math.PI * distance * distance);
    }

    /** @param radius m, positive
     *  @return area of the hemisphere over a reflecting plane, m² */
    public static double hemisphereSurface(double radius) {
        positive("radius", radius);
        return 2 * Math.PI * radius * radius;
    }

    /**
     * Area of the box that is measured over a reflecting plane: S = 4(ab + bc + ca) with a = l1/2 + d, b = l2/2 + d, c = l3 + d, m².
     *
     * @param length   l1 of the reference box around the source, m, positive
     * @param width    l2, m, positive
     * @param height   l3, m, positive
     * @param distance d of the measured box from it, m, positive; 1 m is preferred
     */
    public static double boxSurface(double length, double width, double height, double distance) {
        positive("distance", distance);
        double a = positive("length", length) / 2 + distance;
        double b = positive("width", width) / 2 + distance;
        double c = positive("height", height) + distance;
        return 4 * (a * b + b * c + c * a);
    }

    /**
     * Sound power level from what is measured on a surface: Lw = L'p + 10 lg(S/1 m²) − K1 − K2, dB re 1 pW.
     *
     * @param surfaceLevel level of the mean of squared sound pressure on the surface, dB re 20 µPa, as measured
     * @param area         of the surface, m², positive
     * @param background   K1, dB, as of {@link #backgroundCorrection}
     * @param environment  K2, dB, as of {@link #environmentCorrection}
     */
    public static double soundPower(double surfaceLevel, double area, double background, double environment) {
        return surfaceLevel - background - environment + Levels.of(positive("area", area));
    }

    /**
     * K1 = −10 lg(1 − 10^(−ΔL/10)), what to take off for the background, dB: nothing above {@value #BACKGROUND_NEGLIGIBLE} dB; below
     * {@value #BACKGROUND_LEAST} dB the value there, 1.26 dB, which makes the sound power an upper bound.
     *
     * @param difference ΔL, level with the source running less that of the background alone, dB
     */
    public static double backgroundCorrection(double difference) {
        if (Double.isNaN(difference)) {
            throw new IllegalArgumentException("the difference to the background is not a number");
        }
        if (difference > BACKGROUND_NEGLIGIBLE) {
            return 0;
        }
        return -Levels.of(1 - Levels.power(-Math.max(difference, BACKGROUND_LEAST)));
    }

    /**
     * K2 = 10 lg(1 + 4S/A), what to take off for the sound that a room throws back, dB.
     *
     * @param area       of the measured surface S, m², positive
     * @param absorption equivalent absorption area A of the room, m², positive; infinity in the open
     */
    public static double environmentCorrection(double area, double absorption) {
        positive("area", area);
        if (!(absorption > 0)) {
            throw new IllegalArgumentException("equivalent absorption area must be above zero, got " + absorption);
        }
        return Levels.of(1 + 4 * area / absorption);
    }
}
