package tramontane.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.physics.units.QuantityKind;

class ConsistencyTest {

    private static Passage passage(String id, String from, String to) {
        return new Passage(id, "gap", from, to, Value.Tree.EMPTY);
    }

    private static Design design(List<String> bays, Passage... passages) {
        return Design.EMPTY.withAirPath(new AirPath(bays.stream().map(Bay::of).toList(), List.of(passages), Value.Tree.EMPTY));
    }

    private static List<String> sentences(Design design) {
        return Consistency.check(design).stream().map(Problem::sentence).toList();
    }

    private static List<String> places(Design design) {
        return Consistency.check(design).stream().map(Problem::place).toList();
    }

    private static HeatSource source(String id, HeatSource.Share... into) {
        return new HeatSource(id, Quantity.of(1), List.of(into), Optional.empty(), Value.Tree.EMPTY);
    }

    @Test
    void anEmptyDesignIsOnlyCautionedAbout() {
        assertEquals(List.of(Problem.caution("airPath", "has no passages, so no air flows; expected at least one")),
                Consistency.check(Design.EMPTY));
    }

    @Test
    void whatIsNotGivenYetIsNoError() {
        Design design = design(List.of(""), passage("", "", "")).withConditions(List.of(Condition.named("")))
                .withHeatSources(List.of(source(""))).withMission(List.of(new MissionPhase("", Quantity.of(0))))
                .withAirMovers(List.of(new AirMover("", "", Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                        Optional.empty(), Optional.empty(), Optional.empty(), List.of(new MoverCurve(Optional.empty(),
                                Optional.empty(), Optional.empty(), Optional.empty(), Quantities.of(1, 2), Quantities.of(),
                                Optional.empty(), Optional.empty(), Value.Tree.EMPTY)), Value.Tree.EMPTY)));
        assertEquals(List.of(), sentences(design));
    }

    @Test
    void aDataSheetIsReadAndChecked() {
        AirMover part = AirMover.from(FormReader.read(AirMover.FORM, Value.Tree.EMPTY.with("id", new Value.Text("F"))
                .with("ingress", new Value.Text("54")).with("lowestTemperature", new Value.Text("70 °C"))
                .with("highestTemperature", new Value.Text("60 °C")), "", new ArrayList<>()));
        Design design = design(List.of("box"), passage("1", "outside", "box")).withAirMovers(List.of(part));
        assertEquals(List.of("airMovers[0].highestTemperature", "airMovers[0].ingress"), places(design));
    }

    @Test
    void theMostParticularOriginCounts() {
        Value origins = new Value.Items(List.of(origin("", "datasheet"), origin("sections.drive", "measured"),
                origin("sections.drive.supply", "estimated")));
        Datasheet sheet = AirMover.from(FormReader.read(AirMover.FORM, Value.Tree.EMPTY.with("origins", origins), "", new ArrayList<>()))
                .datasheet();
        assertEquals("estimated", sheet.origin("sections.drive.supply.rated").orElseThrow().from().orElseThrow());
        assertEquals("measured", sheet.origin("sections.drive.wires").orElseThrow().from().orElseThrow());
        assertEquals("datasheet", sheet.origin("mass").orElseThrow().from().orElseThrow());
        assertEquals("datasheet", sheet.origin("sections.driver").orElseThrow().from().orElseThrow());
    }

    private static Value origin(String of, String from) {
        Value.Tree tree = Value.Tree.EMPTY.with("from", new Value.Text(from));
        return of.isEmpty() ? tree : tree.with("of", new Value.Text(of));
    }

