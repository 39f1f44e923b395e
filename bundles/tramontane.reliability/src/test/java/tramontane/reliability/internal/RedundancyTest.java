package tramontane.reliability.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Chart;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.Severity;
import tramontane.analysis.Trace;
import tramontane.engine.internal.WiredEngine;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.file.DesignFile;
import tramontane.model.file.Loaded;
import tramontane.reliability.LifeState;
import tramontane.reliability.MissionLife;
import tramontane.reliability.SystemLife;
import tramontane.reliability.charts.DesignCharts;
import tramontane.reliability.statistics.Weibull;
import tramontane.reliability.system.SystemSurvival;

/** What happens when movers fail, asked of the real airflow and thermal. */
class RedundancyTest {

    private static Engine engine;

    @BeforeAll
    static void wire() {
        engine = WiredEngine.with().engine();
    }

    private static final String LIFE = "'rated': '60000 h', 'at': '40 °C', 'shape': 3, 'factor': 1.5, 'speedExponent': 0";
    private static final String SERVICE = "'serviceLife': '5 years'";

    private static String bank(String id, boolean blows, int across, int series, String life) {
        return "{'id': '" + id + "', 'kind': 'bank', 'from': '" + (blows ? "outside" : "box") + "', 'to': '" + (blows ? "box" : "outside")
                + "', 'mover': 'fan', 'across': " + across + ", 'series': " + series + ", 'sections': {'life': {" + life + "}}}";
    }

    private static Design design(String banks, String requirements, String life, String service) {
        return design(banks, requirements, life, service, "");
    }

    private static Design design(String banks, String requirements, String life, String service, String limit) {
        Design design = parse(banks, requirements, life, service, limit);
        assertEquals(List.of(), engine.check(design).stream().filter(Problem::isError).toList());
        return design;
    }

    private static Design parse(String banks, String requirements, String life, String service, String limit) {
        String text = "{'format': 1, 'name': 'box', 'airMovers': [{'id': 'fan', 'openArea': '50 cm²', 'bearing': 'ball', 'ratedSpeed': '3000 rpm', 'curves':"
                + " [{'speed': '3000 rpm', 'flow': '0 40 80 120 m³/h', 'pressure': '60 50 35 0 Pa', 'power': '5 5 5 5 W'}], 'sections': {'life': {" + life
                + "}}}], 'airPath': {'bays': ['box'], 'passages': [{'id': 'slot', 'kind': 'measured resistance', 'from': 'outside', 'to': 'box', 'flow':"
                + " '300 m³/h', 'pressure': '20 Pa'}, " + banks + "]}, 'heatSources': [{'id': 'board', 'power': '400 W', 'into': ['box']" + limit + "}],"
                + " 'conditions': [{'id': 'normal', 'outsideTemperature': '40 °C'}], 'mission': [{'condition': 'normal', 'timePerYear': '8760 h'}],"
                + " 'requirements': [" + requirements + "], 'sections': {'life': {" + service + "}}}";
        Loaded loaded = DesignFile.parse(text.replace('\'', '"'));
        List<Problem> errors = loaded.problems().stream().filter(Problem::isError).toList();
        assertEquals(List.of(), errors);
        return loaded.design().orElseThrow();
    }

    private static Evaluation run(Design design) {
        return engine.evaluate(Engine.Request.all(design), Engine.Watch.NONE);
    }

    private static Figure figure(Evaluation evaluation, String id, String place) {
        Figure figure = evaluation.figures(id, "").get(place);
        assertTrue(figure != null, () -> id + " at \"" + place + "\" is missing; findings: " + evaluation.findings().stream().map(each -> each.message().toString()).toList());
        return figure;
    }

    private static SystemLife life(Evaluation evaluation) {
        return evaluation.data(SystemLife.class, "").orElseThrow();
    }

