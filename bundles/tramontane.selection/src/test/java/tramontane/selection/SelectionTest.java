package tramontane.selection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.analysis.Engine;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Severity;
import tramontane.invented.InventedCatalogue;
import tramontane.model.AirMover;
import tramontane.model.AirPath;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.FormReader;
import tramontane.model.HeatSource;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.model.Value;
import tramontane.physics.units.UnitSystem;

class SelectionTest {

    private static final Space OPENING = new Space(Optional.of(0.17), Optional.of(0.09), Optional.of(0.06), 6, 2, 12);

    /**
     * One fan, two side by side, two one behind another on Δp = c Q²: the closed forms of the ideal combination. Δp0 80 Pa, Q0
     * 0.06 m³/s: Q = √(Δp0/(c + Δp0/Q0²)), side by side √(Δp0/(c + Δp0/(4 Q0²))), in series √(2 Δp0/(c + 2 Δp0/Q0²)). By the fan
     * laws (ISO 5801) the flow along such a path goes with the speed, so that the lowest setting is the flow wanted over that at full.
     */
    @ParameterizedTest
    @CsvSource({"2e4, 0.02, 0.043529, 0.055950, 0.049827", "5e4, 0.02, 0.033282, 0.037947, 0.041160", "2e5, 0.012, 0.018974, 0.019728, 0.025584"})
    void theLowestSpeedIsThatOfTheClosedForm(double c, double wanted, double one, double beside, double behind) {
        Selection selection = Choices.SELECTOR.choose(Task.of(Choices.duty(wanted, c), Duty.BANK, List.of(Choices.parabola("F", Choices.SHUT_OFF, Choices.FREE)),
                Choices.exactly(2, 2)), Watch.NONE);
        assertEquals(wanted, selection.needs().getFirst().flow().orElseThrow(), 2e-3 * wanted);
        assertEquals(c * wanted * wanted, selection.needs().getFirst().pressure().orElseThrow(), 5e-3 * c * wanted * wanted);
        assertSetting(selection, new Arrangement(1, 1, 1, false), wanted / one);
        assertSetting(selection, new Arrangement(2, 1, 1, false), wanted / beside);
        assertSetting(selection, new Arrangement(1, 1, 2, false), wanted / behind);
    }

    /** To a thousandth upwards, and what interpolating the curve between 61 points adds. */
    private static void assertSetting(Selection selection, Arrangement arrangement, double expected) {
        Candidate candidate = selection.ranked().stream().filter(each -> each.arrangement().equals(arrangement)).findFirst().orElseThrow();
        assertEquals(expected, candidate.setting() - 0.0005, 0.0008, candidate.words());
        assertTrue(candidate.setting() >= expected - 3e-4, candidate.words());
    }

    /** Common practice: two equal movers side by side double the free delivery, one behind another the pressure at no flow. */
    @Test
    void sideBySideDoublesFreeDeliveryAndInSeriesDoublesShutOff() {
        PassageKind kind = Choices.WIRED.engine().passageKinds().get(Passage.BANK);
        AirMover part = Choices.parabola("F", Choices.SHUT_OFF, Choices.FREE);
        assertEquals(0, pressure(kind, part, new Arrangement(2, 1, 1, false), 2 * Choices.FREE), 1e-9);
        assertEquals(2 * Choices.SHUT_OFF, pressure(kind, part, new Arrangement(1, 1, 2, false), 0), 1e-9);
        assertEquals(0, pressure(kind, part, new Arrangement(1, 1, 2, false), Choices.FREE), 1e-9);
        assertEquals(Choices.SHUT_OFF, pressure(kind, part, new Arrangement(2, 1, 1, false), 0), 1e-9);
    }