    @Test
    void aFixedLossIsPartOfTheInput() {
        AirMover part = new AirMover("F", "", Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.of(Quantity.of(8)), Optional.of(Quantity.of(8)), Datasheet.EMPTY, List.of(), Value.Tree.EMPTY);
        Design design = design(List.of("box"), passage("1", "outside", "box")).withAirMovers(List.of(part));
        assertEquals(List.of(), places(design));
        AirMover withCurve = part.withCurves(List.of(new MoverCurve(Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), Quantities.of(0, 2), Quantities.of(1, 0), Optional.of(Quantities.of(9, 7.5)), Optional.empty(),
                Value.Tree.EMPTY)));
        assertEquals(List.of("airMovers[0].fixedLoss"), places(design.withAirMovers(List.of(withCurve))));
    }

    @Test
    void everyBayNeedsAWayToOutsideThroughAnyNumberOfBays() {
        assertEquals(List.of(), places(design(List.of("a", "b", "c"), passage("1", "b", "a"), passage("2", "b", "c"),
                passage("3", "outside", "c"))));
        assertEquals(List.of("airPath.bays[0]", "airPath.bays[1]"), places(design(List.of("a", "b", "c"),
                passage("1", "a", "b"), passage("2", "b", "a"), passage("3", "outside", "c"))));
        // a way round outside alone reaches nobody
        assertEquals(List.of("airPath.bays[0]"), places(design(List.of("a"), passage("1", "outside", "outside"))));
    }

    @Test
    void whatLiesBehindAMisspeltNameIsNotBlamedForIt() {
        assertEquals(List.of("airPath.passages[0].from"),
                places(design(List.of("box", "plenum"), passage("1", "plenun", "box"), passage("2", "plenum", "outside"))));
    }

    @Test
    void aLongChainOfBaysIsWalkedWithoutRunningOutOfStack() {
        int count = 50_000;
        List<String> bays = IntStream.range(0, count).mapToObj(i -> "b" + i).toList();
        Passage[] passages = IntStream.range(0, count).mapToObj(i -> passage("p" + i, "b" + i, i == 0 ? "outside" : "b" + (i - 1)))
                .toArray(Passage[]::new);
        assertEquals(List.of(), sentences(design(bays, passages)));
    }

    @Test
    void aPassageNamedLikeABayIsCautionedAbout() {
        Problem problem = Consistency.check(design(List.of("box"), passage("box", "box", "outside"))).getFirst();
        assertEquals(Problem.Severity.CAUTION, problem.severity());
        assertEquals("airPath.passages[0]", problem.place());
    }

    @Test
    void theNominalConditionIsKnownWhereNoneIsListed() {
        Design design = design(List.of("a"), passage("1", "a", "outside"));
        assertEquals(List.of(), places(design.withMission(List.of(new MissionPhase("nominal", Quantity.of(1))))));
        assertEquals(List.of("mission[0].condition"), places(design.withConditions(List.of(Condition.named("hot")))
                .withMission(List.of(new MissionPhase("nominal", Quantity.of(1))))));
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            # shares, whether it is an error
            '0.5 0.5', false
            '0.333333333333 0.333333333333 0.333333333334', false
            '0.5 -', false
            '1 -', false
            '-', false
            '', false
            '0.6 0.6', true
            '0.6 0.6 -', true
            '0.5', true
            '0.5 0.4', true
            """)
    void sharesOfAHeatSourceMakeOneWhole(String shares, boolean error) {
        HeatSource.Share[] into = shares.isEmpty() ? new HeatSource.Share[0] : shares(shares);
        Design design = three().withHeatSources(List.of(source("s", into)));
        assertEquals(error ? List.of("heatSources[0].into") : List.of(), places(design));
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            # shares as given, and what each place then takes, percent
            '- -', '50 50'
            '0.4 - -', '40 30 30'
            '- 0.4', '60 40'
            '1 -', '100 0'
            """)
    void placesWithoutAShareDivideWhatIsLeftEvenly(String shares, String taken) {
        HeatSource source = source("s", shares(shares));
        assertEquals(taken, IntStream.range(0, source.into().size())
                .mapToObj(i -> String.valueOf(Math.round(100 * source.share(i)))).collect(Collectors.joining(" ")));
        assertEquals(List.of(), sentences(three().withHeatSources(List.of(source))));
    }

    /** Shares of bays a, b, c …; a dash for one that is not given. */
    private static HeatSource.Share[] shares(String written) {
        String[] each = written.split(" ");
        return IntStream.range(0, each.length).mapToObj(i -> new HeatSource.Share("abc".substring(i, i + 1), each[i].equals("-")
                ? Optional.empty() : Optional.of(Quantity.of(Double.parseDouble(each[i]))))).toArray(HeatSource.Share[]::new);
    }

    private static Design three() {
        return design(List.of("a", "b", "c"), passage("1", "a", "outside"), passage("2", "b", "outside"), passage("3", "c", "outside"));
    }

    @Test
    void aPlaceTakesHeatOnceAndOutsideNone() {
        assertEquals(List.of("heatSources[0].into[1]: \"a\" stands here twice; expected each place once, with its share",
                "heatSources[1].into[0]: \"outside\" takes up no heat here; expected a bay or passage"),
                sentences(three().withHeatSources(List.of(source("s", share("a", 0.3), share("a", 0.7)), source("t", share("outside", 1))))));
    }

    @Test
    void whatHasNoEffectOrTheWrongOneIsCautionedAbout() {
        HeatSource wake = new HeatSource("a", Quantity.of(1), Optional.empty(), List.of(share("a", 1)), Optional.empty(),
                Optional.of(Quantity.of(1.5)), List.of(), Optional.empty(), Value.Tree.EMPTY);
        ControlLaw law = new ControlLaw("law", "a", List.of(), Quantities.of(300, 320), Quantities.of(1, 0.5), Optional.empty(), Optional.empty(),
                Optional.empty(), Value.Tree.EMPTY);
        assertEquals(List.of("heatSources[0].wake: has no effect without a row; expected the row in which the source stands",
                "controlLaws[0].sensor: \"a\" is the name of a heat source and of a bay or passage; the heat source is read",
                "controlLaws[0].speed: falls as the sensor gets warmer, so that less air cools what is hotter"),
                sentences(three().withHeatSources(List.of(wake)).withControlLaws(List.of(law))));
    }

    @Test
    void sharesThatMakeNoWholeSayWhatWouldBeRight() {
        assertEquals(List.of("heatSources[0].into: the shares add up to 90 %; expected 100 %, or one place without a share, which"
                + " takes what is left", "heatSources[1].into: the shares add up to 120 %; expected 100 % at most"),
                sentences(three().withHeatSources(List.of(
                        source("s", share("a", 0.5), share("b", 0.4)), source("t", share("a", 0.6), share("b", 0.6))))));
    }

    private static HeatSource.Share share(String place, double part) {
        return new HeatSource.Share(place, Optional.of(Quantity.of(part)));
    }

    /** A source with what is set; into a bay "a", a chain of one link, a limit, row 2. */
    private static HeatSource source(String id, double power, String parts) {
        return new HeatSource(id, Quantity.of(power), Optional.empty(),
                parts.contains("into") ? List.of(new HeatSource.Share("a", Optional.empty())) : List.of(),
                parts.contains("row") ? Optional.of(2) : Optional.empty(), Optional.empty(),
                parts.contains("chain") ? List.of(new Link("pad", Optional.empty(), Optional.empty(), Value.Tree.EMPTY)) : List.of(),
                parts.contains("limit") ? Optional.of(Quantity.of(350)) : Optional.empty(), Value.Tree.EMPTY);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            # first source | second source | what is wrong
            ''             | ''            | ''
            into           | into          | ''
            into row       | into row      | ''
            into           | ''            | 'caution heatSources[1].into'
            limit          | ''            | 'caution heatSources[0].into, caution heatSources[1].into'
            chain          | ''            | 'error heatSources[0].chain, caution heatSources[1].into'
            into chain     | chain limit   | 'error heatSources[1].chain'
            row            | ''            | 'caution heatSources[0].row'
            into row       | row           | 'caution heatSources[1].into, caution heatSources[1].row'
            """)
    void heatGoesSomewhereAsSoonAsTheDesignSaysSoOfAny(String first, String second, String wrong) {
        Design design = design(List.of("a"), passage("1", "a", "outside")).withHeatSources(List.of(
                source("one", 5, first), source("two", 5, second)));
        assertEquals(wrong, Consistency.check(design).stream().map(problem -> (problem.isError() ? "error " : "caution ")
                + problem.place()).collect(Collectors.joining(", ")));
    }

    @Test
    void aSourceThatIsSwitchedOffNeedsNoPlaceForItsHeat() {
        assertEquals(List.of(), places(design(List.of("a"), passage("1", "a", "outside")).withHeatSources(List.of(
                source("one", 5, "into"), source("two", 0, "limit")))));
    }

    @Test
    void heatThatGoesNowhereIsSaidInWholeSentences() {
        assertEquals(List.of("heatSources[0].into: is missing, so its heat goes nowhere; expected the bays or passages whose air"
                + " takes it up",
                "heatSources[1].chain: leads the heat of \"cpu\" to no air, as heatSources[1].into is missing; expected into with"
                + " the bay or passage that it stands in",
                "heatSources[1].row: is 2, but not used, as heatSources[1].into is missing; expected into with the bay or passage"
                + " that has the rows"),
                sentences(design(List.of("a"), passage("1", "a", "outside")).withHeatSources(List.of(
                        source("coil", 5, ""), source("cpu", 5, "chain row")))));
    }

    @Test
    void aDraftWhosePlacesCouldNotBeReadIsNotBlamedForMissingThem() {
        Design draft = design(List.of("a"), passage("1", "a", "outside")).withHeatSources(List.of(
                source("one", 5, "into"), source("two", 5, "chain row")));
        assertEquals(List.of(), Consistency.check(draft, List.of(Problem.error("heatSources[1].into", "is 5"))));
        assertEquals(List.of(), Consistency.check(draft, List.of(Problem.error("heatSources[1].into[0].place", "is 5"))));
    }

    @Test
    void theReferencesOfAPassageKindAreFoundByItsFormAlone() {
        Form form = Form.of("bank", "Air movers in a passage.",
                Field.reference("mover", "mover", Shape.Target.MOVER, "The part."),
                Field.references("laws", "laws", Shape.Target.CONTROL_LAW, "Laws."),
                Field.parts("near", "near", Form.of("near", "What is near.",
                        Field.reference("place", "place", Shape.Target.PLACE, "A place.")), "place", "What is near."),
                Field.of("factors", "factors", new Shape.AmountsByName(QuantityKind.FRACTION, Range.ANY,
                        Shape.Target.CONDITION), "Factors."),
                Field.part("inner", "inner", Form.of("inner", "Inner.",
                        Field.reference("bank", "bank", Shape.Target.BANK, "A bank.")), "Inner."),
                Field.anything("free", "free", "Anything."));
        Design design = design(List.of("box"), passage("gap1", "box", "outside"));
        Value.Tree tree = Value.Tree.of(new java.util.LinkedHashMap<>(Map.of(
                "mover", new Value.Text("B120"),
                "laws", new Value.Items(List.of(new Value.Text("slow"), Value.Num.of(1))),
                "near", new Value.Items(List.of(new Value.Text("box"), new Value.Text("bax"),
                        Value.Tree.EMPTY.with("place", new Value.Text("gap2")))),
                "factors", Value.Tree.EMPTY.with("nominal", Value.Num.of(1)).with("Nominal", Value.Num.of(1)),
                "inner", Value.Tree.EMPTY.with("bank", new Value.Text("gap1")),
                "free", new Value.Text("nobody"))));
        assertEquals(List.of(
                "p[3].mover: \"B120\" is not an air mover of this design; it has no air mover yet",
                "p[3].laws[0]: \"slow\" is not a control law of this design; it has no control law yet",
                "p[3].near[1]: \"bax\" is not a bay or passage of this design; expected outside, box or gap1 (did you mean \"box\"?)",
                "p[3].near[2].place: \"gap2\" is not a bay or passage of this design; expected outside, box or gap1 (did you mean \"gap1\"?)",
                "p[3].factors.Nominal: \"Nominal\" is not a condition of this design; expected nominal (did you mean \"nominal\"?)",
                "p[3].inner.bank: \"gap1\" is a passage, but not a bank; it has no bank yet"),
                References.check(form, tree, design, "p[3]").stream().map(Problem::sentence).toList());
    }

    @Test
    void manyNamesAreCountedInsteadOfListed() {
        List<String> bays = IntStream.range(0, 20).mapToObj(i -> "bay" + i).toList();
        List<Passage> passages = new ArrayList<>();
        bays.forEach(bay -> passages.add(passage("to " + bay, bay, "outside")));
        passages.add(passage("last", "bay0", "attic"));
        assertEquals(List.of("airPath.passages[20].to: \"attic\" is not a bay of this design; expected outside, bay0, bay1, bay2, "
                + "bay3, bay4, bay5, bay6 or one of 13 others"), sentences(design(bays, passages.toArray(Passage[]::new))));
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            plenun, plenum
            plemun, ''
            plneum, plenum
            Plenum, plenum
            plenums, plenum
            plenu, plenum
            bx, ''
            bxo, box
            intermediate plnm, intermediate plenum
            """)
    void oneEditLeadsToTheNearestName(String wrong, String nearest) {
        List<String> known = List.of("box", "plenum", "intermediate plenum");
        assertEquals(nearest == null ? "" : nearest, Spelling.nearest(wrong, known).orElse(""));
    }

    @Test
    void aDraftIsNotBlamedForWhatCouldNotBeRead() {
        List<Problem> reading = List.of(Problem.error("airPath.passages", "is 5"), Problem.error("heatSources", "is 6"),
                Problem.error("requirements[0].atMost", "is 7"));
        Design draft = design(List.of("a")).withRequirements(List.of(new Requirement("f", "worst", Optional.empty(),
                Optional.empty(), List.of(), Value.Tree.EMPTY)));
        assertEquals(3, Consistency.check(draft).size());
        assertEquals(List.of(), Consistency.check(draft, reading));
        assertTrue(Consistency.check(draft, List.of(Problem.caution("airPath.passages", "x"))).size() == 3);
    }
}