    /** Weibull, shape 3, L10 60 000 h, at 43 800 h: 3 of 4 0.99083411, one alone 0.95984158; SciPy. Blowing fans stand in the air outside, whoever fails. */
    @Test
    void asManyAreNeededAsTheLimitSays() {
        Evaluation evaluation = run(design(bank("fans", true, 4, 1, "'failing': 'removed'"), "{'figure': 'thermal.air.temperature', 'place': 'box', 'atMost': '"
                + between(4, 3) + " K'}", LIFE, SERVICE));
        assertEquals(1, figure(evaluation, "reliability.system.spare", "fans").value(), life(evaluation).banks().toString());
        assertEquals(0.95984158, figure(evaluation, "reliability.mission.survival", "fans").value(), 1e-8);
        assertEquals(0.99083411, figure(evaluation, "reliability.system.survival", "fans").value(), 1e-8);
        List<SystemLife.Step> steps = life(evaluation).banks().getFirst().steps();
        assertEquals(List.of("none", "1 of 4", "2 of 4"), steps.stream().map(SystemLife.Step::failed).toList());
        assertEquals(List.of(true, true, false), steps.stream().map(SystemLife.Step::kept).toList());
        assertTrue(steps.get(2).limit().contains("box"), steps.get(2).limit());
        assertTrue(life(evaluation).whole().isEmpty());
    }

    /** A limit between the temperatures with one and with two failed movers, K. */
    private static double between(int across, int running) {
        double[] box = new double[3];
        for (int failed = 0; failed < 3; failed++) {
            String who = failed == 0 ? "" : ", 'failed': [" + "{'bank': 'fans', 'position': 1, 'state': 'removed'}" + (failed == 2
                    ? ", {'bank': 'fans', 'position': 2, 'state': 'removed'}" : "") + "]";
            Design design = design(bank("fans", true, across, 1, ""), "", LIFE, SERVICE);
            Loaded changed = DesignFile.parse(DesignFile.write(design).replace("\"outsideTemperature\": \"40 °C\"", "\"outsideTemperature\": \"40 °C\""
                    + who.replace('\'', '"')));
            box[failed] = run(changed.design().orElseThrow()).figures("thermal.air.temperature", "normal").get("box").value();
        }
        assertTrue(box[0] < box[1] && box[1] < box[2]);
        return (box[1] + box[2]) / 2;
    }

    @Test
    void theRestAgesFasterInWarmerAir() {
        String needed = "'needed': 3";
        Evaluation blowing = run(design(bank("fans", true, 4, 1, needed), "", LIFE, SERVICE));
        Evaluation drawing = run(design(bank("fans", false, 4, 1, needed), "", LIFE, SERVICE));
        assertEquals(1, life(blowing).banks().getFirst().steps().get(1).ageing());
        double ageing = life(drawing).banks().getFirst().steps().get(1).ageing();
        assertTrue(ageing > 1.02 && ageing < 2, () -> "ageing " + ageing);
        double mover = figure(drawing, "reliability.mission.survival", "fans").value();
        double alone = Math.pow(mover, 4) + 4 * Math.pow(mover, 3) * (1 - mover);
        assertTrue(figure(drawing, "reliability.system.survival", "fans").value() < alone);
        assertEquals(0.99083411, figure(blowing, "reliability.system.survival", "fans").value(), 1e-8);
    }

    @Test
    void aFactorOfTenKelvinStandsBehindTheAgeing() {
        Evaluation drawing = run(design(bank("fans", false, 4, 1, "'needed': 3"), "", LIFE, SERVICE));
        MissionLife mission = drawing.data(MissionLife.class, "").orElseThrow();
        double air = mission.banks().getFirst().movers().getFirst().phases().getFirst().temperature();
        double life = figure(drawing, "reliability.mission.life", "fans").value();
        assertEquals(60000 * Math.pow(1.5, (313.15 - air) / 10), life / 3600, 1e-6 * life / 3600);
    }

