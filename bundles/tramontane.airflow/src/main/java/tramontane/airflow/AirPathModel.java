package tramontane.airflow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.Supplier;
import tramontane.airflow.internal.Bank;
import tramontane.analysis.Finding;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Severity;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.SpeedLaws;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FormReader;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Values;
import tramontane.physics.AirState;

/**
 * The air path of a design in one condition, ready to be solved at any bay temperatures and speeds.
 *
 * <pre>{@code
 * AirPathModel model = AirPathModel.of(design, condition, kinds);
 * if (model.obstacles().isEmpty()) {
 *     AirPathSolution solution = model.at(model.speeds(speedLaws)).solve(temperatures);
 * }
 * }</pre>
 */
public final class AirPathModel {

    private final Design design;
    private final Condition condition;
    private final List<Bay> bays;
    private final List<Part> parts;
    private final Map<String, Part> byId = new HashMap<>();
    private final Optional<AirState> outside;
    private final List<Finding> obstacles;

    /** A passage with its ends; a bank instead of a law where it holds movers. */
    record Part(Passage passage, int from, int to, Optional<FlowLaw> law, Supplier<Optional<PassageKind.Origin>> origin,
            Function<OperatingPoint.PassageFlow, List<Finding>> findings, OptionalDouble flowArea, Optional<Bank> bank) {
    }

    private AirPathModel(Design design, Condition condition, List<Bay> bays, List<Part> parts, Optional<AirState> outside,
            List<Finding> obstacles) {
        this.design = design;
        this.condition = condition;
        this.bays = List.copyOf(bays);
        this.parts = List.copyOf(parts);
        parts.forEach(part -> byId.put(part.passage().id(), part));
        this.outside = outside;
        this.obstacles = List.copyOf(obstacles);
    }

    /**
     * The air path of a design in a condition.
     *
     * @param design    a design without errors
     * @param condition the condition, failed movers all concrete
     * @param kinds     the loaded passage kinds
     */
    public static AirPathModel of(Design design, Condition condition, Collection<? extends PassageKind> kinds) {
        Map<String, PassageKind> byName = new HashMap<>();
        kinds.forEach(kind -> byName.putIfAbsent(kind.form().name(), kind));
        Map<String, Integer> numbers = new HashMap<>();
        numbers.put(Bay.OUTSIDE, Network.OUTSIDE);
        for (Bay bay : design.airPath().bays()) {
            numbers.put(bay.id(), numbers.size() - 1);
        }
        List<Finding> obstacles = new ArrayList<>();
        List<Part> parts = new ArrayList<>();
        for (int i = 0; i < design.airPath().passages().size(); i++) {
            Passage passage = design.airPath().passages().get(i);
            part(design, condition, passage, "airPath.passages[" + i + "]", byName, numbers, obstacles).ifPresent(parts::add);
        }
        if (design.airPath().passages().isEmpty()) {
            obstacles.add(obstacle("", "the design has no air path", "add bays and passages"));
        }
        return new AirPathModel(design, condition, design.airPath().bays(), parts, outside(condition, obstacles), obstacles);
    }

    private static Optional<Part> part(Design design, Condition condition, Passage passage, String place,
            Map<String, PassageKind> kinds, Map<String, Integer> bays, List<Finding> obstacles) {
        Optional<PassageKind> kind = Optional.ofNullable(kinds.get(passage.kind()));
        if (kind.isEmpty()) {
            obstacles.add(obstacle(passage.id(), "passage " + passage.id() + " is of kind " + passage.kind()
                    + ", which nothing loaded knows; without it no flow can be computed",
                    "load the bundle that has this kind, or correct the kind"));
            return Optional.empty();
        }
        for (String end : List.of(passage.from(), passage.to())) {
            if (!bays.containsKey(end)) {
                obstacles.add(obstacle(passage.id(), "passage " + passage.id() + " ends in bay " + end
                        + ", which the design does not have", "name a bay of the design or outside"));
                return Optional.empty();
            }
        }
        try {
            return part(design, condition, passage, place, kind.get(), bays, obstacles);
        } catch (RuntimeException | LinkageError e) { // whoever made the kind should hear of it, not we
            obstacles.add(obstacle(passage.id(), "passage kind " + passage.kind() + " failed for passage " + passage.id() + ": "
                    + e.getClass().getSimpleName() + (e.getMessage() == null ? "" : ": " + e.getMessage()),
                    "tell whoever makes the bundle that gives this kind"));
            return Optional.empty();
        }
    }