    private static double pressure(PassageKind kind, AirMover part, Arrangement arrangement, double flow) {
        Passage passage = Placement.passage(new Passage("b", Passage.BANK, "outside", "box", Value.Tree.EMPTY), part.id(), arrangement, 1);
        FlowLaw law = kind.law(FormReader.read(kind.form(), passage.parameters(), "", new ArrayList<>()), new PassageKind.Setting(
                Design.EMPTY.withAirMovers(List.of(part)), Condition.NOMINAL, passage));
        FlowLaw.Drop drop = new FlowLaw.Drop();
        law.at(flow, 1.2, 1.8e-5, drop);
        return -drop.pressure();
    }

    /** Common practice: against little pressure a second fan belongs beside the first, against much behind it; the words say so. */
    @ParameterizedTest
    @CsvSource({"3e3, 0.08, side by side", "1e6, 0.0115, one behind another"})
    void littleResistanceFavoursParallelMuchFavoursSeries(double c, double wanted, String wins) {
        Selection selection = Choices.SELECTOR.choose(Task.of(Choices.duty(wanted, c), Duty.BANK, List.of(Choices.parabola("F", Choices.SHUT_OFF, Choices.FREE)),
                new Space(Optional.empty(), Optional.empty(), Optional.empty(), 2, 2, 2)), Watch.NONE);
        assertEquals(1, selection.ranked().size(), () -> selection.rejected().toString());
        Arrangement arrangement = selection.ranked().getFirst().arrangement();
        assertEquals(wins.equals("side by side") ? 2 : 1, arrangement.columns());
        assertEquals(wins.equals("side by side") ? 1 : 2, arrangement.series());
        String why = String.join("; ", selection.why().stream().map(sentence -> sentence.in(UnitSystem.SI)).toList());
        assertTrue(why.contains(wins.equals("side by side") ? "a second one side by side brings more than one behind another"
                : "a second one behind another brings more than one side by side"), why);
    }

    /** 300 parts in the sample: the reduced design turns down nothing that belongs on the list. */
    @Test
    void theListIsTheSameAsWhenAllAreJudgedExactly() {
        assertSameAsExactly(Task.of(Choices.sample("observatory"), "fans", InventedCatalogue.parts(300, 7), OPENING), 0.2);
    }

    /** The bank blows into the bay before the parts, with limits on them: its own heat and the air that comes back count. */
    @Test
    void theListIsTheSameWhereTheBankBlows() {
        Design design = Choices.sample("observatory");
        Design blowing = design.withAirPath(new AirPath(design.airPath().bays(), design.airPath().passages().stream().map(passage ->
                new Passage(passage.id(), passage.kind(), passage.to(), passage.from(), passage.tolerance(), passage.parameters())).toList(),
                design.airPath().more())).withRequirements(List.of());
        assertSameAsExactly(Task.of(blowing, "fans", InventedCatalogue.parts(50, 11), OPENING), 0.6);
    }

    /** Parts stand in the bay that the bank draws from, which air that comes back through a failed fan may cool. */
    @Test
    void theListIsTheSameWhereAirThatComesBackIsFelt() {
        Design design = Choices.sample("observatory");
        Design felt = design.withHeatSources(design.heatSources().stream().map(source -> source.id().startsWith("supply") ? source
                : new HeatSource(source.id(), source.power(), source.tolerance(), List.of(new HeatSource.Share("rear", Optional.empty())),
                        source.row(), source.wake(), List.of(), Optional.of(Quantity.of(273.15 + 52)), source.more())).toList()).withRequirements(List.of());
        assertSameAsExactly(Task.of(felt, "fans", InventedCatalogue.parts(40, 5), OPENING), 0.9);
    }