    /** Movers in the air outside do not heed each other: the whole is the product of the banks. */
    @Test
    void banksInSeriesOfLogicMultiply() {
        Evaluation evaluation = run(design(bank("left", true, 3, 1, "'needed': 2") + ", " + bank("right", true, 2, 1, "'needed': 1"), "", LIFE, SERVICE));
        double left = figure(evaluation, "reliability.system.survival", "left").value();
        double right = figure(evaluation, "reliability.system.survival", "right").value();
        assertEquals(left * right, figure(evaluation, "reliability.system.survival", "").value(), 1e-9);
        double p = 0.95984158;
        assertEquals(3 * p * p - 2 * p * p * p, left, 1e-7);
        assertEquals(2 * p - p * p, right, 1e-7);
    }

    @Test
    void withoutAnyLimitEveryFailureCounts() {
        Evaluation evaluation = run(design(bank("fans", true, 4, 1, ""), "", LIFE, SERVICE));
        assertEquals(0, figure(evaluation, "reliability.system.spare", "fans").value());
        assertEquals(Math.pow(0.95984158, 4), figure(evaluation, "reliability.system.survival", "fans").value(), 1e-7);
        assertTrue(evaluation.findings().stream().anyMatch(finding -> finding.message().toString().contains("every failure counts")));
    }

    @Test
    void aLimitThatIsPassedAnywayTellsNothingOfRedundancy() {
        Evaluation evaluation = run(design(bank("fans", true, 4, 1, ""), "{'figure': 'thermal.air.temperature', 'place': 'box', 'atMost': '41 °C'}", LIFE, SERVICE));
        assertTrue(evaluation.figures("reliability.system.survival", "").isEmpty());
        Finding finding = evaluation.findings().stream().filter(each -> each.message().toString().startsWith("survival of the banks is not known")).findFirst().orElseThrow();
        assertEquals(Severity.NOT_JUDGED, finding.severity());
        assertTrue(finding.message().toString().contains("box"), finding.message()::toString);
    }

    @Test
    void limitsOfHeatSourcesCount() {
        Evaluation evaluation = run(design(bank("fans", true, 4, 1, ""), "", LIFE, SERVICE, ", 'limit': '300 °C'"));
        assertTrue(life(evaluation).banks().getFirst().spare() >= 1, life(evaluation).banks()::toString);
    }

    @Test
    void placesOfAColumnAreToldApart() {
        Evaluation evaluation = run(design(bank("fans", true, 2, 2, "'needed': 3"), "", LIFE, SERVICE));
        SystemLife.Group group = life(evaluation).banks().getFirst();
        assertEquals(4, group.graph().units());
        assertEquals(1, group.spare());
        assertEquals(2, group.survival().lives().size());
        assertTrue(figure(evaluation, "reliability.system.survival", "fans").value() > 0.9);
    }

    @Test
    void moreNeededThanThereAreIsAnError() {
        List<String> errors = engine.check(parse(bank("fans", true, 2, 1, "'needed': 3"), "", LIFE, SERVICE, "")).stream().filter(Problem::isError)
                .map(Problem::sentence).toList();
        assertEquals(1, errors.size(), errors::toString);
        assertTrue(errors.getFirst().contains("passages[1]") && errors.getFirst().endsWith("is 3; expected at most the 2 movers of the bank"), errors::toString);
    }

    @Test
    void everyFigureSaysWhereItCameFrom() {
        Design design = design(bank("fans", false, 4, 1, "'needed': 3"), "", LIFE, SERVICE + ", 'repair': '72 h', 'interval': '2 years', 'availability': '99.9 %',"
                + " 'fleet': 20, 'restocking': '60 d'");
        Evaluation evaluation = run(design);
        List<Figure> ours = evaluation.figures().stream().filter(figure -> figure.kind().id().startsWith("reliability.")).toList();
        assertEquals(22, ours.stream().map(figure -> figure.kind().id()).distinct().count(), () -> ours.stream().map(figure -> figure.kind().id()).toList().toString());
        for (Figure figure : ours) {
            List<Trace.Step> steps = engine.trace(design, figure.condition(), figure.kind().id(), figure.place());
            assertTrue(steps.stream().anyMatch(step -> step.figure().equals(figure.kind().id()) && Math.abs(step.value() - figure.value()) <= 1e-9 * Math.abs(figure.value())),
                    () -> figure.kind().id() + ": " + steps);
            assertTrue(figure.lower().isEmpty() || figure.lower().getAsDouble() <= figure.value());
        }
    }