    private static Optional<Part> part(Design design, Condition condition, Passage passage, String place, PassageKind kind,
            Map<String, Integer> bays, List<Finding> obstacles) {
        PassageKind.Setting setting = new PassageKind.Setting(design, condition, passage);
        List<Problem> problems = new ArrayList<>();
        Values values = FormReader.read(kind.form(), passage.parameters(), place, problems);
        problems.addAll(kind.check(values, setting, place));
        Optional<Problem> error = problems.stream().filter(Problem::isError).findFirst();
        if (error.isPresent()) {
            obstacles.add(obstacle(passage.id(), "passage " + passage.id() + " cannot be used: " + error.get().sentence(),
                    "correct its parameters"));
            return Optional.empty();
        }
        Optional<FlowLaw> law = Optional.empty();
        Optional<Bank> bank = Optional.empty();
        if (passage.isBank()) {
            if (design.airMover(values.text("mover")).isEmpty()) {
                obstacles.add(obstacle(passage.id(), "bank " + passage.id() + " uses air mover " + values.text("mover")
                        + ", which the design does not have", "add the part, or name another"));
                return Optional.empty();
            }
            bank = Optional.of(Bank.of(values, setting));
        } else {
            law = Optional.of(kind.law(values, setting));
        }
        return Optional.of(new Part(passage, bays.get(passage.from()), bays.get(passage.to()), law,
                () -> kind.origin(values, setting), flow -> kind.findings(values, setting, flow), flowArea(kind, values, setting),
                bank));
    }

    private static OptionalDouble flowArea(PassageKind kind, Values values, PassageKind.Setting setting) {
        OptionalDouble area = kind.flowArea(values, setting);
        if (area.isPresent() && !(area.getAsDouble() > 0 && area.getAsDouble() < Double.POSITIVE_INFINITY)) {
            throw new IllegalStateException("it says that air goes through an area of " + area.getAsDouble() + " m²");
        }
        return area;
    }

    private static Optional<AirState> outside(Condition condition, List<Finding> obstacles) {
        try {
            return Optional.of(condition.pressure().isPresent()
                    ? new AirState(condition.pressure().get().si(), condition.temperature(), condition.relativeHumidity())
                    : AirState.atAltitude(condition.altitudeMetres(), condition.temperature(), condition.relativeHumidity()));
        } catch (IllegalArgumentException e) {
            obstacles.add(obstacle("", "the air outside cannot be: " + e.getMessage(),
                    "correct temperature, pressure or humidity of the condition"));
            return Optional.empty();
        }
    }

    static Finding obstacle(String place, String message, String remedy) {
        return Finding.of(Severity.NOT_JUDGED, place, message).remedy(remedy);
    }

    /** Why it cannot be solved at all; empty if nothing is in the way. */
    public List<Finding> obstacles() {
        return obstacles;
    }

    /**
     * The air outside.
     *
     * @throws java.util.NoSuchElementException where {@link #obstacles} says that there can be no such air
     */
    public AirState outside() {
        return outside.orElseThrow();
    }

    /** The condition. */
    public Condition condition() {
        return condition;
    }

    /** The bays in the order of temperatures, without the outside. */
    public List<Bay> bays() {
        return bays;
    }

    /** The passage of that id. */
    public Passage passage(String id) {
        return byId.get(id).passage();
    }

    /** The passages that can be solved, banks among them. */
    public List<Passage> passages() {
        return parts.stream().map(Part::passage).toList();
    }

    /** Where the flow law of a passage comes from, if its kind says; asked only for a trace. */
    public Optional<PassageKind.Origin> origin(String passage) {
        return Optional.ofNullable(byId.get(passage)).flatMap(part -> part.origin().get());
    }

    /**
     * The free cross-section through which the air of a passage goes, m², as its kind says; empty where it says none, and for a
     * passage that the air path does not have.
     */
    public OptionalDouble flowArea(String passage) {
        Part part = byId.get(passage);
        return part == null ? OptionalDouble.empty() : part.flowArea();
    }

    /** What the kinds of the passages say of their flows. */
    public List<Finding> findings(OperatingPoint point) {
        List<Finding> findings = new ArrayList<>();
        for (OperatingPoint.PassageFlow flow : point.passages()) {
            findings.addAll(byId.get(flow.passage()).findings().apply(flow));
        }
        return List.copyOf(findings);
    }

    /** The ids of the banks. */
    public List<String> banks() {
        return parts.stream().flatMap(part -> part.bank().stream()).map(Bank::id).toList();
    }

    /** How many movers stand one behind another in each column of a bank, and so share a flow. */
    public int series(String bank) {
        return byId.get(bank).bank().orElseThrow().series();
    }

    /** Speed of a bank's movers at full setting by its part's own statement, rad/s; 0 where it states none. */
    public double ratedSpeed(String bank) {
        return byId.get(bank).bank().orElseThrow().ratedSpeed();
    }

    /**
     * The relative tolerance of the pressure that a bank gives at equal flow: the largest of the curves that it is taken from.
     *
     * @param bank  its id
     * @param speed of its movers, rad/s
     * @return 0 where none is stated, or none runs
     */
    public double tolerance(String bank, double speed) {
        Bank found = byId.get(bank).bank().orElseThrow();
        return found.fault(speed).isPresent() ? 0 : found.tolerance(speed);
    }