    private static void assertSameAsExactly(Task task, double mostExact) {
        Selection quick = Choices.SELECTOR.choose(task, Watch.NONE);
        Selection exact = Choices.SELECTOR.choose(task.exactly(true), Watch.NONE);
        assertTrue(quick.findings().stream().noneMatch(finding -> finding.severity() == Severity.ERROR), () -> quick.findings().toString());
        assertTrue(quick.ranked().size() > 4, () -> "only " + quick.ranked());
        assertEquals(Choices.words(exact.ranked()), Choices.words(quick.ranked()));
        assertEquals(Choices.words(exact.front()), Choices.words(quick.front()));
        assertEquals(exact.counts().arranged(), exact.counts().exact(), "all of them");
        assertTrue(quick.counts().exact() <= mostExact * exact.counts().exact(), () -> quick.counts() + " against " + exact.counts());
        System.out.println("judged exactly: " + quick.counts().exact() + " of " + quick.counts().arranged() + ", the same list as all");
        // everything is either listed, or passed over, or turned down with a reason
        assertEquals(quick.counts().arranged() + quick.counts().parts() - quick.counts().fitting(),
                quick.counts().meeting() + quick.passed().size() + quick.rejected().size());
        assertTrue(quick.rejected().stream().noneMatch(each -> each.reason().isEmpty()));
        Set<List<Object>> meets = new HashSet<>(exact.ranked().stream().map(candidate -> List.<Object>of(candidate.part().id(), candidate.arrangement())).toList());
        assertTrue(quick.rejected().stream().noneMatch(each -> each.arrangement().filter(arrangement -> meets.contains(List.of(each.part(), arrangement))).isPresent()));
    }

    /** Every setting given holds everything, and a thousandth less does not. */
    @Test
    void theSettingIsTheLowestThatHolds() {
        Design design = Choices.sample("observatory");
        Selection selection = Choices.SELECTOR.choose(Task.of(design, "fans", InventedCatalogue.parts(60, 7), OPENING), Watch.NONE);
        int below = 0;
        for (Candidate candidate : selection.ranked()) {
            assertTrue(candidate.verdicts().stream().noneMatch(verdict -> verdict.severity() == Severity.NOT_MET), candidate.words());
            if (candidate.setting() > Task.LOWEST && candidate.adjustable()) {
                Design slower = Placement.of(design, "fans", candidate.part(), candidate.arrangement(), candidate.setting() - 0.001);
                assertTrue(Choices.WIRED.engine().evaluate(Engine.Request.all(slower), Engine.Watch.NONE).verdicts()
                        .stream().anyMatch(verdict -> verdict.severity() == Severity.NOT_MET), candidate.words());
                below++;
            }
        }
        assertTrue(below > 3);
    }

    /** Where bounds must hold, too, every verdict is met without caution, and it takes more speed. */
    @Test
    void withBoundsItTakesMoreSpeed() {
        Design design = Choices.sample("observatory");
        Task task = Task.of(design, "fans", InventedCatalogue.parts(60, 7), OPENING);
        Selection stated = Choices.SELECTOR.choose(task, Watch.NONE);
        Selection certain = Choices.SELECTOR.choose(task.certain(true), Watch.NONE);
        assertFalse(certain.ranked().isEmpty());
        for (Candidate candidate : certain.ranked()) {
            assertTrue(candidate.verdicts().stream().allMatch(verdict -> verdict.severity() == Severity.MET), candidate.words());
            stated.ranked().stream().filter(other -> other.words().equals(candidate.words())).forEach(other ->
                    assertTrue(candidate.setting() >= other.setting(), candidate.words()));
        }
        assertEquals(Choices.words(Choices.SELECTOR.choose(task.certain(true).exactly(true), Watch.NONE).ranked()), Choices.words(certain.ranked()));
    }

    @Test
    void theAnswerIsTheSameEveryTime() {
        Task task = Task.of(Choices.sample("observatory"), "fans", InventedCatalogue.parts(40, 7), OPENING);
        List<String> found = new ArrayList<>();
        List<String> again = new ArrayList<>();
        Selection one = Choices.SELECTOR.choose(task, hearing(found));
        Selection two = Choices.SELECTOR.choose(task, hearing(again));
        assertEquals(Choices.words(one.ranked()), Choices.words(two.ranked()));
        assertEquals(one.counts(), two.counts());
        assertEquals(one.rejected(), two.rejected());
        assertEquals(one.nearest(), two.nearest());
        assertEquals(one.why(), two.why());
        assertEquals(found, again);
        assertFalse(found.isEmpty());
    }