    @Test
    void aPartOfWhichNothingIsKnownIsNotJudged() {
        Evaluation evaluation = run(design(bank("fans", true, 4, 1, ""), "{'figure': 'reliability.life', 'atLeast': '1000 h'}", "'testedAt': '70 °C'", SERVICE));
        assertEquals(Severity.NOT_JUDGED, evaluation.verdicts().getFirst().severity());
        assertTrue(evaluation.findings().stream().anyMatch(finding -> finding.message().toString().contains("needs a rated life")));
    }

    @Test
    void survivalOfNoneIsTheClosedForm() {
        assertEquals(0.99083411, SystemSurvival.of(3, 4, Weibull.through(60000, 0.1, 3)).survival(43800), 1e-8);
        assertEquals(Optional.empty(), life(run(design(bank("fans", true, 4, 1, "'needed': 3"), "", LIFE, SERVICE))).whole());
    }

    @Test
    void chartsShowWhatTheFiguresSay() {
        Evaluation evaluation = run(design(bank("fans", false, 4, 1, "'needed': 3"), "", LIFE, SERVICE));
        double end = 5 * MissionLife.YEAR;
        Chart survival = DesignCharts.survival(life(evaluation), end);
        double drawn = survival.series().getFirst().points().at(end).getAsDouble();
        assertEquals(figure(evaluation, "reliability.system.survival", "fans").value(), drawn, 1e-9);
        assertTrue(survival.marks().getFirst().label().contains("%"), survival.marks().getFirst().label());
        Chart visits = DesignCharts.survival(new SystemLife(life(evaluation).banks(), Optional.empty(), Optional.of(end / 5)), end);
        assertTrue(visits.series().getFirst().points().at(end).getAsDouble() > drawn);
        Chart temperature = DesignCharts.temperature("life", Map.of("normal", evaluation.data(LifeState.class, "normal").orElseThrow())).orElseThrow();
        assertEquals(60000 * 3600.0, temperature.series().getFirst().points().at(313.15).getAsDouble(), 1e-3 * 60000 * 3600);
        assertEquals(figure(evaluation, "reliability.mission.life", "fans").value(), temperature.marks().getFirst().y(), 1);
        assertEquals(1, temperature.bands().size());
        assertEquals(313.15, temperature.regions().getFirst().to().getAsDouble(), 1e-9);
    }

    @Test
    void whatIsRequiredButNotKnownSaysWhy() {
        String required = "{'figure': 'reliability.system.survival', 'place': 'fans', 'atLeast': '90 %'}";
        Design whole = design(bank("fans", true, 4, 1, "'needed': 3"), required, LIFE, SERVICE);
        assertEquals(Severity.MET, run(whole).verdicts().getFirst().severity());
        Evaluation still = run(whole.withMission(List.of()));
        assertEquals(Severity.NOT_JUDGED, still.verdicts().getFirst().severity());
        assertEquals("could not be told at fans", still.verdicts().getFirst().reason());
        assertTrue(still.findings().stream().anyMatch(finding -> finding.place().equals("fans") && finding.message().toString().contains("without a mission")));
        Evaluation endless = run(design(bank("fans", true, 4, 1, "'needed': 3"), required, LIFE, ""));
        assertEquals("could not be told at fans", endless.verdicts().getFirst().reason());
        assertTrue(endless.findings().stream().anyMatch(finding -> finding.place().equals("fans") && finding.message().toString().contains("how long the equipment is to serve")));
    }
}
