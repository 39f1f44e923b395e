package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.airflow.AirPathModel;
import tramontane.airflow.AirPathSolution;
import tramontane.airflow.AirflowStudy;
import tramontane.airflow.Feed;
import tramontane.analysis.Figure;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.Input;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.Trace;
import tramontane.model.AirMover;
import tramontane.model.AirPath;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.FormReader;
import tramontane.model.MoverCurve;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Quantities;
import tramontane.model.Quantity;
import tramontane.model.Value;
import tramontane.model.Values;

/** Small designs and what runs them. */
final class Cases {

    static final List<PassageKind> KINDS = List.of(new OpeningKind(), new OrificeKind(), new GrilleKind(), new ScreenKind(),
            new FingerGuardKind(), new FilterKind(), new DuctKind(), new BendKind(), new AreaChangeKind(), new CardCageKind(),
            new HeatSinkKind(), new GapKind(), new FlapKind(), new MeasuredResistanceKind(),
            new BankKind());

    private Cases() {
    }

    /** A tree of texts and numbers: {@code tree("area", "10 cm²", "across", 2)}. */
    static Value.Tree tree(Object... members) {
        Value.Tree tree = Value.Tree.EMPTY;
        for (int i = 0; i < members.length; i += 2) {
            tree = tree.with((String) members[i], value(members[i + 1]));
        }
        return tree;
    }

    private static Value value(Object member) {
        return switch (member) {
            case Value written -> written;
            case Number number -> Value.Num.of(number.doubleValue());
            case Boolean on -> new Value.Flag(on);
            case List<?> list -> new Value.Items(list.stream().map(Cases::value).toList());
            default -> new Value.Text(member.toString());
        };
    }

    static Passage passage(String id, String kind, String from, String to, Object... members) {
        return new Passage(id, kind, from, to, tree(members));
    }

    /** A bank of part F. */
    static Passage bank(String id, String from, String to, Object... members) {
        return new Passage(id, Passage.BANK, from, to, tree("mover", "F").with(tree(members)));
    }

    /** The pure square law Δp = b q² at 1.2 kg/m³. */
    static Passage square(String id, String from, String to, double quadratic) {
        return passage(id, "measured resistance", from, to, "quadratic", quadratic);
    }

    static final double[] FLOW = {0, 0.01, 0.02, 0.03, 0.04, 0.05};
    static final double[] PRESSURE = {80, 78, 70, 54, 30, 0};
    static final double[] POWER = {6, 6.5, 7, 7.2, 7, 6.4};
    /** Speed of {@link #mover}, rad/s. */
    static final double SPEED = 300;

    static MoverCurve curve(double speed, double density, double[] flow, double[] pressure, double[] power) {
        return new MoverCurve(Optional.of(Quantity.of(speed)), Optional.empty(), Optional.empty(),
                Optional.of(Quantity.of(density)), Quantities.of(flow), Quantities.of(pressure),
                power.length == 0 ? Optional.empty() : Optional.of(Quantities.of(power)), Optional.empty(), Value.Tree.EMPTY);
    }

    static AirMover part(MoverCurve... curves) {
        return new AirMover("F", "", Optional.empty(), Optional.of(Quantity.of(0.12)), Optional.of(Quantity.of(0.12)),
                Optional.empty(), Optional.of(Quantity.of(0.008)), Optional.empty(), Optional.empty(), List.of(curves),
                Value.Tree.EMPTY);
    }

    /** A bank as on the test stand: nothing near its movers, no flaps. */
    static Bank bank(String id, AirMover mover, int columns, int series, Map<Integer, FailedMover.State> failed) {
        return new Bank(id, mover, columns, series, failed, Optional.empty(), 1, new Bank.Fitting(1, false,
                MoverCharacteristic.Derating.NONE, Optional.empty(), "A", Optional.empty()));
    }

    /** A mover whose curve falls all the way. */
    static AirMover mover() {
        return part(curve(SPEED, 1.2, FLOW, PRESSURE, POWER));
    }

    /** A mover with a dip between 0.015 and 0.025 m³/s. */
    static AirMover dipping() {
        return part(curve(SPEED, 1.2, new double[] {0, 0.01, 0.015, 0.025, 0.04, 0.05},
                new double[] {80, 60, 50, 60, 40, 0}, new double[0]));
    }

    static Design design(AirMover mover, List<String> bays, Passage... passages) {
        return Design.EMPTY.withAirMovers(List.of(mover))
                .withAirPath(new AirPath(bays.stream().map(Bay::of).toList(), List.of(passages), Value.Tree.EMPTY));
    }

    static FailedMover failed(String bank, int position, FailedMover.State state) {
        return new FailedMover(Optional.of(bank), Optional.of(position), state);
    }