    private static Watch hearing(List<String> found) {
        return new Watch() {
            private double shown;

            @Override
            public boolean cancelled() {
                return false;
            }

            @Override
            public void progress(double fraction, String message) {
                assertTrue(fraction >= shown && fraction <= 1, fraction + " after " + shown);
                shown = fraction;
            }

            @Override
            public void found(Candidate candidate) {
                found.add(candidate.words());
            }
        };
    }

    @Test
    void itTellsHowManyWereJudgedOfThoseThatMayDo() {
        List<List<Integer>> told = new ArrayList<>();
        List<String> found = new ArrayList<>();
        Selection selection = Choices.SELECTOR.choose(Task.of(Choices.sample("observatory"), "fans", InventedCatalogue.parts(40, 7), OPENING), new Watch() {
            @Override
            public boolean cancelled() {
                return false;
            }

            @Override
            public void progress(double fraction, String message) {
                // only what is judged counts here
            }

            @Override
            public void found(Candidate candidate) {
                found.add(candidate.words());
            }

            @Override
            public void judged(int judged, int may) {
                assertTrue(found.size() <= judged, "what is found was judged");
                told.add(List.of(judged, may));
            }
        });
        assertEquals(List.of(selection.counts().exact(), selection.counts().may()), told.getLast());
        for (int i = 0; i < told.size(); i++) {
            assertTrue(told.get(i).get(0) <= told.get(i).get(1), told.toString());
            assertTrue(i == 0 || told.get(i - 1).get(0) < told.get(i).get(0), told.toString());
        }
        assertTrue(selection.ranked().stream().map(Candidate::words).allMatch(found::contains), "the list is of those that were found");
    }

    @Test
    void itEndsWhenNobodyWantsItAnyMore() {
        AtomicBoolean stop = new AtomicBoolean();
        Selection selection = Choices.SELECTOR.choose(Task.of(Choices.sample("observatory"), "fans", InventedCatalogue.parts(300, 7), OPENING), new Watch() {
            @Override
            public boolean cancelled() {
                return stop.get();
            }

            @Override
            public void progress(double fraction, String message) {
                // only what is found counts here
            }

            @Override
            public void found(Candidate candidate) {
                stop.set(true);
            }
        });
        assertTrue(selection.cancelled());
        assertFalse(selection.ranked().isEmpty(), "what was found is kept");
        assertTrue(selection.counts().exact() < 10);
    }

    @Test
    void missesSayWhatWouldHaveToChange() {
        // 0.05 m³/s through 5e4: 125 Pa; at full speed F reaches 0.033282
        Selection selection = Choices.SELECTOR.choose(Task.of(Choices.duty(0.05, 5e4), Duty.BANK, List.of(Choices.parabola("F", Choices.SHUT_OFF, Choices.FREE)),
                Choices.exactly(1, 1)), Watch.NONE);
        assertTrue(selection.ranked().isEmpty());
        Rejected miss = selection.nearest().getFirst();
        assertTrue(miss.exactly());
        assertEquals(0.05 / 0.033282, miss.speed().orElseThrow(), 5e-3);
        assertEquals("flow at movers in nominal is 0.0333 m³/s at full speed where at least 0.0500 m³/s is required", miss.reason().in(UnitSystem.SI));
        // at 0.05 m³/s F gives 80 (1 - 0.25/0.36) = 24.4 of 125 Pa: nobody saves that much
        assertTrue(miss.remedy().in(UnitSystem.METRIC).matches("it would do with 50\\.[123] % more speed"), miss.remedy().in(UnitSystem.METRIC));
        // 0.035 m³/s: 52.8 of 61.25 Pa, 13.8 % too little
        Rejected near = Choices.SELECTOR.choose(Task.of(Choices.duty(0.035, 5e4), Duty.BANK, List.of(Choices.parabola("F", Choices.SHUT_OFF, Choices.FREE)),
                Choices.exactly(1, 1)), Watch.NONE).nearest().getFirst();
        assertTrue(near.remedy().in(UnitSystem.METRIC).matches("it would do with 5\\.[12]\\d % more speed, or if the air path took 13\\.[678] % less pressure at the flow needed"),
                near.remedy().in(UnitSystem.METRIC));
        assertEquals(1, selection.rejected().size());
        assertTrue(selection.rejected().getFirst().reason().in(UnitSystem.SI).startsWith("in nominal it gives 0.0333 m³/s at full speed where 0.0500 m³/s are needed"));
    }

