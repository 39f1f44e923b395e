package tramontane.reliability;

import java.util.List;
import java.util.Optional;
import tramontane.reliability.bearing.RollingBearing;
import tramontane.reliability.bearing.SmallMotor;

/**
 * What is known of the life of an air mover: section {@value #SECTION}. The kind of its bearing, its ingress protection and the temperatures
 * it may work in stand in its data sheet.
 *
 * @param rated            rated life, s
 * @param statistic        which life that is
 * @param at               air temperature that it was rated at, K
 * @param speed            speed that it was rated at, rad/s; rated speed of the part where not given
 * @param confidence       at which it was demonstrated, between 0 and 1
 * @param testedAt         air temperature of the life test behind it, K
 * @param shape            Weibull shape, where it is known
 * @param shapeBounds      between which it lies: two values
 * @param law              how life goes with temperature and speed
 * @param factor           factor per 10 K, where it is known
 * @param activationEnergy of {@link Law#ARRHENIUS}, J
 * @param greaseLimit      limiting speed of bearing and grease, rad/s
 * @param rise             how much hotter the bearing is than the air, K
 * @param speedExponent    exponent of the speed in life, where it is known
 * @param rolling          kind of the rolling bearings, of {@link Law#FATIGUE}
 * @param dynamicRating    their basic dynamic load rating, N
 * @param loads            dynamic equivalent load of each, N
 * @param motor            kind of motor, of {@link Law#HANDBOOK}
 * @param shaft            attitudes of the shaft that it may work in, where they are stated
 * @param lowestStorage    lowest temperature of storage and transport, K
 * @param highestStorage   highest temperature of storage and transport, K
 * @param shock            peak acceleration of a half-sine shock that it withstands, m/s²
 * @param shockTime        how long that shock lasts, s
 */
public record MoverLife(Optional<Double> rated, Statistic statistic, Optional<Double> at, Optional<Double> speed, Optional<Double> confidence,
        Optional<Double> testedAt, Optional<Double> shape, List<Double> shapeBounds, Law law, Optional<Double> factor,
        Optional<Double> activationEnergy, Optional<Double> greaseLimit, double rise, Optional<Double> speedExponent, RollingBearing rolling,
        Optional<Double> dynamicRating, List<Double> loads, SmallMotor.Kind motor, Optional<Shaft> shaft, Optional<Double> lowestStorage,
        Optional<Double> highestStorage, Optional<Double> shock, Optional<Double> shockTime) {

    /** The name of the sections of this analysis. */
    public static final String SECTION = "life";

    public MoverLife {
        shapeBounds = List.copyOf(shapeBounds);
        loads = List.copyOf(loads);
    }

    /** How life goes from where it was rated to where the mover works. */
    public enum Law {
        /** So much shorter per 10 K. */
        TEN_KELVIN("factor per 10 K"),
        /** By an activation energy. */
        ARRHENIUS("Arrhenius"),
        /** By the life of the grease. */
        GREASE("grease life"),
        /** By the fatigue of rolling bearings under load: ISO 281. */
        FATIGUE("ISO 281"),
        /** By the failure rates of MIL-HDBK-217F. */
        HANDBOOK("MIL-HDBK-217F");

        private final String word;

        Law(String word) {
            this.word = word;
        }

        /** The word in files and labels. */
        public String word() {
            return word;
        }
    }

    /** Attitudes of a shaft. */
    public enum Shaft {
        /** Any. */
        ANY("any"),
        /** Level, within some degrees. */
        LEVEL("level"),
        /** Upright. */
        UPRIGHT("upright");

        private final String word;

        Shaft(String word) {
            this.word = word;
        }

        /** The word in files and labels. */
        public String word() {
            return word;
        }
    }
}
