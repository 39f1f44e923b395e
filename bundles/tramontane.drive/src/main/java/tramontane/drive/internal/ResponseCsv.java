package tramontane.drive.internal;

import java.util.Locale;
import java.util.Set;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Exporter;
import tramontane.drive.LoopState;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.Values;

/** What control laws do from cold, moment by moment, as comma-separated values. */
@Component(service = Exporter.class)
public final class ResponseCsv implements Exporter {

    @Override
    public String id() {
        return "control-response";
    }

    @Override
    public String label() {
        return "control laws in time, from cold";
    }

    @Override
    public String ending() {
        return "csv";
    }

    @Override
    public Set<Class<?>> reads() {
        return Set.of(LoopState.class);
    }

    @Override
    public Exported write(Design design, Evaluation evaluation, Values settings) {
        StringBuilder text = new StringBuilder("condition,law,time in s,sensor in °C,setting in %\r\n");
        boolean any = false;
        for (Engine.Case each : evaluation.cases()) {
            for (LoopState.Law law : evaluation.data(LoopState.class, each.concrete().id()).map(LoopState::laws).orElse(java.util.List.of())) {
                for (LoopState.Moment moment : law.response()) {
                    any = true;
                    text.append(LawCsv.quoted(each.concrete().id())).append(',').append(LawCsv.quoted(law.law())).append(String.format(Locale.ROOT,
                            ",%.3f,%.3f,%.3f\r\n", moment.time(), moment.sensor() - 273.15, 100 * moment.setting()));
                }
            }
        }
        return any ? Exported.of(text.toString()) : Exported.nothing(Problem.error("controlLaws",
                "no control law acts in any condition; expected one that does"));
    }
}
