package tramontane.acoustics.recording;

import java.util.Locale;

/**
 * What full scale of a recording means.
 *
 * <p>Full scale is the largest number that a sample can have; a full-scale sine has that as its peak.
 *
 * @param pascals  sound pressure at full scale, Pa; 1 where that is not known
 * @param absolute whether it is known: levels are in dB re 20 µPa, else in dB re a full-scale sine
 * @param words    where it comes from, as read aloud
 */
public record Calibration(double pascals, boolean absolute, String words) {

    /** Nothing is known: levels are relative to a full-scale sine, which is 0 dB. */
    public static final Calibration NONE = new Calibration(1, false, "not calibrated");

    /** Reference sound pressure, Pa. */
    static final double REFERENCE = 20e-6;

    /** Refuses what is no sound pressure. */
    public Calibration {
        if (!(pascals > 0) || Double.isInfinite(pascals)) {
            throw new IllegalArgumentException("full scale must be a positive sound pressure, got " + pascals + " Pa");
        }
    }

    /** @param level of a full-scale sine, dB re 20 µPa */
    public static Calibration ofFullScaleSine(double level) {
        return new Calibration(REFERENCE * Math.sqrt(2) * Math.pow(10, level / 20), true,
                String.format(Locale.ROOT, "a full-scale sine is %.1f dB re 20 µPa", level));
    }

    /**
     * @param sensitivity of the microphone with all that is between it and the converter, V/Pa
     * @param fullScale   peak voltage at which the converter gives full scale, V
     */
    public static Calibration ofMicrophone(double sensitivity, double fullScale) {
        if (!(sensitivity > 0) || !(fullScale > 0)) {
            throw new IllegalArgumentException("sensitivity " + sensitivity + " V/Pa and full scale " + fullScale + " V must be positive");
        }
        return new Calibration(fullScale / sensitivity, true,
                String.format(Locale.ROOT, "microphone with %.4g mV/Pa, full scale at %.4g V", 1000 * sensitivity, fullScale));
    }

    /** @return level of a full-scale sine, dB re 20 µPa, or 0 where that is not known */
    public double fullScaleSine() {
        return absolute ? 20 * Math.log10(pascals / (REFERENCE * Math.sqrt(2))) : 0;
    }

    /** @return by what a mean square of samples is multiplied to be a power re (20 µPa)², or re a full-scale sine */
    double factor() {
        double ratio = pascals / REFERENCE;
        return absolute ? ratio * ratio : 2;
    }

    /** @return what levels are in: dB re 20 µPa, or dB re full-scale sine */
    public String unit() {
        return absolute ? "dB re 20 µPa" : "dB re full-scale sine";
    }
}
