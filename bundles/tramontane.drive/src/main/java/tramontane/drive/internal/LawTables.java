package tramontane.drive.internal;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Exporter;
import tramontane.drive.ComputedLaws;
import tramontane.model.ControlLaw;
import tramontane.model.Design;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Spelling;
import tramontane.model.Values;

/** Control laws as tables for controllers: what both formats share. */
final class LawTables {

    static final String COMPUTED = "computed";
    static final String STATED = "as stated";

    static final Form SETTINGS = Form.of("settings", "Which control law, and whether as computed or as the design states it.",
            Field.words("law", "control law", "The law; all where not given."),
            Field.choice("take", "take", List.of(COMPUTED, STATED), "Whether computed, or as stated in the design.").standard(COMPUTED));

    /** Highest temperature that is written, in tenths of a degree. */
    private static final int MOST_TENTHS = 10_000;
    /** Kelvin of 0 °C. */
    private static final BigDecimal ICE = new BigDecimal("273.15");

    private static final Decoding DECODING = new Decoding();
    /** Words of the C language that an identifier must not be (ISO C99, 6.4.1), and what the header itself names. */
    private static final Set<String> RESERVED = Set.of("auto", "break", "case", "char", "const", "continue", "default", "do", "double",
            "else", "enum",
            "extern", "float", "for", "goto", "if", "inline", "int", "long", "register", "restrict", "return", "short", "signed", "sizeof", "static",
            "struct", "switch", "typedef", "union", "unsigned", "void", "volatile", "while", "main", "int16_t", "int32_t");

    private LawTables() {
    }

    /** One law to write: temperatures in tenths of a degree Celsius, settings in tenths of a percent, both rounded to the side of more air. */
    record Written(String id, String sensor, boolean computed, String aim, boolean holds, List<int[]> points, int hysteresis, long interval) {
    }

    static Set<Class<?>> reads() {
        return Set.of(ComputedLaws.class);
    }

    /** The laws that are asked for, or why there are none. */
    static List<Written> of(Design design, Evaluation evaluation, Values settings, List<Problem> problems) {
        Optional<String> wanted = settings.ifText("law").filter(name -> !name.isEmpty());
        boolean computed = settings.text("take").equals(COMPUTED);
        List<String> known = design.controlLaws().stream().map(ControlLaw::id).toList();
        if (known.isEmpty()) {
            problems.add(Problem.error("controlLaws", "the design has no control law; expected one, with the sensor that it reads"));
            return List.of();
        }
        if (wanted.isPresent() && !known.contains(wanted.get())) {
            problems.add(Problem.error("law", '"' + wanted.get() + "\" is no control law of the design" + Spelling.hint(wanted.get(), known)
                    + "; expected one of "
                    + String.join(", ", known)));
            return List.of();
        }
        List<Written> written = new ArrayList<>();
        for (ControlLaw law : design.controlLaws()) {
            if (wanted.isPresent() && !wanted.get().equals(law.id())) {
                continue;
            }
            long interval = Math.round(1000 * DECODING.law(law).interval());
            int hysteresis = law.hysteresis().map(Quantity::si).map(kelvin -> (int) Math.round(10 * kelvin)).orElse(0);
            if (!computed) {
                double[] temperature = law.temperature().toArray();
                double[] speed = law.speed().toArray();
                written.add(new Written(law.id(), law.sensor(), false, "", false, points(temperature, speed), hysteresis, interval));
                continue;
            }
            Optional<ComputedLaws.Law> found = evaluation.data(ComputedLaws.class, "").flatMap(laws -> laws.law(law.id()));
            if (found.isEmpty()) {
                problems.add(Problem.error("law", "control law " + law.id()
                        + " could not be computed; expected one that acts in a condition, in a design whose temperatures can be computed"));
            } else {
                if (!found.get().holds()) {
                    problems.add(Problem.caution("law", "the law computed for " + law.id() + " does not hold all limits in all conditions"));
                }
                written.add(new Written(law.id(), law.sensor(), true, found.get().aim(), found.get().holds(), points(
                        found.get().points().stream().mapToDouble(ComputedLaws.Point::temperature).toArray(),
                        found.get().points().stream().mapToDouble(ComputedLaws.Point::setting).toArray()), hysteresis, interval));
            }
        }
        written.stream().filter(law -> law.points().stream().anyMatch(point -> Math.abs(point[0]) > MOST_TENTHS))
                .forEach(law -> problems.add(Problem.error(
                "controlLaws", "control law " + law.id() + " has a point beyond " + MOST_TENTHS / 10
                        + " °C; expected temperatures that a sensor can show")));
        return problems.stream().anyMatch(Problem::isError) ? List.of() : written;
    }

    private static List<int[]> points(double[] temperature, double[] setting) {
        List<int[]> points = new ArrayList<>();
        for (int i = 0; i < Math.min(temperature.length, setting.length); i++) {
            int tenths = tenths(new BigDecimal(temperature[i]).subtract(ICE), RoundingMode.FLOOR);
            int share = tenths(new BigDecimal(setting[i]).movePointRight(2), RoundingMode.CEILING);
            if (!points.isEmpty() && points.getLast()[0] == tenths) {
                points.getLast()[1] = Math.max(points.getLast()[1], share);
            } else {
                points.add(new int[] {tenths, share});
            }
        }
        return points;
    }

    /** Tenths, rounded to one side but for what is rounding of the number itself. */
    private static int tenths(BigDecimal number, RoundingMode mode) {
        return number.movePointRight(1).setScale(6, RoundingMode.HALF_EVEN).setScale(0, mode).intValue();
    }

    /** Tenths as a decimal number. */
    static String decimal(int tenths) {
        return BigDecimal.valueOf(tenths, 1).toPlainString();
    }

    /** A name as an identifier of the C language. */
    static String identifier(String name) {
        String plain = name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "_").replaceAll("^_+|_+$", "");
        return plain.isEmpty() ? "law" : Character.isDigit(plain.charAt(0)) || RESERVED.contains(plain) ? "law_" + plain : plain;
    }

    /** What an exporter gives back. */
    static Exporter.Exported exported(List<Written> laws, String text, List<Problem> problems) {
        return laws.isEmpty() ? Exporter.Exported.nothing(problems.toArray(Problem[]::new)) : new Exporter.Exported(text, problems);
    }
}
