package tramontane.selection.cli.internal;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.Verdict;
import tramontane.cli.terminal.JsonDocument;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.physics.units.UnitSystem;
import tramontane.selection.Arrangement;
import tramontane.selection.Candidate;
import tramontane.selection.Criterion;
import tramontane.selection.Merit;
import tramontane.selection.Need;
import tramontane.selection.Passed;
import tramontane.selection.Rejected;
import tramontane.selection.Selection;

/** A choice as JSON, in the form that the documentation of {@code tramontane.selection.cli} promises. */
final class ChoiceJson {

    private static final int FORMAT = 1;

    private ChoiceJson() {
    }

    /** The document. */
    static String of(Choice choice, boolean all) {
        Selection selection = choice.selection();
        return JsonDocument.of(json -> {
            json.beginObject().name("format").value(FORMAT).name("design").value(choice.task().design().name()).name("bank").value(choice.task().bank());
            Selection.Counts counts = selection.counts();
            json.name("counts").beginObject().name("catalogue").value(choice.catalogue()).name("parts").value(counts.parts())
                    .name("fitting").value(counts.fitting()).name("arrangements").value(counts.arranged()).name("may").value(counts.may())
                    .name("exact").value(counts.exact()).name("meeting").value(counts.meeting()).name("unjudged").value(counts.unjudged()).endObject();
            json.name("needs").beginArray();
            for (Need need : selection.needs()) {
                json.beginObject().name("condition").value(need.condition()).name("requirement").value(need.requirement().in(UnitSystem.METRIC));
                if (need.flow().isPresent()) {
                    json.name("flow").value(need.flow().getAsDouble());
                }
                if (need.pressure().isPresent()) {
                    json.name("pressure").value(need.pressure().getAsDouble());
                }
                json.endObject();
            }
            json.endArray().name("criteria").beginArray();
            for (Criterion criterion : selection.criteria()) {
                json.beginObject().name("id").value(criterion.id()).name("label").value(criterion.label()).name("unit")
                        .value(criterion.id().equals(Criterion.COST) ? choice.currency().orElse("1") : criterion.quantity().siUnit())
                        .name("better").value(criterion.better().name().toLowerCase(Locale.ROOT)).name("weight").value(choice.weight(criterion)).name("about").value(criterion.about()).endObject();
            }
            json.endArray().name("candidates").beginArray();
            for (int i = 0; i < selection.ranked().size(); i++) {
                candidate(json, i + 1, selection.ranked().get(i), selection.ranked().getFirst());
            }
            json.endArray().name("pareto").beginArray();
            for (Candidate candidate : selection.front()) {
                json.beginObject();
                named(json, candidate.part().id(), Optional.of(candidate.arrangement()));
                json.name("setting").value(candidate.setting());
                values(json, candidate);
                json.endObject();
            }
            json.endArray().name("behind").beginArray();
            for (Passed passed : selection.passed()) {
                json.beginObject();
                named(json, passed.part(), Optional.of(passed.arrangement()));
                json.name("setting").value(passed.setting()).endObject();
            }
            json.endArray();
            rejected(json, "nearest", selection.nearest());
            rejected(json, "rejected", all ? selection.rejected() : List.of());
            json.name("why").beginArray();
            for (var sentence : selection.why()) {
                json.value(sentence.in(UnitSystem.METRIC));
            }
            json.endArray().name("findings").beginArray();
            for (Finding finding : selection.findings()) {
                json.beginObject().name("severity").value(finding.severity().word()).name("message").value(finding.message().in(UnitSystem.METRIC))
                        .name("place").value(finding.place()).name("condition").value(finding.condition())
                        .name("remedy").value(finding.remedy().in(UnitSystem.METRIC)).name("source").value(finding.source()).endObject();
            }
            json.endArray();
            problems(json, choice.problems());
            json.endObject();
        });
    }

