package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Exporter;
import tramontane.model.Design;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Values;

/**
 * Control laws as tables of a C header (ISO C99), with functions that read between their points in whole numbers. Names made of a law's
 * have no capital letters, locals begin with one, so that no law's name hides another.
 */
@Component(service = Exporter.class)
public final class LawHeader implements Exporter {

    @Override
    public String id() {
        return "control-law-c";
    }

    @Override
    public String label() {
        return "control laws as a C header";
    }

    @Override
    public String ending() {
        return "h";
    }

    @Override
    public Form settings() {
        return LawTables.SETTINGS;
    }

    @Override
    public Set<Class<?>> reads() {
        return LawTables.reads();
    }

    @Override
    public Exported write(Design design, Evaluation evaluation, Values settings) {
        List<Problem> problems = new ArrayList<>();
        List<LawTables.Written> laws = LawTables.of(design, evaluation, settings, problems);
        String guard = "TRAMONTANE_" + (laws.size() == 1 ? LawTables.identifier(laws.getFirst().id()) : "control_laws")
                .toUpperCase(Locale.ROOT) + "_H";
        StringBuilder text = new StringBuilder("""
                /*
                 * Control laws: speed setting against the temperature of a sensor.
                 *
                 * Temperatures are in 0.1 degrees Celsius, settings in 0.1 percent of what the control takes: duty, control voltage
                 * or supply voltage, not speed. Straight between the points, held before the first and behind the last; a
                 * hysteresis is how far the way down lies below the way up. Where the sensor fails, give the setting for that.
                 * Try it on the equipment, with a mover failed too, before anything depends on it.
                 */
                """).append("#ifndef ").append(guard).append("\n#define ").append(guard).append("\n\n#include <stdint.h>\n");
        Set<String> names = new HashSet<>();
        for (LawTables.Written law : laws) {
            law(text, law, unique(LawTables.identifier(law.id()), names));
        }
        return LawTables.exported(laws, text.append("\n#endif\n").toString(), problems);
    }

    /** What is put behind a law's name. */
    private static final List<String> DERIVED = List.of("", "_temperature", "_setting", "_next");

    private static String unique(String name, Set<String> taken) {
        String free = name;
        for (int i = 2; DERIVED.stream().map(free::concat).anyMatch(taken::contains); i++) {
            free = name + "_" + i;
        }
        DERIVED.stream().map(free::concat).forEach(taken::add);
        return free;
    }

    private static void law(StringBuilder text, LawTables.Written law, String name) {
        String constant = name.toUpperCase(Locale.ROOT);
        String what = !law.computed() ? "as stated in the design" : "computed for least " + law.aim()
                + (law.holds() ? ", holds all limits" : ", DOES NOT HOLD ALL LIMITS");
        text.append("\n/* ").append(comment(law.id())).append(", sensor: ").append(comment(law.sensor())).append("; ").append(what).append(" */\n");
        text.append("#define ").append(constant).append("_POINTS ").append(law.points().size()).append('\n');
        text.append("#define ").append(constant).append("_HYSTERESIS ").append(law.hysteresis()).append('\n');
        text.append("#define ").append(constant).append("_SENSOR_FAILED 1000\n");
        if (law.interval() > 0) {
            text.append("#define ").append(constant).append("_INTERVAL_MS ").append(law.interval()).append('\n');
        }
        text.append("static const int16_t ").append(name).append("_temperature[").append(constant).append("_POINTS] = {").append(column(law,
                0)).append("};\n");
        text.append("static const int16_t ").append(name).append("_setting[").append(constant).append("_POINTS] = {").append(column(law, 1))
                .append("};\n");
        text.append("""

                /* The setting on the way up, rounded up. */
                static inline int16_t NAME(int16_t Temperature)
                {
                    int Point;
                    if (Temperature <= NAME_temperature[0]) {
                        return NAME_setting[0];
                    }
                    for (Point = 1; Point < CONSTANT_POINTS; Point++) {
                        if (Temperature <= NAME_temperature[Point]) {
                            int32_t Width = (int32_t)NAME_temperature[Point] - NAME_temperature[Point - 1];
                            int32_t Rise = (int32_t)NAME_setting[Point] - NAME_setting[Point - 1];
                            int32_t Along = (int32_t)Temperature - NAME_temperature[Point - 1];
                            int32_t Part = Rise * Along;
                            return (int16_t)(NAME_setting[Point - 1] + (Part > 0 ? (Part + Width - 1) / Width : Part / Width));
                        }
                    }
                    return NAME_setting[CONSTANT_POINTS - 1];
                }

                /* The setting after the one before: on the way down it stays until the sensor is colder by the hysteresis. */
                static inline int16_t NAME_next(int16_t Temperature, int16_t Before)
                {
                    int16_t Least = NAME(Temperature);
                    int32_t Warmer = (int32_t)Temperature + CONSTANT_HYSTERESIS;
                    int16_t Most = NAME((int16_t)(Warmer > 32767 ? 32767 : Warmer));
                    return Before < Least ? Least : Before > Most ? Most : Before;
                }
                """.replace("NAME", name).replace("CONSTANT", constant));
    }

    private static String column(LawTables.Written law, int which) {
        return law.points().stream().map(point -> Integer.toString(point[which])).collect(Collectors.joining(", "));
    }

    /** Text that ends no comment. */
    private static String comment(String text) {
        return text.replace("*/", "* /").replace("/*", "/ *").replaceAll("\\p{Cntrl}", " ").replace("\\", "/");
    }
}
