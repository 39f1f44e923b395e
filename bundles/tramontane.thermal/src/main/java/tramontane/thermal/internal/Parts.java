package tramontane.thermal.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.airflow.AirPathModel;
import tramontane.analysis.AirStream;
import tramontane.analysis.LinkKind;
import tramontane.analysis.LinkLaw;
import tramontane.analysis.Sections;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FormReader;
import tramontane.model.HeatSource;
import tramontane.model.Link;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Values;
import tramontane.physics.AirState;
import tramontane.thermal.PartState;

/**
 * The heat sources of a design in one condition with their places and chains.
 *
 * <p>Places are numbered: bays in the order of the design, then passages.
 */
public final class Parts {

    /** Change of a surface temperature at which film properties count as settled, K. */
    private static final double SETTLED = 1e-9;
    private static final int MOST_ROUNDS = 50;
    /** Temperature above outside beyond which properties of air are no longer asked for, K. */
    private static final double HOTTEST = 600;

    private final AirPathModel path;
    private final AirState outside;
    private final List<Part> parts;
    private final List<String> nowhere;
    private final int bays;
    private final int places;
    private final Map<Integer, List<Share>> byPlace = new HashMap<>();

    /** One link of a chain, ready. */
    record Item(Link link, LinkKind kind, LinkLaw law, Values values, LinkKind.Setting setting, boolean fromInlet) {
    }

    /**
     * A heat source, ready.
     *
     * @param source its record
     * @param heat   its heat in the condition, W
     * @param places numbers of its places; the first is where it stands
     * @param chain  its chain
     * @param area   free cross-section at its place, m²; NaN where it is not known
     * @param fault  why its junction temperature cannot be told
     */
    public record Part(HeatSource source, double heat, List<Integer> places, List<Item> chain, double area, Optional<String> fault) {

        /** Heat that goes to the first of its places, by its chain, W. */
        public double chainHeat() {
            return heat * source.share(0);
        }

        boolean fromInlet() {
            return !chain.isEmpty() && chain.getLast().fromInlet();
        }
    }

    /**
     * Heat that a part gives off at one of its places.
     *
     * @param part  number of the part
     * @param chain whether it comes through the chain, as that for the first of its places does
     * @param heat  in a steady state, W
     * @param row   row in which it is given off
     */
    public record Share(int part, boolean chain, double heat, Optional<Integer> row) {
    }

    /**
     * The air at places, as it was found.
     *
     * @param arriving temperature of the air that comes to each place, K
     * @param mean     temperature of each bay, K, for places that are bays
     * @param capacity heat that the air through each place carries per kelvin, W/K
     * @param massFlow of that air, kg/s
     */
    record Air(double[] arriving, double[] mean, double[] capacity, double[] massFlow) {
    }

    private Parts(AirPathModel path, Optional<AirState> outside, List<Part> parts, List<String> nowhere, int bays, int places) {
        this.path = path;
        this.outside = outside.orElse(null);
        this.parts = List.copyOf(parts);
        this.nowhere = List.copyOf(nowhere);
        this.bays = bays;
        this.places = places;
        for (int k = 0; k < parts.size(); k++) {
            Part part = parts.get(k);
            for (int i = 0; i < part.places().size(); i++) {
                byPlace.computeIfAbsent(part.places().get(i), place -> new ArrayList<>()).add(new Share(k, i == 0,
                        part.heat() * part.source().share(i), i == 0 ? part.source().row() : Optional.empty()));
            }
        }
    }

    /** The parts of a design. */
    public static Parts of(Design design, Condition condition, AirPathModel path, Collection<? extends LinkKind> kinds) {
        Map<String, LinkKind> byName = new HashMap<>();
        kinds.forEach(kind -> byName.putIfAbsent(kind.form().name(), kind));
        Map<String, Integer> numbers = new HashMap<>();
        int bays = design.airPath().bays().size();
        int number = 0;
        for (Bay bay : design.airPath().bays()) {
            numbers.putIfAbsent(bay.id(), number++);
        }
        for (Passage passage : design.airPath().passages()) {
            numbers.putIfAbsent(passage.id(), number++);
        }
        List<Part> parts = new ArrayList<>();
        List<String> nowhere = new ArrayList<>();
        for (int k = 0; k < design.heatSources().size(); k++) {
            HeatSource source = design.heatSources().get(k);
            List<Integer> places = new ArrayList<>();
            source.into().forEach(share -> Optional.ofNullable(numbers.get(share.place())).ifPresent(places::add));
            if (places.isEmpty() || places.size() < source.into().size()) {
                if (condition.heat(source) > 0) {
                    nowhere.add(source.id());
                }
                continue;
            }
            parts.add(part(design, condition, source, "heatSources[" + k + "]", places, byName, path));
        }
        return new Parts(path, path.obstacles().isEmpty() ? Optional.of(path.outside()) : Optional.empty(), parts, nowhere, bays, number);
    }