    @Test
    void whatDoesNotFitSaysSo() {
        AirMover small = Choices.parabola("F", Choices.SHUT_OFF, Choices.FREE);
        Space slot = new Space(Optional.of(0.09), Optional.of(0.2), Optional.of(0.05), 4, 2, 4);
        Selection selection = Choices.SELECTOR.choose(Task.of(Choices.duty(0.02, 5e4), Duty.BANK, List.of(small), slot), Watch.NONE);
        assertEquals("a frame of 100 mm × 100 mm × 30.0 mm does not fit into the room of 90.0 mm × 200 mm × 50.0 mm",
                selection.rejected().getFirst().reason().in(UnitSystem.METRIC));
        assertTrue(selection.findings().stream().anyMatch(finding -> finding.message().toString().contains("none of the parts fits")));
    }

    @Test
    void aSingleMoverCannotBeSparedWhereAnyOneMayFail() {
        Selection selection = Choices.SELECTOR.choose(Task.of(Choices.sample("observatory"), "fans", List.of(Choices.parabola("strong", 400, 0.06),
                Choices.parabola("weak", 400, 0.006)), Choices.exactly(1, 1)), Watch.NONE);
        assertEquals("in any one failed none of its movers is left, and 47.9 m³/h are needed", selection.rejected().get(0).reason().in(UnitSystem.METRIC));
        assertEquals("in nominal it moves no more than 21.6 m³/h even against no pressure, where 60.7 m³/h are needed",
                selection.rejected().get(1).reason().in(UnitSystem.METRIC));
    }

    /** The heavier part is cheaper: the weights decide which is first, both are on the front. */
    @Test
    void weightsDecideTheOrderNotTheFront() {
        AirMover cheap = Choices.priced(Choices.parabola("cheap", 80, 0.06), 10, "EUR", 0.4);
        AirMover light = Choices.priced(Choices.parabola("light", 80, 0.06), 20, "EUR", 0.1);
        AirMover worse = Choices.priced(Choices.parabola("worse", 80, 0.06), 21, "EUR", 0.5);
        Task task = Task.of(Choices.duty(0.02, 5e4), Duty.BANK, List.of(cheap, light, worse), Choices.exactly(1, 1));
        Selection byCost = Choices.SELECTOR.choose(task.withWeights(Map.of(Criterion.COST, 1.0)), Watch.NONE);
        Selection byMass = Choices.SELECTOR.choose(task.withWeights(Map.of(Criterion.MASS, 1.0)), Watch.NONE);
        assertEquals(List.of("cheap", "light", "worse"), byCost.ranked().stream().map(candidate -> candidate.part().id()).toList());
        assertEquals(List.of("light", "cheap", "worse"), byMass.ranked().stream().map(candidate -> candidate.part().id()).toList());
        assertEquals(Set.of("cheap", "light"), new HashSet<>(byCost.front().stream().map(candidate -> candidate.part().id()).toList()));
        assertEquals(1, byCost.ranked().get(1).steps() - byCost.ranked().get(0).steps(), 1e-12, "twice the price is one step");
        assertEquals(List.of(true, true, false), byCost.ranked().stream().map(Candidate::front).toList());
    }

