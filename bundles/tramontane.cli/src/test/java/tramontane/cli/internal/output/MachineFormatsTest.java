package tramontane.cli.internal.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Better;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Overview;
import tramontane.analysis.Relation;
import tramontane.analysis.Severity;
import tramontane.analysis.Table;
import tramontane.analysis.Trace;
import tramontane.analysis.Verdict;
import tramontane.cli.internal.Toys;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

class MachineFormatsTest {

    private static JsonObject parse(String json) {
        return JsonParser.parseString(json).getAsJsonObject();
    }

    private static List<String> names(JsonObject object) {
        return List.copyOf(object.keySet());
    }

    @Test
    void jsonHasItsMembersInTheDocumentedOrder() {
        JsonObject root = parse(JsonReport.of(Toys.results(Toys.cabinet()), List.of(Problem.caution("mission", "is short"))));
        assertEquals(List.of("format", "design", "conditions", "figures", "verdicts", "findings", "outcomes", "problems"),
                names(root));
        assertEquals(1, root.get("format").getAsInt());
        assertEquals("Control cabinet", root.get("design").getAsString());
        assertEquals("[{\"id\":\"nominal\",\"cases\":[\"nominal\"]},{\"id\":\"one failed\",\"cases\":"
                + "[\"one failed: fans 1 locked\",\"one failed: fans 2 locked\"]}]", root.get("conditions").toString());
        JsonArray figures = root.getAsJsonArray("figures");
        assertEquals(9, figures.size());
        assertEquals(List.of("id", "label", "place", "condition", "value", "unit"), names(figures.get(0).getAsJsonObject()));
        assertEquals(List.of("id", "label", "place", "condition", "value", "lower", "upper", "unit"),
                names(figures.get(2).getAsJsonObject()));
        assertEquals(0.0256, figures.get(0).getAsJsonObject().get("value").getAsDouble());
        assertEquals("m³/s", figures.get(0).getAsJsonObject().get("unit").getAsString());
        JsonArray verdicts = root.getAsJsonArray("verdicts");
        assertEquals(List.of("figure", "place", "atLeast", "condition", "severity", "value", "at", "case", "margin", "reason"),
                names(verdicts.get(1).getAsJsonObject()));
        assertEquals("not met", verdicts.get(1).getAsJsonObject().get("severity").getAsString());
        assertEquals("one failed: fans 2 locked", verdicts.get(1).getAsJsonObject().get("case").getAsString());
        assertEquals(List.of("figure", "place", "atMost", "condition", "severity", "reason"),
                names(verdicts.get(3).getAsJsonObject()));
        assertEquals(List.of("severity", "message", "place", "condition", "remedy", "source"),
                names(root.getAsJsonArray("findings").get(0).getAsJsonObject()));
        assertEquals("{\"analysis\":\"airflow\",\"condition\":\"nominal\",\"status\":\"computed\"}",
                root.getAsJsonArray("outcomes").get(0).toString());
        assertEquals("[{\"severity\":\"caution\",\"place\":\"mission\",\"message\":\"is short\"}]",
                root.get("problems").toString());
    }

    @Test
    void tablesThatAnAnalysisLaysOutAreForPeopleOnly() {
        Evaluation hot = Toys.hot();
        Overview overview = new Overview(new Table("Budget", List.of(new Table.Column("a", false)),
                List.of(List.<Table.Cell>of(new Table.Words("x")))), List.of(Toys.JUNCTION.id()));
        Evaluation with = new Evaluation(hot.design(), hot.cases(), hot.outcomes().stream().map(each -> new Evaluation.Outcome(
                each.analysis(), each.condition(), each.status(), each.result().with(overview))).toList(), hot.findings(),
                hot.verdicts(), false);
        assertEquals(JsonReport.of(Toys.results(hot), List.of()), JsonReport.of(Toys.results(with), List.of()));
        assertEquals(CsvFigures.of(hot.figures(), UnitSystem.SI), CsvFigures.of(with.figures(), UnitSystem.SI));
    }

    @Test
    void jsonOfABadFileHasTheSameMembers() {
        JsonObject root = parse(JsonReport.of("", List.of(Problem.error("a[0]", "is \"wrong\""))));
        assertEquals(List.of("format", "design", "conditions", "figures", "verdicts", "findings", "outcomes", "problems"),
                names(root));
        assertEquals("is \"wrong\"", root.getAsJsonArray("problems").get(0).getAsJsonObject().get("message").getAsString());
    }

