package tramontane.cli.internal.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.analysis.Amount;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.Overview;
import tramontane.analysis.Result;
import tramontane.analysis.Severity;
import tramontane.analysis.Table;
import tramontane.cli.internal.Toys;
import tramontane.model.Design;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

class TextReportTest {

    private static final String CABINET = """
            Control cabinet (cabinet.tramontane.json), 2 conditions, 3 cases

            Requirements
            requirement                      nominal                      one failed
            -------------------------------  ---------------------------  ---------------------------------
            flow, fans: at least 80.0 m³/h   met 92.2 m³/h                not met 61.2 m³/h (fans 2 locked)
            dust load, worst place: at most  caution 1.00e-6 kg/m³ (box)  not judged
            1.50e-6 kg/m³

            Duty points
            bank  condition                  flow [m³/h]  pressure [Pa]  speed [rpm]  power [W]  stable  running
            ----  -------------------------  -----------  -------------  -----------  ---------  ------  -------
            fans  nominal                           92.2           38.3         2850       6.20  yes     2 of 2
                  one failed: fans 2 locked         61.2           38.3         2850       3.10  yes     1 of 2

            Passages: flow [m³/h]
                                one failed:
            passage  nominal  fans 2 locked
            -------  -------  -------------
            grille      92.2           61.2
            fans        92.2           61.2

            Passages: pressure drop [Pa]
                                one failed:
            passage  nominal  fans 2 locked
            -------  -------  -------------
            grille      12.5           12.5
            fans       -38.3          -38.3

            Air flow, bays: pressure [Pa]
                            one failed:
            bay  nominal  fans 2 locked
            ---  -------  -------------
            box    -12.5          -12.5

            Dust and energy, bays [kg/m³]
            bay   condition  dust load   dust load, bounds
            ----  ---------  ---------  ------------------
            box   nominal      1.00e-6  8.00e-7 to 1.60e-6
            duct  nominal      5.00e-7

            Dust and energy, whole design
            energy per
            year [kWh]
            ----------
                 0.500

            Of the 2 cases of "one failed" the worst is shown: fans 2 locked.

            Findings
              not met     flow at fans: 61.2 m³/h where at least 80.0 m³/h is required (in one failed: fans 2
                          locked)
              not judged  dust load: No dust was computed for this condition. (in one failed)
              caution     fans: air comes back through the locked fan (in one failed: fans 2 locked)
                            Fit flaps. [ISO 5801:2017]
              caution     dust load at box: 1.00e-6 kg/m³ where at most 1.50e-6 kg/m³ is required; it may be
                          8.00e-7 kg/m³ to 1.60e-6 kg/m³ (in nominal)
              note        fans: The curve is used outside its measured range. (in all conditions)

            Of 4 verdicts, 1 is not met and 1 is not judged.
            """;

    private static String text(Evaluation evaluation, UnitSystem units, int width, Charset charset) {
        return TextReport.of(Toys.results(evaluation), units, width, new Spelling(charset)::of);
    }

    private static String text(Evaluation evaluation) {
        return text(evaluation, UnitSystem.METRIC, 100, StandardCharsets.UTF_8);
    }