    @Test
    void pricesInAnotherCurrencyDoNotCount() {
        List<AirMover> parts = List.of(Choices.priced(Choices.parabola("a", 80, 0.06), 10, "EUR", 0.4), Choices.priced(Choices.parabola("b", 80, 0.06), 12, "EUR", 0.4),
                Choices.priced(Choices.parabola("c", 80, 0.06), 1, "XXX", 0.4));
        Selection selection = Choices.SELECTOR.choose(Task.of(Choices.duty(0.02, 5e4), Duty.BANK, parts, Choices.exactly(1, 1)).withWeights(Map.of(Criterion.COST, 1.0)),
                Watch.NONE);
        assertEquals(List.of("a", "b", "c"), selection.ranked().stream().map(candidate -> candidate.part().id()).toList());
        assertEquals(1, selection.ranked().getLast().unknown());
    }

    @Test
    void aWrongWeightIsAnError() {
        Selection selection = Choices.SELECTOR.choose(Task.of(Choices.duty(0.02, 5e4), Duty.BANK, List.of(Choices.parabola("F", 80, 0.06)), Choices.exactly(1, 1))
                .withWeights(Map.of("beauty", 1.0)), Watch.NONE);
        assertEquals("a weight is given for beauty, which is neither a criterion nor a figure that anything loaded gives",
                selection.findings().getFirst().message().toString());
        assertTrue(selection.ranked().isEmpty());
    }

