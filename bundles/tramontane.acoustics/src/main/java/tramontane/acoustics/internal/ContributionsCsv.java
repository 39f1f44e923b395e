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
import tramontane.physics.sound.Weighting;

/** What makes the level at each position: every bank by every opening, its share, and what it would gain if it were silent. */
@Component(service = Exporter.class)
public final class ContributionsCsv implements Exporter {

    private static final String HEAD = "condition,position,bank,opening,A-weighted level [dB re 20 µPa],below [dB],above [dB],share [%],"
            + "gain if silent [dB]\r\n";

    @Override
    public String id() {
        return "noise-contributions";
    }

    @Override
    public String label() {
        return "what makes the level at each listening position";
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
        StringBuilder text = new StringBuilder(HEAD);
        for (Engine.Case each : evaluation.cases()) {
            String id = each.concrete().id();
            evaluation.data(NoiseState.class, id).ifPresent(state -> state.positions().forEach(position -> position.parts().forEach(part ->
                    row(text, id, position, part))));
        }
        return text.length() > HEAD.length() ? Exported.of(text.toString()) : Exported.nothing(NoiseCsv.nothing(evaluation));
    }

    private static void row(StringBuilder text, String condition, NoiseState.PositionNoise position, NoiseState.Part part) {
        double own = part.total().power(Weighting.A);
        double without = position.without(part);
        text.append(NoiseCsv.quoted(condition)).append(',').append(NoiseCsv.quoted(position.position())).append(',').append(NoiseCsv.quoted(part.bank()))
                .append(',').append(NoiseCsv.quoted(part.opening())).append(String.format(Locale.ROOT, ",%.2f,%.2f,%.2f,%.3f,", part.total().level(Weighting.A),
                        part.below(), part.above(), 100 * own / position.total().power(Weighting.A)))
                .append(without > Double.NEGATIVE_INFINITY ? String.format(Locale.ROOT, "%.2f", position.level() - without) : "all").append("\r\n");
    }
}