    @Test
    void answersInTheOrderOfTheEngineersQuestions() {
        assertEquals(CABINET, text(Toys.cabinet()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"de-DE", "ar-EG-u-nu-arab", "tr-TR", "th-TH-u-nu-thai"})
    void isTheSameInEveryLocale(String tag) {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag(tag));
            assertEquals(CABINET, text(Toys.cabinet()));
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void usesOnlyAsciiWhereTheTerminalHasNothingElse() {
        String text = text(Toys.cabinet(), UnitSystem.METRIC, 100, StandardCharsets.US_ASCII);
        assertTrue(text.chars().allMatch(c -> c < 128), text);
        assertTrue(text.contains("met 92.2 m3/h"), text);
        assertFalse(text.contains("?"), text);
    }

    @ParameterizedTest
    @ValueSource(ints = {60, 80, 100, 110})
    void keepsToTheWidth(int width) {
        for (Evaluation evaluation : List.of(Toys.cabinet(), Toys.many(100), longNames())) {
            text(evaluation, UnitSystem.US, width, StandardCharsets.UTF_8).lines()
                    .forEach(line -> assertTrue(line.length() <= width, () -> line.length() + ": " + line));
        }
    }

    @Test
    void aHundredConditionsStandBeneathEachOther() {
        String text = text(Toys.many(100));
        assertEquals(4, text.lines().filter(line -> line.startsWith("condition 100 ")).count(),
                "requirements, flow and drop of passages, pressure of the bay");
    }

    private static Evaluation longNames() {
        String name = "a name that goes on and on ".repeat(8) + "x".repeat(120);
        Figure figure = Figure.of(Toys.FLOW, name, 1).in(name);
        return new Evaluation(Design.EMPTY.withName(name), List.of(Toys.one(name, name), Toys.one("b", "b")),
                List.of(Toys.outcome("airflow", name, Evaluation.Status.COMPUTED, figure),
                        Toys.outcome("airflow", "b", Evaluation.Status.COMPUTED, figure.in("b"))),
                List.of(Finding.caution(name, name).remedy(name).source(name)),
                List.of(Toys.verdict(Toys.atLeast(Toys.FLOW, name, 2), name, Severity.NOT_MET, figure)), false);
    }

    @Test
    void anEmptyDesignHasATitleAndAVerdict() {
        Evaluation nothing = new Evaluation(Design.EMPTY, List.of(Toys.one("nominal", "nominal")),
                List.of(Toys.outcome("airflow", "nominal", Evaluation.Status.COMPUTED)), List.of(), List.of(), false);
        assertEquals("cabinet.tramontane.json, 1 condition\n\nNo requirement is stated.\n", text(nothing));
    }

    @Test
    void oneConditionNeedsNoColumnForIt() {
        Evaluation one = Toys.many(1);
        String text = text(one);
        assertTrue(text.contains("""
                Duty points
                bank  flow [m³/h]  pressure [Pa]  speed [rpm]  power [W]  stable
                ----  -----------  -------------  -----------  ---------  ------
                fans         72.0           38.3         2850       6.20  yes

                Passages
                                      pressure drop
                passage  flow [m³/h]           [Pa]
                -------  -----------  -------------
                grille          72.0           12.5
                fans            72.0          -38.3
                """), text);
    }

    @Test
    void controlCharactersOfAFileDoNotReachTheTerminal() {
        Evaluation hostile = new Evaluation(Design.EMPTY.withName("\u001b[2Jgone\r\nand \u202eback"),
                List.of(Toys.one("a\u001b", "a\u001b")), List.of(), List.of(Finding.note("\u0007", "x\u009b31m")), List.of(), false);
        String text = text(hostile);
        assertTrue(text.chars().allMatch(c -> c == '\n' || !Character.isISOControl(c)), text);
        assertFalse(text.contains("\u202e"), text);
    }

    @Test
    void aMissByAHairShowsEnoughDigitsToBeSeen() {
        Figure figure = Figure.of(Toys.FLOW, "fans", 79.99 / 3600).in("a");
        Evaluation evaluation = new Evaluation(Design.EMPTY, List.of(Toys.one("a", "a")), List.of(), List.of(),
                List.of(Toys.verdict(Toys.atLeast(Toys.FLOW, "fans", 80 / 3600.0), "a", Severity.NOT_MET, figure)), false);
        String text = text(evaluation);
        assertTrue(text.contains("not met 79.99 m³/h"), text);
        assertTrue(text.endsWith("The one requirement is not met.\n"), text);
    }

    @Test
    void aConditionThatWasNotComputedHasGapsAndSaysSo() {
        Evaluation evaluation = new Evaluation(Design.EMPTY, List.of(Toys.one("a", "a"), Toys.one("b", "b")),
                List.of(Toys.airflow("a", 0.02, 2), Toys.outcome("airflow", "b", Evaluation.Status.NOT_COMPUTED)),
                List.of(Finding.error("fans", "The bank has no duty point.").in("b")), List.of(), false);
        String text = text(evaluation);
        assertTrue(text.contains("error  fans: The bank has no duty point. (in b)"), text);
        assertTrue(text.endsWith("No requirement is stated. Not everything could be computed: air flow has gaps.\n"), text);
    }

    @Test
    void manyConditionsOfAFindingAreNamedInPart() {
        Evaluation many = Toys.many(20);
        List<Finding> findings = many.cases().stream().limit(9).map(each -> Finding.caution("", "It is warm.")
                .in(each.concrete().id())).toList();
        String text = text(new Evaluation(many.design(), many.cases(), many.outcomes(), findings, List.of(), false));
        assertTrue(text.replaceAll("\\s+", " ").contains("caution It is warm. (in condition 1, condition 2, condition 3, condition 4, condition 5 and 4"
                + " more)"), text);
    }

    @Test
    void unknownFiguresKeepTheirIdAndTheirLimitAsWritten() {
        tramontane.model.Requirement unknown = new tramontane.model.Requirement("lab.flutter", "worst", Optional.empty(),
                Optional.of(tramontane.model.Quantity.of(0.01, "10 mm")), List.of(), tramontane.model.Value.Tree.EMPTY);
        String text = text(new Evaluation(Design.EMPTY, List.of(Toys.one("a", "a")), List.of(), List.of(),
                List.of(Toys.notJudged(unknown, "a", "Nothing loaded gives lab.flutter.")), false));
        assertTrue(text.contains("lab.flutter, worst place: at most 10 mm  not judged"), text);
        assertTrue(text.contains("  not judged  Nothing loaded gives lab.flutter.\n"), text);
    }

    private static Overview budget(int columns, String... figures) {
        List<Table.Column> headings = new ArrayList<>(List.of(new Table.Column("heat source", false)));
        List<Table.Cell> cpu = new ArrayList<>(List.of(new Table.Words("camera cards")));
        List<Table.Cell> supply = new ArrayList<>(List.of(new Table.Words("supply")));
        for (int i = 1; i <= columns; i++) {
            headings.add(new Table.Column("rise over step " + i, true));
            cpu.add(new Amount(i, QuantityKind.TEMPERATURE_DIFFERENCE));
            supply.add(new Amount(10 * i, QuantityKind.TEMPERATURE_DIFFERENCE));
        }
        return new Overview(new Table("Temperature budget", headings, List.of(cpu, supply)), List.of(figures));
    }

    /** The same results with tables of the analysis's own in some outcomes. */
    private static Evaluation with(Evaluation evaluation, Map<Integer, Overview> tables, Evaluation.Outcome... more) {
        List<Evaluation.Outcome> outcomes = new ArrayList<>();
        for (int i = 0; i < evaluation.outcomes().size(); i++) {
            Evaluation.Outcome each = evaluation.outcomes().get(i);
            outcomes.add(new Evaluation.Outcome(each.analysis(), each.condition(), each.status(), tables.containsKey(i)
                    ? each.result().with(tables.get(i)) : each.result()));
        }
        outcomes.addAll(List.of(more));
        return new Evaluation(evaluation.design(), evaluation.cases(), outcomes, evaluation.findings(), evaluation.verdicts(),
                evaluation.cancelled());
    }

    @Test
    void tablesOfTheWholeDesignAreLeftOutWhereOnlySomeConditionsWereAsked() {
        Evaluation all = with(Toys.hot(), Map.of(), new Evaluation.Outcome("heat", "", Evaluation.Status.COMPUTED,
                Result.of("data").with(budget(2, Toys.JUNCTION.id()))));
        assertTrue(text(all).contains("Temperature budget"));
        Evaluation one = new Evaluation(all.design(), all.cases().subList(0, 1), all.outcomes(), all.findings(), all.verdicts(), false);
        assertFalse(text(one).contains("Temperature budget"), text(one));
        assertTrue(text(one).contains("junction temperature"), "the figures themselves stay");
    }

    @Test
    void tablesThatAnAnalysisLaysOutStandBeforeItsOtherFiguresAndInPlaceOfThoseTheyShow() {
        String plain = text(Toys.hot());
        assertTrue(plain.contains("\nHeat, heat sources: junction temperature [°C]\n"), plain);
        String text = text(with(Toys.hot(), Map.of(0, budget(2, Toys.JUNCTION.id()), 1, budget(2, Toys.JUNCTION.id())),
                new Evaluation.Outcome("heat", "", Evaluation.Status.COMPUTED, Result.of("data").with(budget(1))
                        .with(Figure.of(Toys.COST, "", 1.8e6)))));
        assertTrue(text.contains("""

                Temperature budget, cold [K]
                              rise over step  rise over step
                heat source                1               2
                ------------  --------------  --------------
                camera cards            1.00            2.00
                supply                  10.0            20.0

                Temperature budget, hot [K]
                              rise over step  rise over step
                heat source                1               2
                ------------  --------------  --------------
                camera cards            1.00            2.00
                supply                  10.0            20.0

                Temperature budget
                              rise over step
                heat source            1 [K]
                ------------  --------------
                camera cards            1.00
                supply                  10.0

                Heat, whole design
                """), text);
        assertFalse(text.contains("Heat, heat sources"), text);
    }

    @Test
    void figuresOfACaseWithoutSuchATableAndBoundsThatItDoesNotListAreShownAsEver() {
        String one = text(with(Toys.hot(), Map.of(0, budget(1, Toys.JUNCTION.id()))));
        assertTrue(one.contains("Temperature budget, cold\n"), one);
        assertTrue(one.contains("""
                Heat, heat sources: junction temperature
                heat source   cold  hot [°C]
                ------------  ----  --------
                camera cards            86.7
                supply                  96.1
                """), one);
        // dust is of outcome 1 and has bounds
        assertTrue(text(with(Toys.cabinet(), Map.of(1, budget(1, Toys.FLOW.id())))).contains("8.00e-7 to 1.60e-6\n"));
        assertFalse(text(with(Toys.cabinet(), Map.of(1, budget(1, Toys.DUST.id())))).contains("8.00e-7 to 1.60e-6\n"));
    }

    @Test
    void ofSeveralCasesOnlyTheTableOfTheOneThatIsShownStandsThere() {
        String text = text(with(Toys.cabinet(), Map.of(2, budget(1), 3, budget(1))));
        assertFalse(text.contains("Temperature budget, one failed: fans 1 locked"), text);
        assertTrue(text.contains("Temperature budget, one failed: fans 2 locked"), text);
        assertTrue(text(with(Toys.many(1), Map.of(0, budget(1)))).contains("\nTemperature budget\n"));
    }

    @ParameterizedTest
    @ValueSource(ints = {60, 80, 100})
    void aWideTableIsCutWithItsFirstColumnRepeated(int width) {
        String text = text(with(Toys.hot(), Map.of(1, budget(30, Toys.JUNCTION.id()))), UnitSystem.METRIC, width,
                StandardCharsets.UTF_8);
        text.lines().forEach(line -> assertTrue(line.length() <= width, () -> line.length() + ": " + line));
        String tables = text.substring(text.indexOf("Temperature budget"), text.indexOf("Heat, heat sources"));
        long parts = tables.lines().filter(line -> line.startsWith("Temperature budget, hot [K], columns ")).count();
        assertTrue(parts >= 2, text);
        assertEquals(parts, tables.lines().filter(line -> line.startsWith("supply ")).count(), text);
        assertEquals(30, tables.lines().filter(line -> line.startsWith("supply ")).mapToInt(line -> line.split(" +").length - 1)
                .sum(), text);
    }

    /** Findings that differ in their amounts alone are said once, those that read the same even where digits behind differ. */
    @Test
    void findingsThatDifferInAmountsAloneAreSaidOnce() {
        Evaluation three = new Evaluation(Design.EMPTY, List.of(Toys.one("a", "a"), Toys.one("b", "b"), Toys.one("c", "c")),
                List.of(), List.of(warm(20.0, "a"), warm(20.001, "b"), warm(30, "c")), List.of(), false);
        String text = text(three);
        assertTrue(text.contains("It takes 20.0 Pa. (in a, b; with other numbers in c)"), text);
        assertEquals(2, text.split("It takes", -1).length, text);
    }

    private static Finding warm(double pascal, String condition) {
        return Finding.note("", "It takes ", new Amount(pascal, QuantityKind.PRESSURE), ".").in(condition);
    }
}