    /** A blower of 400 W before the resistance: its heat swells the air behind it, so that less is needed at the inlet. */
    @Test
    void theHeatOfAMoverThatBlowsInIsAllowedFor() {
        Design duty = Choices.duty(0.02, 1200 / 4e-4);
        Design blowing = duty.withAirPath(new AirPath(duty.airPath().bays(), duty.airPath().passages().stream().map(passage ->
                new Passage(passage.id(), passage.kind(), passage.to(), passage.from(), passage.tolerance(), passage.parameters())).toList(), Value.Tree.EMPTY))
                .withRequirements(List.of(new Requirement("airflow.passage.flow", "air path", Optional.of(Quantity.of(0.02)), Optional.empty(), List.of(),
                        Value.Tree.EMPTY)));
        List<AirMover> parts = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            parts.add(Choices.hot(Choices.parabola("B" + i, 1150 + 40 * i, 0.05), 400));
        }
        Task task = Task.of(blowing, Duty.BANK, parts, Choices.exactly(1, 1));
        Selection exact = Choices.SELECTOR.choose(task.exactly(true), Watch.NONE);
        assertTrue(exact.ranked().size() > 2 && exact.ranked().size() < 12, () -> exact.ranked().size() + " meet");
        assertEquals(Choices.words(exact.ranked()), Choices.words(Choices.SELECTOR.choose(task, Watch.NONE).ranked()));
    }

    /** An upper limit, also as part of a range, does not keep the search from the speed that is enough. */
    @ParameterizedTest
    @CsvSource({"0.0205", "0.03"})
    void anUpperLimitIsJudgedAtTheLowestSpeed(double most) {
        Requirement range = new Requirement("airflow.bank.flow", Duty.BANK, Optional.of(Quantity.of(0.02)), Optional.of(Quantity.of(most)), List.of(), Value.Tree.EMPTY);
        Design design = Choices.duty(0.02, 5e4).withRequirements(List.of(range));
        Selection selection = Choices.SELECTOR.choose(Task.of(design, Duty.BANK, List.of(Choices.parabola("F", Choices.SHUT_OFF, Choices.FREE)), Choices.exactly(2, 2)),
                Watch.NONE);
        assertEquals(4, selection.ranked().size(), () -> selection.rejected().toString());
        assertSetting(selection, new Arrangement(1, 1, 1, false), 0.02 / 0.033282);
        assertTrue(selection.findings().isEmpty(), () -> selection.findings().toString());
    }

    /** What more speed is not for turns a part down at the speed that is enough, and says so. */
    @Test
    void aLimitOfPowerIsSaidAtTheSpeedThatIsEnough() {
        Design design = Choices.duty(0.02, 5e4);
        Design limited = design.withRequirements(List.of(design.requirements().getFirst(), new Requirement("airflow.bank.power", Duty.BANK, Optional.empty(),
                Optional.of(Quantity.of(1)), List.of(), Value.Tree.EMPTY)));
        Selection selection = Choices.SELECTOR.choose(Task.of(limited, Duty.BANK, List.of(Choices.parabola("F", Choices.SHUT_OFF, Choices.FREE)), Choices.exactly(1, 1)),
                Watch.NONE);
        Rejected miss = selection.nearest().getFirst();
        // 6 W at full speed, so 6 · 0.601³ = 1.30 W at the setting 0.601 of the closed form
        assertEquals("electrical power at movers in nominal is 1.30 W at the lowest speed that is enough for flow and temperature where at most 1.00 W is required",
                miss.reason().in(UnitSystem.METRIC));
        assertTrue(miss.speed().isEmpty() && miss.remedy().isEmpty(), miss::toString);
    }

    /** A certain position that has failed: arrangements without it are turned down, the others judged with it. */
    @Test
    void aCertainPositionMayHaveFailed() {
        Condition failed = Condition.NOMINAL.with("one out", List.of(new FailedMover(Optional.of(Duty.BANK), Optional.of(2),
                FailedMover.State.LOCKED)));
        Design design = Choices.duty(0.02, 5e4).withConditions(List.of(failed));
        Task task = Task.of(design, Duty.BANK, List.of(Choices.parabola("F", 200, 0.06)), Choices.exactly(3, 2));
        Selection selection = Choices.SELECTOR.choose(task, Watch.NONE);
        assertTrue(selection.ranked().stream().allMatch(candidate -> candidate.arrangement().movers() >= 2));
        assertFalse(selection.ranked().isEmpty(), () -> selection.rejected() + " " + selection.findings());
        assertEquals(Choices.words(Choices.SELECTOR.choose(task.exactly(true), Watch.NONE).ranked()), Choices.words(selection.ranked()));
        assertTrue(selection.rejected().stream().anyMatch(each -> each.reason().toString().contains("position 2")), () -> selection.rejected().toString());
    }

    /** One part that cannot be true does not spoil the choice among the others. */
    @Test
    void anAbsurdPartDoesNotSpoilTheChoice() {
        List<AirMover> parts = List.of(Choices.priced(Choices.parabola("F", Choices.SHUT_OFF, Choices.FREE), 5, "EUR", 0.1),
                Choices.priced(Choices.parabola("absurd", 200, 5e5), 1e308, "EUR", 0.1));
        Selection selection = Choices.SELECTOR.choose(Task.of(Choices.duty(0.02, 5e4), Duty.BANK, parts, Choices.exactly(2, 1)), Watch.NONE);
        assertEquals(0.02, selection.needs().getFirst().flow().orElseThrow(), 1e-4);
        assertEquals("F", selection.ranked().getFirst().part().id());
    }

    /** Its current is too high for the supply: flow and temperature hold, the drive does not. */
    @Test
    void everyLoadedAnalysisJudges() {
        Design design = Choices.sample("observatory");
        Design required = design.withRequirements(List.of(design.requirements().get(0), design.requirements().get(1), new Requirement("airflow.bank.power", "fans",
                Optional.empty(), Optional.of(Quantity.of(3.2)), List.of(), Value.Tree.EMPTY)));
        Selection selection = Choices.SELECTOR.choose(Task.of(required, "fans", InventedCatalogue.parts(60, 7), OPENING), Watch.NONE);
        assertTrue(selection.ranked().stream().allMatch(candidate -> candidate.values().get(Criterion.POWER) <= 3.2));
    }
}
