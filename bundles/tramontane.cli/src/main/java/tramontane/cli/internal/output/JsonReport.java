package tramontane.cli.internal.output;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.Trace;
import tramontane.analysis.Verdict;
import tramontane.cli.terminal.JsonDocument;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.physics.units.UnitSystem;

/** Results as JSON, in the form that the documentation of {@code tramontane.cli} promises. */
public final class JsonReport {

    private static final int FORMAT = 1;

    private JsonReport() {
    }

    /** The results of a run, with what is to be said of the file. */
    public static String of(Results results, List<Problem> problems) {
        Evaluation evaluation = results.evaluation();
        return JsonDocument.of(json -> {
            head(json, evaluation.design().name());
            json.name("conditions").beginArray();
            for (Map.Entry<String, List<String>> entry : results.casesByCondition().entrySet()) {
                json.beginObject().name("id").value(entry.getKey()).name("cases").beginArray();
                for (String id : entry.getValue()) {
                    json.value(id);
                }
                json.endArray().endObject();
            }
            json.endArray().name("figures").beginArray();
            for (Figure figure : evaluation.figures()) {
                figure(json, figure);
            }
            json.endArray().name("verdicts").beginArray();
            for (Verdict verdict : evaluation.verdicts()) {
                verdict(json, verdict);
            }
            json.endArray().name("findings").beginArray();
            for (Finding finding : evaluation.findings()) {
                finding(json, finding);
            }
            json.endArray().name("outcomes").beginArray();
            for (Evaluation.Outcome outcome : evaluation.outcomes()) {
                json.beginObject().name("analysis").value(outcome.analysis()).name("condition").value(outcome.condition())
                        .name("status").value(word(outcome.status())).endObject();
            }
            json.endArray();
            problems(json, problems);
            json.endObject();
        });
    }

    /** The same document for a file that was not solved. */
    public static String of(String design, List<Problem> problems) {
        return JsonDocument.of(json -> {
            head(json, design);
            for (String list : List.of("conditions", "figures", "verdicts", "findings", "outcomes")) {
                json.name(list).beginArray().endArray();
            }
            problems(json, problems);
            json.endObject();
        });
    }

    /**
     * Where a figure comes from.
     *
     * @param figure the figure
     * @param steps  the steps on its way
     */
    public static String of(Figure figure, List<Trace.Step> steps) {
        return JsonDocument.of(json -> {
            json.beginObject().name("format").value(FORMAT).name("figure");
            figure(json, figure);
            json.name("steps").beginArray();
            for (Trace.Step step : steps) {
                json.beginObject().name("figure").value(step.figure()).name("place").value(step.place())
                        .name("value");
                JsonDocument.number(json, step.value());
                json.name("relation").value(step.relation().name())
                        .name("formula").value(step.relation().formula()).name("source").value(step.relation().source())
                        .name("validity").value(step.relation().validity()).name("inputs").beginArray();
                for (Trace.Term term : step.inputs()) {
                    json.beginObject().name("name").value(term.name()).name("value");
                    JsonDocument.number(json, term.value());
                    json.name("unit").value(term.quantity().siUnit()).name("from").value(term.from()).endObject();
                }
                json.endArray().endObject();
            }
            json.endArray().endObject();
        });
    }

    private static void head(JsonWriter json, String design) throws IOException {
        json.beginObject().name("format").value(FORMAT).name("design").value(design);
    }

    private static void figure(JsonWriter json, Figure figure) throws IOException {
        json.beginObject().name("id").value(figure.kind().id()).name("label").value(figure.kind().label())
                .name("place").value(figure.place()).name("condition").value(figure.condition())
                .name("value").value(figure.value());
        bound(json, "lower", figure.lower());
        bound(json, "upper", figure.upper());
        json.name("unit").value(figure.kind().quantity().siUnit()).endObject();
    }

    private static void bound(JsonWriter json, String name, OptionalDouble bound) throws IOException {
        if (bound.isPresent()) {
            json.name(name).value(bound.getAsDouble());
        }
    }

    private static void verdict(JsonWriter json, Verdict verdict) throws IOException {
        json.beginObject().name("figure").value(verdict.requirement().figure())
                .name("place").value(verdict.requirement().place());
        limit(json, "atLeast", verdict.requirement().atLeast());
        limit(json, "atMost", verdict.requirement().atMost());
        json.name("condition").value(verdict.condition()).name("severity").value(verdict.severity().word());
        if (verdict.figure().isPresent()) {
            Figure figure = verdict.figure().get();
            json.name("value").value(figure.value()).name("at").value(figure.place()).name("case").value(figure.condition())
                    .name("margin");
            JsonDocument.number(json, verdict.margin());
        }
        json.name("reason").value(verdict.reason()).endObject();
    }

    private static void limit(JsonWriter json, String name, Optional<Quantity> limit) throws IOException {
        if (limit.isPresent()) {
            json.name(name).value(limit.get().si());
        }
    }

    private static void finding(JsonWriter json, Finding finding) throws IOException {
        json.beginObject().name("severity").value(finding.severity().word()).name("message")
                .value(finding.message().in(UnitSystem.SI))
                .name("place").value(finding.place()).name("condition").value(finding.condition())
                .name("remedy").value(finding.remedy().in(UnitSystem.SI)).name("source").value(finding.source()).endObject();
    }

    private static void problems(JsonWriter json, List<Problem> problems) throws IOException {
        json.name("problems").beginArray();
        for (Problem problem : problems) {
            json.beginObject().name("severity").value(word(problem.severity())).name("place").value(problem.place())
                    .name("message").value(problem.message()).endObject();
        }
        json.endArray();
    }

    static String word(Problem.Severity severity) {
        return switch (severity) {
            case ERROR -> "error";
            case CAUTION -> "caution";
        };
    }

    private static String word(Evaluation.Status status) {
        return switch (status) {
            case COMPUTED -> "computed";
            case NOT_COMPUTED -> "not computed";
            case NOT_RUN -> "not run";
            case FAILED -> "failed";
        };
    }
}