    /**
     * Mass flow of each column of a bank, kg/s, positive in the bank's direction; negative where a column is blown back through,
     * as one with a failed mover may be. Columns in the order of positions: across, then along.
     *
     * <p>The flow of a {@link OperatingPoint.MoverPoint} is a volume flow at the density of the bank's inlet, so that this is
     * its product with that density, and the columns add up to the bank's mass flow as exactly as the network's mass balance
     * closes (1e-9 of the largest flow).
     *
     * <p>In one respect it is a simplification: a bank with curves that fall all the way, or whose columns are all alike, is one
     * passage that holds the air of one bay, that from which more comes than goes back. So a column that is blown back through
     * holds that air too as far as its resistance goes, though what comes back is the air of the other bay. Unlike columns
     * with a dip in their curve are passages of their own, each with its own air.
     *
     * @param point a duty point of this air path
     */
    public double[] columnFlows(OperatingPoint.BankPoint point) {
        Bank bank = byId.get(point.bank()).bank().orElseThrow();
        double[] flows = new double[bank.columns()];
        for (int c = 0; c < flows.length; c++) {
            flows[c] = point.movers().get(c * bank.series()).flow() * point.density();
        }
        return flows;
    }

    /** Every bay at the temperature outside, K. */
    public double[] temperatures() {
        double[] temperatures = new double[bays.size()];
        Arrays.fill(temperatures, condition.temperature());
        return temperatures;
    }

    /** What a bank is fed with where no control law acts: its share of the condition's setting, in air as outside. */
    public Feed feed(String bank) {
        return feed(byId.get(bank).bank().orElseThrow());
    }

    private Feed feed(Bank bank) {
        return new Feed(setting(bank), outside().density(), outside().temperature(),
                "condition " + condition.id() + (bank.setting() == 1 ? "" : ", times the speed of the bank"));
    }

    double setting(Bank bank) {
        return condition.speedSetting() * bank.setting();
    }

    /**
     * The speed of each bank's movers, rad/s, at the condition's speed setting in air as outside.
     *
     * @param laws the loaded speed laws, highest ranked first
     */
    public Map<String, Double> speeds(List<? extends SpeedLaw> laws) {
        return speeds(laws, Map.of());
    }

    /**
     * The speed of each bank's movers, rad/s: what the first speed law says that has an answer, else the speed setting times the
     * rated speed.
     *
     * @param laws  the loaded speed laws, highest ranked first; see {@link SpeedLaws#ranked}
     * @param feeds speed setting and inlet air by bank; {@link #feed} for one that is missing
     */
    public Map<String, Double> speeds(List<? extends SpeedLaw> laws, Map<String, Feed> feeds) {
        Map<String, Double> speeds = new LinkedHashMap<>();
        for (Part part : parts) {
            part.bank().ifPresent(bank -> {
                Feed feed = Optional.ofNullable(feeds.get(bank.id())).orElseGet(() -> feed(bank));
                SpeedLaw.Supply supply = supply(part, bank, feed);
                speeds.put(bank.id(), laws.stream().flatMap(law -> law.speed(supply).stream()).findFirst()
                        .orElseGet(() -> bank.ratedSpeed() * feed.setting()));
            });
        }
        return speeds;
    }

    /** What the movers of a bank are fed with and work against, for a speed law. */
    public SpeedLaw.Supply supply(String bank, Feed feed) {
        Part part = byId.get(bank);
        return supply(part, part.bank().orElseThrow(), feed);
    }

    private SpeedLaw.Supply supply(Part part, Bank bank, Feed feed) {
        return new SpeedLaw.Supply(design, part.passage(), bank.mover(), condition, feed.setting(), feed.density(),
                feed.temperature());
    }

    /**
     * Makes ready for solving at given speeds.
     *
     * @param speeds speed of each bank's running movers, rad/s, by bank id; the rated speed times the condition's setting for
     *               one that is missing
     */
    public AirPathSolver at(Map<String, Double> speeds) {
        return at(speeds, Map.of(), Map.of());
    }

    /**
     * Makes ready for solving at given speeds, with some passages and banks other than they are stated to be.
     *
     * @param speeds   as above
     * @param pressure factor on the pressure drop of a passage, or the pressure of a bank, at equal flow, by id; 1 for one that
     *                 is missing
     * @param area     factor on the area of a passage: it takes so much more flow at equal pressure; 1 for one that is missing
     */
    public AirPathSolver at(Map<String, Double> speeds, Map<String, Double> pressure, Map<String, Double> area) {
        return new AirPathSolver(this, parts, speeds, pressure, area);
    }

    static double height(Bay bay) {
        return bay.height().map(Quantity::si).orElse(0.0);
    }
}