    /** Air of exactly 1.2 kg/m³ to some 1e-9, by its pressure; 20 °C and 50 % humidity. */
    static Condition standardAir() {
        double low = 95000;
        double high = 105000;
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (tramontane.physics.Air.moistDensity(middle, 293.15, 0.5) < 1.2) {
                low = middle;
            } else {
                high = middle;
            }
        }
        Condition plain = Condition.named("standard air");
        return new Condition(plain.id(), Optional.empty(), Optional.empty(), Optional.of(Quantity.of(low)), Optional.empty(),
                Optional.empty(), Map.of(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), List.of(),
                Value.Tree.EMPTY);
    }

    static Condition atAltitude(double metres) {
        return new Condition("high up", Optional.empty(), Optional.of(Quantity.of(metres)), Optional.empty(),
                Optional.of(Quantity.of(0)), Optional.empty(), Map.of(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), List.of(), Value.Tree.EMPTY);
    }

    static Condition clogged(double factor) {
        return new Condition("clogged", Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), Map.of(), Optional.of(Quantity.of(factor)), Optional.empty(), Optional.empty(),
                Optional.empty(), List.of(), Value.Tree.EMPTY);
    }

    static PassageKind.Setting setting(Design design, Condition condition, Passage passage) {
        return new PassageKind.Setting(design, condition, passage);
    }

    /** The law of a passage that has no errors. */
    static FlowLaw law(PassageKind kind, Condition condition, Object... members) {
        Passage passage = passage("x", kind.form().name(), "a", "b", members);
        List<Problem> problems = new ArrayList<>();
        Values values = FormReader.read(kind.form(), passage.parameters(), "x", problems);
        PassageKind.Setting setting = setting(design(mover(), List.of("a", "b"), passage), condition, passage);
        problems.addAll(kind.check(values, setting, "x"));
        if (!problems.isEmpty()) {
            throw new AssertionError(problems.toString());
        }
        return kind.law(values, setting);
    }

    /** What a passage without errors says of where its law comes from. */
    static Optional<PassageKind.Origin> origin(PassageKind kind, Condition condition, Object... members) {
        Passage passage = passage("x", kind.form().name(), "a", "b", members);
        Values values = FormReader.read(kind.form(), passage.parameters(), "x", new ArrayList<>());
        return kind.origin(values, setting(design(mover(), List.of("a", "b"), passage), condition, passage));
    }

    /** What a passage without errors says of a flow of air of 1.2 kg/m³. */
    static List<String> findings(PassageKind kind, double flow, double drop, Object... members) {
        Passage passage = passage("x", kind.form().name(), "a", "b", members);
        Values values = FormReader.read(kind.form(), passage.parameters(), "x", new ArrayList<>());
        return kind.findings(values, setting(design(mover(), List.of("a", "b"), passage), Condition.NOMINAL, passage),
                new OperatingPoint.PassageFlow("x", 1.2 * flow, flow, drop)).stream()
                .map(finding -> finding.severity().word() + ": " + finding.message()).toList();
    }

    /** Everything that is said against the parameters of a passage. */
    static List<String> problems(PassageKind kind, Object... members) {
        Passage passage = passage("x", kind.form().name(), "a", "b", members);
        List<Problem> problems = new ArrayList<>();
        Values values = FormReader.read(kind.form(), passage.parameters(), "airPath.passages[3]", problems);
        problems.addAll(kind.check(values, setting(Design.EMPTY, Condition.NOMINAL, passage), "airPath.passages[3]"));
        return problems.stream().map(Problem::sentence).toList();
    }

    static Result<OperatingPoint> run(Design design, Condition condition, SpeedLaw... laws) {
        return run(design, condition, null, laws);
    }

    static Result<OperatingPoint> run(Design design, Condition condition, List<Trace.Step> steps, SpeedLaw... laws) {
        List<Map.Entry<Map<String, Object>, SpeedLaw>> services = new ArrayList<>();
        for (int i = 0; i < laws.length; i++) {
            services.add(Map.entry(Map.of("service.ranking", i, "service.id", (long) i), laws[i]));
        }
        AirflowAnalysis analysis = new AirflowAnalysis(KINDS, services);
        return analysis.run(new Given(analysis.reads(design.withConditions(List.of(condition))), condition), Run.alone(steps == null ? Trace.SILENT : Trace.into(steps)));
    }

    /** What is said of an air path at bay temperatures and speed settings of their own. */
    static Result<OperatingPoint> study(Design design, Condition condition, Map<String, Feed> feeds, double[] temperatures,
            Optional<AirPathSolution> start, List<Trace.Step> steps, SpeedLaw... laws) {
        Design read = AirflowStudy.reads(design.withConditions(List.of(condition)), List.of(laws));
        return AirflowStudy.of(read, AirPathModel.of(read, condition, KINDS), List.of(laws), feeds, temperatures, start,
                Run.alone(steps == null ? Trace.SILENT : Trace.into(steps)));
    }

    /** What feeds a mover of a design in which there is nothing else. */
    static SpeedLaw.Supply supply(AirMover mover, Condition condition, double setting, double density) {
        Passage bank = bank("fans", "outside", "box");
        return new SpeedLaw.Supply(design(mover, List.of("box"), bank), bank, mover, condition, setting, density, 293.15);
    }

    private record Given(Design design, Condition condition) implements Input {

        @Override
        public <R> R result(Class<R> type) {
            throw new IllegalArgumentException();
        }

        @Override
        public <R> Map<String, R> results(Class<R> type) {
            return Map.of();
        }

        @Override
        public List<Figure> figures(String id) {
            return List.of();
        }
    }
}