    private static Part part(Design design, Condition condition, HeatSource source, String where, List<Integer> places,
            Map<String, LinkKind> kinds, AirPathModel path) {
        List<Item> chain = new ArrayList<>();
        Optional<String> fault = Optional.empty();
        for (int i = 0; i < source.chain().size() && fault.isEmpty(); i++) {
            Link link = source.chain().get(i);
            LinkKind kind = kinds.get(link.kind());
            if (kind == null) {
                fault = Optional.of("its chain has a link of kind " + link.kind() + ", which nothing loaded knows");
                continue;
            }
            try {
                LinkKind.Setting setting = new LinkKind.Setting(design, condition, source, link);
                List<Problem> problems = new ArrayList<>();
                String place = where + ".chain[" + i + "]";
                Values values = FormReader.read(kind.form(), link.parameters(), place, problems);
                problems.addAll(kind.check(values, setting, place));
                fault = problems.stream().filter(Problem::isError).findFirst().map(Problem::sentence);
                if (fault.isEmpty()) {
                    chain.add(new Item(link, kind, kind.law(values, setting), values, setting, kind.fromInlet(values, setting)));
                }
            } catch (RuntimeException | LinkageError e) { // whoever made the kind should hear of it, not we
                fault = Optional.of("link kind " + link.kind() + " failed: " + e.getClass().getSimpleName()
                        + (e.getMessage() == null ? "" : ": " + e.getMessage()));
            }
        }
        return new Part(source, condition.heat(source), List.copyOf(places), List.copyOf(chain), area(design, source, path), fault);
    }

    private static double area(Design design, HeatSource source, AirPathModel path) {
        String place = source.into().getFirst().place();
        Optional<Bay> bay = design.airPath().bays().stream().filter(each -> each.id().equals(place)).findFirst();
        if (bay.isPresent()) {
            return Sections.decode(new EnclosureSection(), bay.get()).flatMap(EnclosureSection.Enclosure::flowArea)
                    .map(Quantity::si).orElse(Double.NaN);
        }
        return path.obstacles().isEmpty() ? path.flowArea(place).orElse(Double.NaN) : Double.NaN;
    }

    /** The same with the heat of one part changed by a factor. */
    public Parts scaled(int k, double factor) {
        List<Part> changed = new ArrayList<>(parts);
        Part part = parts.get(k);
        changed.set(k, new Part(part.source(), part.heat() * factor, part.places(), part.chain(), part.area(), part.fault()));
        return new Parts(path, Optional.ofNullable(outside), changed, nowhere, bays, places);
    }

    /** Those that stand somewhere. */
    public List<Part> list() {
        return parts;
    }

    /** Sources with heat that stand nowhere, or at a place that the design does not have. */
    public List<String> nowhere() {
        return nowhere;
    }

    /** Heat put into each place, W. */
    public double[] heat() {
        double[] heat = new double[places];
        byPlace.forEach((place, shares) -> shares.forEach(share -> heat[place] += share.heat()));
        return heat;
    }

    /** Whether anything stands at a place. */
    boolean inUse(int place) {
        return byPlace.containsKey(place);
    }

    /** Number of places. */
    public int places() {
        return places;
    }

    /** Number of bays, the places with the lowest numbers. */
    public int bays() {
        return bays;
    }

    /**
     * How much the air at a part is warmer than that which comes to its place, per watt of each part.
     *
     * @param k its number
     * @return weights by number of part, to be divided by the heat that the air carries per kelvin; empty where the air at it is
     *         the mean of a bay
     */
    Optional<double[]> along(int k) {
        Part part = parts.get(k);
        int place = part.places().getFirst();
        boolean passage = place >= bays;
        Optional<Integer> row = part.source().row();
        if (!passage && row.isEmpty()) {
            return Optional.empty();
        }
        double[] weights = new double[parts.size()];
        for (Share share : byPlace.get(place)) {
            double of = parts.get(share.part()).heat() == 0 ? 0 : share.heat() / parts.get(share.part()).heat();
            weights[share.part()] += of * weight(k, share);
        }
        return Optional.of(weights);
    }

    /**
     * How much heat given off at the place of a part warms the air at it.
     *
     * @param k     number of the part
     * @param share heat given off at the first of its places
     * @return factor on that heat over what the air carries per kelvin: 0.5 for the mean along the way, 1 for all of it
     */
    public double weight(int k, Share share) {
        Part part = parts.get(k);
        Optional<Integer> row = part.source().row();
        if (row.isEmpty() || share.row().isEmpty()) {
            return share.part() == k && part.fromInlet() ? 0 : 0.5; // spread evenly along the way
        }
        return share.row().get() < row.get() ? part.source().wakeFactor()
                : share.row().get().equals(row.get()) && !part.fromInlet() ? 0.5 : 0;
    }

    /** What is given off at a place. */
    public List<Share> shares(int place) {
        return byPlace.getOrDefault(place, List.of());
    }

