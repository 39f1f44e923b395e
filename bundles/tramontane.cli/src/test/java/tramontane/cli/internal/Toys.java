package tramontane.cli.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import tramontane.analysis.Better;
import tramontane.analysis.Cases;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Evaluation.Outcome;
import tramontane.analysis.Evaluation.Status;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Judgement;
import tramontane.analysis.LinkKind;
import tramontane.analysis.LinkLaw;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Result;
import tramontane.analysis.Scope;
import tramontane.analysis.SectionType;
import tramontane.analysis.Severity;
import tramontane.analysis.Verdict;
import tramontane.cli.internal.output.Results;
import tramontane.model.AirPath;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.HeatSource;
import tramontane.model.Quantity;
import tramontane.model.Range;
import tramontane.model.Requirement;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Units;

/** Invented results; their numbers mean nothing. */
public final class Toys {

    public static final FigureKind FLOW = new FigureKind("airflow.bank.flow", "flow", QuantityKind.FLOW, Better.HIGHER,
            "Flow of a bank.");
    public static final FigureKind PRESSURE = new FigureKind("airflow.bay.pressure", "pressure", QuantityKind.PRESSURE,
            Better.NEITHER, "Pressure of a bay above outside.");
    public static final FigureKind DUST = new FigureKind("acme.dust.load", "dust load", QuantityKind.DENSITY, Better.LOWER,
            "Dust in a bay.");
    public static final FigureKind COST = new FigureKind("acme.energy", "energy per year", QuantityKind.ENERGY, Better.LOWER,
            "Energy of all movers in a year.");

    public static final FigureKind JUNCTION = new FigureKind(Judgement.COMPONENT_TEMPERATURE, "junction temperature",
            QuantityKind.TEMPERATURE, Better.LOWER, "Temperature of a heat source.");

    public static final List<Engine.Loaded> ANALYSES = List.of(
            new Engine.Loaded("acme", "dust and energy", "acme.dust 2.0.0", Scope.CONDITION, List.of(DUST, COST),
                    Optional.empty()),
            new Engine.Loaded("airflow", "air flow", "tramontane.airflow 0.1.0", Scope.CONDITION, List.of(FLOW, PRESSURE),
                    Optional.empty()));

    /** One kind of link of one field. */
    public static final Map<String, LinkKind> LINK_KINDS = Map.of("heat pipe", new LinkKind() {
        @Override
        public Form form() {
            return Form.of("heat pipe", "A heat pipe between two plates.", Field.amount("resistance", "resistance",
                    QuantityKind.THERMAL_RESISTANCE, Range.POSITIVE, "Between its ends.").mandatory());
        }

        @Override
        public Step step() {
            return Step.SPREADING;
        }

        @Override
        public LinkLaw law(Values values, Setting setting) {
            double resistance = values.si("resistance");
            return (air, beyond) -> resistance;
        }
    });

    /** Two sections of one name, told apart by what carries them. */
    public static final List<SectionType<?>> SECTION_TYPES = List.of(
            section(Set.of(SectionType.Owner.MOVER), Field.whole("poles", "poles", 2, 12, "Poles of the motor.")),
            section(Set.of(SectionType.Owner.CONDITION), Field.words("supply", "supply", "What feeds the movers.")),
            section(Set.of(SectionType.Owner.MOVER), Field.words("hidden", "hidden", "Of one that does not count.")));

    private static SectionType<Integer> section(Set<SectionType.Owner> owners, Field field) {
        return new SectionType<>() {
            @Override
            public Form form() {
                return Form.of("drive", "How a mover is driven.", field);
            }

            @Override
            public Set<Owner> owners() {
                return owners;
            }

            @Override
            public Integer decode(Values values) {
                return 0;
            }

            @Override
            public Value.Tree encode(Integer section) {
                return Value.Tree.EMPTY;
            }
        };
    }

    private Toys() {
    }

    public static Requirement atLeast(FigureKind kind, String place, double limit) {
        return new Requirement(kind.id(), place, Optional.of(Quantity.of(limit)), Optional.empty(), List.of(),
                Value.Tree.EMPTY);
    }

    public static Requirement atMost(FigureKind kind, String place, double limit) {
        return new Requirement(kind.id(), place, Optional.empty(), Optional.of(Quantity.of(limit)), List.of(),
                Value.Tree.EMPTY);
    }

    public static Verdict verdict(Requirement requirement, String condition, Severity severity, Figure figure) {
        return new Verdict(requirement, condition, severity, Optional.of(figure), 0.01, "");
    }

    public static Verdict notJudged(Requirement requirement, String condition, String reason) {
        return new Verdict(requirement, condition, Severity.NOT_JUDGED, Optional.empty(), 0, reason);
    }

    public static OperatingPoint point(double flow, int running) {
        List<OperatingPoint.MoverPoint> movers = IntStream.rangeClosed(1, 2).mapToObj(position ->
                new OperatingPoint.MoverPoint(position, position <= running, flow / 2, 38, 298.5, OptionalDouble.of(3.1)))
                .toList();
        return new OperatingPoint(
                List.of(new OperatingPoint.BankPoint("fans", flow, flow * 1.2, 38.25, 298.5, OptionalDouble.of(3.1 * running),
                        293.15, 1.2, true, movers, 1)),
                List.of(new OperatingPoint.PassageFlow("grille", flow * 1.2, flow, 12.5),
                        new OperatingPoint.PassageFlow("fans", flow * 1.2, flow, -38.25)),
                List.of(new OperatingPoint.BayState("box", -12.5, 293.15, 1.2)));
    }

    public static Engine.Case one(String declared, String id) {
        return new Engine.Case(declared, Condition.named(id));
    }