    @Test
    void jsonAndCsvAreTheSameInEveryLocale() {
        String json = JsonReport.of(Toys.results(Toys.cabinet()), List.of());
        String csv = CsvFigures.of(Toys.cabinet().figures(), UnitSystem.METRIC);
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
            assertEquals(json, JsonReport.of(Toys.results(Toys.cabinet()), List.of()));
            assertEquals(csv, CsvFigures.of(Toys.cabinet().figures(), UnitSystem.METRIC));
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void jsonHasNoInfinity() {
        Figure figure = Figure.of(Toys.FLOW, "fans", 1);
        Evaluation evaluation = new Evaluation(Design.EMPTY, List.of(), List.of(), List.of(), List.of(new Verdict(
                Toys.atLeast(Toys.FLOW, "fans", 1), "a", Severity.MET, java.util.Optional.of(figure),
                Double.POSITIVE_INFINITY, "")), false);
        JsonObject verdict = parse(JsonReport.of(Toys.results(evaluation), List.of())).getAsJsonArray("verdicts").get(0)
                .getAsJsonObject();
        assertTrue(verdict.get("margin").isJsonNull());
    }

    @Test
    void csvIsSiWithAllDigitsUnlessAskedOtherwise() {
        double rpm = 2850 * Math.PI / 30;
        FigureKind speed = new FigureKind("a.speed", "speed, \"mean\"", QuantityKind.ROTATIONAL_SPEED, Better.NEITHER, "Speed.");
        FigureKind share = new FigureKind("a.share", "share", QuantityKind.FRACTION, Better.NEITHER, "Share.");
        List<Figure> figures = List.of(Figure.of(speed, "fan\n1", rpm).in("a"), Figure.of(share, "=1+2", 0.25).within(0.125, 0.5));
        assertEquals("id,label,place,condition,value,lower,upper,unit\r\n"
                + "a.speed,\"speed, \"\"mean\"\"\",\"fan\n1\",a," + rpm + ",,,rad/s\r\n"
                + "a.share,share,=1+2,,0.25,0.125,0.5,1\r\n", CsvFigures.of(figures, UnitSystem.SI));
        List<String> metric = rows(CsvFigures.of(figures, UnitSystem.METRIC)).get(1);
        assertEquals(2850, Double.parseDouble(metric.get(4)), 1e-9);
        assertEquals("rpm", metric.get(7));
        assertEquals(List.of("a.share", "share", "=1+2", "", "25.0", "12.5", "50.0", "%"),
                rows(CsvFigures.of(figures, UnitSystem.METRIC)).get(2));
    }

    /** A reader of RFC 4180 by its grammar, for comparison. */
    private static List<List<String>> rows(String csv) {
        List<List<String>> rows = new ArrayList<>();
        List<String> row = new ArrayList<>();
        StringBuilder field = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < csv.length(); i++) {
            char c = csv.charAt(i);
            if (quoted && c == '"' && i + 1 < csv.length() && csv.charAt(i + 1) == '"') {
                field.append('"');
                i++;
            } else if (c == '"') {
                quoted = !quoted;
            } else if (!quoted && (c == ',' || c == '\n')) {
                row.add(field.toString());
                field.setLength(0);
                if (c == '\n') {
                    rows.add(row);
                    row = new ArrayList<>();
                }
            } else if (quoted || c != '\r') {
                field.append(c);
            }
        }
        return rows;
    }

    @Test
    void aTraceAsJson() {
        Trace.Step step = new Trace.Step("airflow.bank.flow", "fans", new Relation("fan laws", "Q2 = Q1 n2/n1", "Bleier 1998",
                "small change of speed"), 0.0256, List.of(new Trace.Term("speed", QuantityKind.ROTATIONAL_SPEED, 298.5,
                "condition nominal")));
        JsonObject root = parse(JsonReport.of(Figure.of(Toys.FLOW, "fans", 0.0256).in("nominal"), List.of(step)));
        assertEquals("airflow.bank.flow", root.getAsJsonObject("figure").get("id").getAsString());
        assertEquals("{\"figure\":\"airflow.bank.flow\",\"place\":\"fans\",\"value\":0.0256,\"relation\":\"fan laws\","
                + "\"formula\":\"Q2 = Q1 n2/n1\",\"source\":\"Bleier 1998\",\"validity\":\"small change of speed\",\"inputs\":"
                + "[{\"name\":\"speed\",\"value\":298.5,\"unit\":\"rad/s\",\"from\":\"condition nominal\"}]}",
                root.getAsJsonArray("steps").get(0).toString());
    }
}