    /**
     * The temperatures of a part.
     *
     * @param k   its number
     * @param air the air at all places
     */
    PartState state(int k, Air air) {
        Part part = parts.get(k);
        int place = part.places().getFirst();
        double arriving = air.arriving()[place];
        double capacity = air.capacity()[place];
        Optional<double[]> along = along(k);
        double local = along.isEmpty() || place < bays && !(capacity > 0) ? air.mean()[place] : arriving;
        if (along.isPresent() && (capacity > 0 || place >= bays)) {
            double heat = 0;
            for (int j = 0; j < parts.size(); j++) {
                heat += along.get()[j] * parts.get(j).heat();
            }
            local += heat == 0 ? 0 : heat / capacity;
        }
        boolean still = !Double.isFinite(local);
        if (part.fault().isPresent() || still || local > outside.temperature() + Balancing.HIGHEST) {
            return new PartState(part.source().id(), part.heat(), part.chainHeat(), arriving, local, Optional.empty(), List.of(),
                    Optional.of(part.fault().orElse(still ? "no air goes by it" : "the air at it would be more than 400 K warmer than outside")));
        }
        return chain(part, arriving, local, air.massFlow()[place]);
    }

    private PartState chain(Part part, double arriving, double local, double massFlow) {
        double heat = part.chainHeat();
        double surface = local;
        AirStream stream = stream(part, local, local, massFlow);
        double[] resistance = new double[part.chain().size()];
        for (int round = 0; round < MOST_ROUNDS; round++) {
            double beyond = 0;
            for (int i = resistance.length - 1; i >= 0; i--) {
                resistance[i] = part.chain().get(i).law().resistance(stream, beyond);
                if (!(resistance[i] >= 0) || Double.isInfinite(resistance[i]) && heat > 0) {
                    return faulty(part, arriving, local, stream, part.chain().get(i), resistance[i]);
                }
                beyond += resistance[i];
            }
            double next = resistance.length == 0 || heat == 0 ? local : local + heat * resistance[resistance.length - 1];
            boolean settled = Math.abs(next - surface) <= SETTLED;
            surface = next;
            stream = stream(part, local, surface, massFlow);
            if (settled) {
                break;
            }
        }
        List<PartState.LinkState> links = new ArrayList<>();
        for (int i = 0; i < resistance.length; i++) {
            Item item = part.chain().get(i);
            links.add(new PartState.LinkState(item.link().kind(), item.kind().step(), resistance[i],
                    heat == 0 ? 0 : heat * resistance[i], item.link().tolerance().map(Quantity::si).orElse(0.0)));
        }
        return new PartState(part.source().id(), part.heat(), heat, arriving, local, Optional.of(stream), links, Optional.empty());
    }

    /**
     * Resistances of a part's chain, K/W, from the junction outwards, as its links give them: not checked.
     *
     * @param k        number of the part
     * @param local    temperature of the air at it, K
     * @param surface  temperature of the surface that touches the air, K
     * @param massFlow of the air through its place, kg/s
     */
    public double[] resistances(int k, double local, double surface, double massFlow) {
        Part part = parts.get(k);
        AirStream stream = stream(part, local, surface, massFlow);
        double[] resistance = new double[part.chain().size()];
        double beyond = 0;
        for (int i = resistance.length - 1; i >= 0; i--) {
            resistance[i] = part.chain().get(i).law().resistance(stream, beyond);
            beyond += resistance[i];
        }
        return resistance;
    }

    private PartState faulty(Part part, double arriving, double local, AirStream stream, Item item, double resistance) {
        String why = Double.isInfinite(resistance) ? "its link " + item.link().kind() + " carries no heat, as no air moves by it; where it stands in still air"
                        + " on purpose, state its resistance there with a link of kind resistance or surface"
                : Double.isNaN(resistance) ? "its link " + item.link().kind() + " needs the velocity of the air at "
                        + part.source().into().getFirst().place() + ", which is not known; give the link a flowArea"
                        + (part.places().getFirst() < bays ? ", or the bay an enclosure with one" : "")
                : "its link " + item.link().kind() + " gives a resistance of " + resistance + " K/W";
        return new PartState(part.source().id(), part.heat(), part.chainHeat(), arriving, local, Optional.of(stream), List.of(),
                Optional.of(why));
    }

    /** The air at a part: its flow as it comes, its properties at the mean of surface and air. */
    AirStream stream(Part part, double local, double surface, double massFlow) {
        double film = Math.min(outside.temperature() + HOTTEST, 0.5 * (local + surface));
        AirState at = outside.heatedTo(Math.min(outside.temperature() + HOTTEST, local));
        AirState mean = outside.heatedTo(film);
        return new AirStream(massFlow / at.density(), part.area(), mean.density(), mean.viscosity(), mean.conductivity(), specificHeat());
    }

    /** Specific heat of the air, J/(kg K). */
    double specificHeat() {
        return outside.specificHeat();
    }

    /** Free cross-section of the air path at a part. */
    OptionalDouble area(int k) {
        return Double.isNaN(parts.get(k).area()) ? OptionalDouble.empty() : OptionalDouble.of(parts.get(k).area());
    }

    /** The air path. */
    AirPathModel path() {
        return path;
    }

    @Override
    public String toString() {
        return Arrays.toString(heat());
    }
}