    public static Outcome airflow(String condition, double flow, int running) {
        Result<OperatingPoint> result = Result.of(point(flow, running))
                .with(Figure.of(FLOW, "fans", flow).in(condition), Figure.of(PRESSURE, "box", -12.5).in(condition));
        return new Outcome("airflow", condition, Status.COMPUTED, result);
    }

    public static Outcome outcome(String analysis, String condition, Status status, Figure... figures) {
        return new Outcome(analysis, condition, status, new Result<>(
                status == Status.COMPUTED ? Optional.of("data") : Optional.empty(), List.of(figures), List.of()));
    }

    /** Two conditions, the second any one fan locked; one requirement met, once not met; dust from a stranger. */
    public static Evaluation cabinet() {
        Requirement flow = atLeast(FLOW, "fans", 80 / 3600.0);
        Requirement dust = atMost(DUST, "worst", 1.5e-6);
        Design design = Design.EMPTY.withName("Control cabinet").withAirPath(new AirPath(List.of(Bay.of("box"), Bay.of("duct")),
                List.of(), Value.Tree.EMPTY)).withRequirements(List.of(flow, dust)).withConditions(List.of(
                Condition.named("nominal"),
                Condition.named("one failed").with("one failed", List.of(
                        new FailedMover(Optional.empty(), Optional.empty(), FailedMover.State.LOCKED)))));
        String first = "one failed: fans 1 locked";
        String second = "one failed: fans 2 locked";
        List<Outcome> outcomes = List.of(airflow("nominal", 0.0256, 2),
                outcome("acme", "nominal", Status.COMPUTED,
                        Figure.of(DUST, "box", 1e-6).in("nominal").within(0.8e-6, 1.6e-6),
                        Figure.of(DUST, "duct", 0.5e-6).in("nominal")),
                airflow(first, 0.0180, 1), airflow(second, 0.0170, 1),
                outcome("acme", "", Status.COMPUTED, Figure.of(COST, "", 1.8e6)));
        List<Finding> findings = List.of(
                Finding.note("fans", "The curve is used outside its measured range.").in("nominal"),
                Finding.note("fans", "The curve is used outside its measured range.").in(first),
                Finding.note("fans", "The curve is used outside its measured range.").in(second),
                Finding.caution("fans", "air comes back through the locked fan").in(second).remedy("Fit flaps.")
                        .source("ISO 5801:2017"));
        List<Verdict> verdicts = List.of(
                verdict(flow, "nominal", Severity.MET, Figure.of(FLOW, "fans", 0.0256).in("nominal")),
                verdict(flow, "one failed", Severity.NOT_MET, Figure.of(FLOW, "fans", 0.0170).in(second)),
                verdict(dust, "nominal", Severity.CAUTION,
                        Figure.of(DUST, "box", 1e-6).in("nominal").within(0.8e-6, 1.6e-6)),
                notJudged(dust, "one failed", "No dust was computed for this condition."));
        return new Evaluation(design, List.of(one("nominal", "nominal"), one("one failed", first), one("one failed", second)),
                outcomes, findings, verdicts, false);
    }

    /** Two components with limits that nobody wrote as requirements; one holds in both conditions, one in the first. */
    public static Evaluation hot() {
        Design design = Design.EMPTY.withName("Camera").withConditions(List.of(Condition.named("cold"), Condition.named("hot")))
                .withHeatSources(List.of(source("camera cards", "85 °C"), source("supply", "105 °C")));
        List<Outcome> outcomes = List.of(
                outcome("heat", "cold", Status.COMPUTED, Figure.of(JUNCTION, "camera cards", 341.45).in("cold"),
                        Figure.of(JUNCTION, "supply", 350.05).in("cold")),
                outcome("heat", "hot", Status.COMPUTED, Figure.of(JUNCTION, "camera cards", 359.85).in("hot"),
                        Figure.of(JUNCTION, "supply", 369.25).in("hot")));
        Engine.Loaded heat = new Engine.Loaded("heat", "temperatures", "acme.heat 1.0.0", Scope.CONDITION, List.of(JUNCTION),
                Optional.empty());
        Cases cases = Cases.of(design, Set.of());
        return new Evaluation(design, cases.list(), outcomes, List.of(),
                Judgement.judge(design, cases, outcomes, List.of(heat), heat.figures()), false);
    }

    private static HeatSource source(String id, String limit) {
        return new HeatSource(id, Quantity.of(80), List.of(),
                Optional.of(Quantity.of(Units.parse(limit, QuantityKind.TEMPERATURE), limit)), Value.Tree.EMPTY);
    }

    public static Results results(Evaluation evaluation) {
        return new Results("cabinet.tramontane.json", evaluation, ANALYSES);
    }

    /** One requirement on a flow, met in so many conditions. */
    public static Evaluation many(int conditions) {
        Requirement flow = atLeast(FLOW, "fans", 0.02);
        List<Engine.Case> cases = new ArrayList<>();
        List<Outcome> outcomes = new ArrayList<>();
        List<Verdict> verdicts = new ArrayList<>();
        List<Condition> declared = new ArrayList<>();
        for (int i = 1; i <= conditions; i++) {
            String id = "condition " + i;
            declared.add(Condition.named(id));
            cases.add(one(id, id));
            outcomes.add(airflow(id, 0.02 + i * 1e-5, 2));
            verdicts.add(verdict(flow, id, Severity.MET, Figure.of(FLOW, "fans", 0.02 + i * 1e-5).in(id)));
        }
        return new Evaluation(Design.EMPTY.withName("Many").withConditions(declared).withRequirements(List.of(flow)), cases,
                outcomes, List.of(), verdicts, false);
    }
}
