package tramontane.acoustics.internal;

import java.util.Locale;
import java.util.Set;
import org.osgi.service.component.annotations.Component;
import tramontane.acoustics.NoiseState;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Exporter;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.Values;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.Spectrum;

/** Third-octave levels of every condition: of each bank and opening as sound power, of each position as sound pressure. */
@Component(service = Exporter.class)
public final class NoiseCsv implements Exporter {

    private static final String END = "\r\n";

    @Override
    public String id() {
        return "noise-spectra";
    }

    @Override
    public String label() {
        return "third-octave levels of banks, openings and listening positions";
    }

    @Override
    public String ending() {
        return "csv";
    }

    @Override
    public Set<Class<?>> reads() {
        return Set.of(NoiseState.class);
    }

    @Override
    public Exported write(Design design, Evaluation evaluation, Values settings) {
        StringBuilder text = new StringBuilder("condition,what,place");
        for (int third = 0; third < Bands.THIRDS; third++) {
            double nominal = Bands.nominal(third);
            text.append(',').append(nominal == Math.rint(nominal) ? Long.toString((long) nominal) : Double.toString(nominal)).append(" Hz");
        }
        text.append(END);
        int head = text.length();
        for (Engine.Case each : evaluation.cases()) {
            String id = each.concrete().id();
            evaluation.data(NoiseState.class, id).ifPresent(state -> {
                state.banks().forEach(bank -> row(text, id, "sound power of bank [dB re 1 pW]", bank.bank(), bank.total()));
                state.openings().forEach(opening -> row(text, id, "sound power of opening [dB re 1 pW]", opening.passage(), opening.power()));
                state.positions().forEach(position -> row(text, id, "sound pressure [dB re 20 µPa]", position.position(), position.total()));
            });
        }
        return text.length() > head ? Exported.of(text.toString())
                : Exported.nothing(nothing(evaluation));
    }

    /** Why there is nothing to write. */
    static Problem nothing(Evaluation evaluation) {
        boolean silent = evaluation.cases().stream().flatMap(each -> evaluation.data(NoiseState.class, each.concrete().id()).stream())
                .anyMatch(NoiseState::silent);
        return Problem.error("", silent ? "no mover runs in any condition, so that nothing is heard; expected a condition in which one does"
                : "no condition has a noise level; expected a noise section of each part that runs");
    }

    private static void row(StringBuilder text, String condition, String what, String place, Spectrum spectrum) {
        if (spectrum.silent()) {
            return;
        }
        text.append(quoted(condition)).append(',').append(what).append(',').append(quoted(place));
        for (int third = 0; third < Bands.THIRDS; third++) {
            text.append(',');
            if (spectrum.power(third) > 0) {
                text.append(String.format(Locale.ROOT, "%.2f", spectrum.level(third)));
            }
        }
        text.append(END);
    }

    static String quoted(String text) {
        return text.chars().anyMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r') ? '"' + text.replace("\"", "\"\"") + '"' : text;
    }
}