    private static void candidate(JsonWriter json, int rank, Candidate candidate, Candidate first) throws IOException {
        json.beginObject().name("rank").value(rank);
        named(json, candidate.part().id(), Optional.of(candidate.arrangement()));
        json.name("setting").value(candidate.setting()).name("adjustable").value(candidate.adjustable()).name("speed").value(candidate.speed());
        var merit = Merit.of(first, candidate);
        json.name("merit");
        if (merit.isPresent()) {
            json.value(merit.getAsLong());
        } else {
            json.nullValue();
        }
        json.name("steps");
        JsonDocument.number(json, candidate.steps());
        json.name("unknown").value(candidate.unknown()).name("pareto").value(candidate.front());
        values(json, candidate);
        json.name("unjudged").value(candidate.unjudged());
        if (candidate.tightest().isPresent()) {
            json.name("tightest");
            verdict(json, candidate.tightest().get());
        }
        json.name("verdicts").beginArray();
        for (Verdict verdict : candidate.verdicts()) {
            verdict(json, verdict);
        }
        json.endArray().endObject();
    }

    private static void named(JsonWriter json, String part, Optional<Arrangement> arrangement) throws IOException {
        json.name("part").value(part);
        if (arrangement.isPresent()) {
            json.name("across").value(arrangement.get().across()).name("along").value(arrangement.get().along())
                    .name("series").value(arrangement.get().series()).name("turned").value(arrangement.get().turned());
        }
    }

    private static void values(JsonWriter json, Candidate candidate) throws IOException {
        json.name("values").beginObject();
        for (Map.Entry<String, Double> value : candidate.values().entrySet()) {
            json.name(value.getKey());
            JsonDocument.number(json, value.getValue());
        }
        json.endObject();
    }

    private static void verdict(JsonWriter json, Verdict verdict) throws IOException {
        json.beginObject().name("figure").value(verdict.requirement().figure()).name("place").value(verdict.requirement().place());
        limit(json, "atLeast", verdict.requirement().atLeast());
        limit(json, "atMost", verdict.requirement().atMost());
        json.name("condition").value(verdict.condition()).name("severity").value(verdict.severity().word());
        if (verdict.figure().isPresent()) {
            Figure figure = verdict.figure().get();
            json.name("value").value(figure.value()).name("at").value(figure.place()).name("case").value(figure.condition()).name("margin");
            JsonDocument.number(json, verdict.margin());
        }
        json.name("reason").value(verdict.reason()).endObject();
    }

    private static void limit(JsonWriter json, String name, Optional<Quantity> limit) throws IOException {
        if (limit.isPresent()) {
            json.name(name).value(limit.get().si());
        }
    }

    private static void rejected(JsonWriter json, String name, List<Rejected> all) throws IOException {
        json.name(name).beginArray();
        for (Rejected each : all) {
            json.beginObject();
            named(json, each.part(), each.arrangement());
            json.name("reason").value(each.reason().in(UnitSystem.METRIC));
            if (each.speed().isPresent()) {
                json.name("timesSpeed");
                JsonDocument.number(json, each.speed().getAsDouble());
            }
            if (each.setting().isPresent()) {
                json.name("setting").value(each.setting().getAsDouble());
            }
            json.name("exactly").value(each.exactly()).name("remedy").value(each.remedy().in(UnitSystem.METRIC)).endObject();
        }
        json.endArray();
    }

    static void problems(JsonWriter json, List<Problem> problems) throws IOException {
        json.name("problems").beginArray();
        for (Problem problem : problems) {
            json.beginObject().name("severity").value(problem.isError() ? "error" : "caution").name("place").value(problem.place())
                    .name("message").value(problem.message()).endObject();
        }
        json.endArray();
    }

    /** The same document for a design that has mistakes. */
    static String of(String design, List<Problem> problems) {
        return JsonDocument.of(json -> {
            json.beginObject().name("format").value(FORMAT).name("design").value(design).name("bank").value("");
            for (String list : List.of("needs", "criteria", "candidates", "pareto", "behind", "nearest", "rejected", "why", "findings")) {
                json.name(list).beginArray().endArray();
            }
            problems(json, problems);
            json.endObject();
        });
    }
}
