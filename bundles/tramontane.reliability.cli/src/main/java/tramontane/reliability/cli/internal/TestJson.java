package tramontane.reliability.cli.internal;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.cli.terminal.CsvRows;
import tramontane.cli.terminal.JsonDocument;
import tramontane.reliability.bearing.LifeFactor;
import tramontane.reliability.cli.internal.Evaluated.Answer;
import tramontane.reliability.cli.internal.Evaluated.Estimate;
import tramontane.reliability.statistics.Acceleration;
import tramontane.reliability.statistics.Bounds;
import tramontane.reliability.statistics.LifeTable;
import tramontane.reliability.statistics.Quantity;
import tramontane.reliability.statistics.RatioTest;

/** An evaluated life test, for programs. */
final class TestJson {

    private static final double JOULES = LifeFactor.BOLTZMANN / Acceleration.BOLTZMANN;

    private TestJson() {
    }

    static String of(String name, Evaluated evaluated) {
        Question question = evaluated.question();
        return JsonDocument.of(json -> {
            json.beginObject().name("format").value(1).name("name").value(name).name("confidence").value(question.confidence())
                    .name("method")
                    .value(question.methodWords());
            json.name("groups").beginArray();
            for (LifeTable.Group group : evaluated.groups()) {
                json.beginObject();
                optional(json, "temperature", group.temperature());
                optional(json, "speed", group.speed());
                json.name("units").value(group.data().units()).name("failures").value(group.data().failures()).endObject();
            }
            json.endArray().name("answers").beginArray();
            for (Answer answer : evaluated.answers()) {
                answer(json, answer, question);
            }
            json.endArray().name("temperatureEffect");
            if (evaluated.effect().isPresent()) {
                effect(json, evaluated.effect().get());
            } else {
                json.nullValue();
            }
            strings(json, "cautions", evaluated.cautions());
            json.endObject();
        });
    }

    private static void answer(JsonWriter json, Answer answer, Question question) throws IOException {
        json.beginObject().name("sentence").value(TestText.sentence(answer, question));
        optional(json, "temperature", answer.temperature());
        optional(json, "speed", answer.speed());
        json.name("units").value(answer.data().units()).name("failures").value(answer.data().failures());
        json.name("distributions").beginArray();
        for (Estimate estimate : answer.estimates()) {
            json.beginObject().name("name").value(estimate.family().word());
            bounds(json, "scale", estimate.of(Quantity.scale()));
            bounds(json, "shape", estimate.shapeKnown() ? new Bounds(estimate.shape(), estimate.shape(), estimate.shape())
                    : estimate.of(Quantity.shape()));
            json.name("shapeKnown").value(estimate.shapeKnown()).name("lives").beginArray();
            for (Question.Named life : question.lives()) {
                json.beginObject().name("name").value(life.name());
                number(json, "failed", life.failed());
                members(json, estimate.of(TestText.quantity(life)));
                json.endObject();
            }
            json.endArray().name("survival").beginArray();
            for (double time : question.times()) {
                json.beginObject().name("time").value(time);
                members(json, estimate.of(Quantity.survival(time)));
                json.endObject();
            }
            json.endArray();
            number(json, "logLikelihood", estimate.logLikelihood());
            number(json, "aic", estimate.aic());
            optional(json, "correlation", estimate.correlation());
            optional(json, "shownL10", estimate.shown());
            json.endObject();
        }
        json.endArray();
        test(json, "exponentialAgainstWeibull", answer.ageing());
        json.name("andersonDarling");
        if (answer.distance().isPresent()) {
            json.beginObject().name("statistic").value(answer.distance().get().statistic()).name("p").value(answer.distance().get().p())
                    .name("samples")
                    .value(answer.distance().get().samples()).endObject();
        } else {
            json.nullValue();
        }
        optional(json, "shownL10KnownShape", answer.known().map(known -> OptionalDouble.of(known.demonstratedLife(0.1,
                question.confidence())))
                .orElse(OptionalDouble.empty()));
        json.endObject();
    }

    private static void effect(JsonWriter json, Evaluated.Effect effect) throws IOException {
        Bounds energy = effect.energy();
        json.beginObject();
        bounds(json, "activationEnergy", new Bounds(energy.estimate() * JOULES, energy.lower() * JOULES, energy.upper() * JOULES));
        bounds(json, "factorPerTenKelvin", effect.perTenKelvin());
        test(json, "commonShape", effect.commonShape());
        test(json, "law", effect.law());
        json.endObject();
    }

    private static void test(JsonWriter json, String name, Optional<RatioTest> test) throws IOException {
        json.name(name);
        if (test.isPresent()) {
            json.beginObject().name("statistic").value(test.get().statistic()).name("degrees").value(test.get().degrees()).name("p")
                    .value(test.get().p()).endObject();
        } else {
            json.nullValue();
        }
    }

    private static void bounds(JsonWriter json, String name, Bounds bounds) throws IOException {
        json.name(name).beginObject();
        members(json, bounds);
        json.endObject();
    }

    private static void members(JsonWriter json, Bounds bounds) throws IOException {
        number(json, "estimate", bounds.estimate());
        number(json, "lower", bounds.lower());
        number(json, "upper", bounds.upper());
    }

    static void number(JsonWriter json, String name, double value) throws IOException {
        json.name(name);
        JsonDocument.number(json, value);
    }

    static void optional(JsonWriter json, String name, OptionalDouble value) throws IOException {
        number(json, name, value.orElse(Double.NaN));
    }

    static void strings(JsonWriter json, String name, Iterable<String> values) throws IOException {
        json.name(name).beginArray();
        for (String value : values) {
            json.value(value);
        }
        json.endArray();
    }

    /** A row for each number of each distribution. */
    static String csv(Evaluated evaluated) {
        Question question = evaluated.question();
        CsvRows rows = new CsvRows().row("temperature [K]", "distribution", "what", "unit", "estimate", "lower", "upper");
        for (Answer answer : evaluated.answers()) {
            for (Estimate estimate : answer.estimates()) {
                row(rows, answer, estimate, "scale", "s", estimate.of(Quantity.scale()));
                row(rows, answer, estimate, "shape", "1", estimate.shapeKnown() ? new Bounds(estimate.shape(), estimate.shape(),
                        estimate.shape())
                        : estimate.of(Quantity.shape()));
                question.lives().forEach(life -> row(rows, answer, estimate, life.name(), "s", estimate.of(TestText.quantity(life))));
                question.times().forEach(time -> row(rows, answer, estimate, "survival at " + time + " s", "1",
                        estimate.of(Quantity.survival(time))));
            }
            answer.known().ifPresent(known -> rows.row(finite(answer.temperature().orElse(Double.NaN)), "weibull", "L10 shown, one-sided",
                    "s", "",
                    finite(known.demonstratedLife(0.1, question.confidence())), ""));
        }
        return rows.toString();
    }

    private static void row(CsvRows rows, Answer answer, Estimate estimate, String what, String unit, Bounds bounds) {
        rows.row(finite(answer.temperature().orElse(Double.NaN)), estimate.family().word(), what, unit, finite(bounds.estimate()),
                finite(bounds.lower()),
                finite(bounds.upper()));
    }

    private static String finite(double value) {
        return Double.isFinite(value) ? Double.toString(value) : "";
    }
}
