package tramontane.thermal.internal.time;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Severity;
import tramontane.model.Quantity;
import tramontane.physics.Air;
import tramontane.physics.units.QuantityKind;
import tramontane.thermal.History;
import tramontane.thermal.Loop;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalState;
import tramontane.thermal.Transient;
import tramontane.thermal.internal.Parts;

/** Follows the temperatures of a design through its conditions. */
public final class Simulation {

    /** Change of a bay's temperature within a piece that is aimed at, and the most, K. */
    private static final double BAY = 0.15;
    private static final double MOST_BAY = 0.25;
    /** The same for speed settings. */
    private static final double SETTING = 0.0025;
    private static final double MOST_SETTING = 0.005;
    /** Change of a surface within a piece that is aimed at, K: what its resistance to the air depends on. */
    private static final double SURFACE = 2;
    /** Relative change of flows from piece to piece that is aimed at. */
    private static final double FLOW = 0.01;
    /** Growth of pieces from one to the next. */
    private static final double GROWTH = 2;
    /** The duration over the longest piece, and over the shortest: a tenth of the time within which bodies count as settled. */
    private static final double FEWEST_PIECES = 100;
    private static final double SHORTEST = 10.0 * Transient.QUICK;
    private static final int MOST_PIECES = 50_000;
    /** Difference at which flows and temperatures count as agreed, K: on the way, and where something jumps. */
    private static final double AGREED = 0.01;
    private static final double AGREED_AT_ONCE = 1e-5;
    /** Alike cycles of a control law after which whole cycles are left out. */
    private static final int CYCLES = 3;
    /** Change of a body over the cycles left out, K. */
    private static final double LEFT_OUT = 0.3;
    /** The duration over the longest time left out. */
    private static final double FEWEST_LOOKS = 50;
    private static final int MOST_SWITCHES = 50;
    private static final int MOST_TIMES = 500;
    /** Conditions whose flows are looked at for what settles quickly. */
    private static final int MOST_LOOKED = 20;

    private final List<Transient.Step> steps;
    private final double duration;
    private final double pace;
    private final BooleanSupplier stop;
    private final ThermalModel first;
    private final List<Parts.Part> parts;
    private final List<History.Remark> remarks = new ArrayList<>();
    private final List<History.Cycle> cycles = new ArrayList<>();
    private final Map<String, History.Wet> wet = new LinkedHashMap<>();
    private final Map<String, double[]> lastSurface = new HashMap<>();
    private final Extremes extremes;
    private final Recorder recorder;
    private Bodies bodies;
    private List<String> settled = List.of();
    private double[] temperatures;
    private Plant plant;
    private Plant.Held held;
    private Regulation.State laws;
    private double time;
    private int pieces;

    private Simulation(List<Transient.Step> steps, double duration, double pace, BooleanSupplier stop) {
        this.steps = steps;
        this.duration = duration;
        this.pace = pace;
        this.stop = stop;
        first = steps.getFirst().model();
        parts = first.parts().list();
        extremes = new Extremes(parts.stream().mapToDouble(part -> part.source().limit().map(Quantity::si)
                .orElse(Double.POSITIVE_INFINITY)).toArray());
        recorder = new Recorder(first.path().bays().size(), parts.size(), first.path().banks().size());
    }

    /** See {@link Transient#of}. */
    public static Transient run(List<Transient.Step> steps, Transient.Start start, double duration, BooleanSupplier stop) {
        return run(steps, start, duration, 1, stop);
    }

    /**
     * The same with pieces of time shorter than usual.
     *
     * @param pace factor on what may change within a piece, up to 1
     */
    static Transient run(List<Transient.Step> steps, Transient.Start start, double duration, double pace, BooleanSupplier stop) {
        if (steps.isEmpty() || steps.getFirst().at() != 0 || !(duration > 0 && duration < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("expected steps from time 0 on and a duration above 0, got " + steps.size() + " steps and "
                    + duration + " s");
        }
        for (int i = 0; i < steps.size(); i++) {
            if (i > 0 && !(steps.get(i).at() > steps.get(i - 1).at() && steps.get(i).at() < duration)) {
                throw new IllegalArgumentException("expected times of steps that rise and lie within " + duration + " s, got " + steps.get(i).at());
            }
            List<Finding> obstacles = new ArrayList<>(steps.get(i).model().obstacles());
            if (obstacles.isEmpty()) {
                obstacles.addAll(steps.get(i).model().controls().obstacles());
            }
            if (!obstacles.isEmpty()) {
                return new Transient(Optional.empty(), obstacles);
            }
        }
        try {
            return new Transient(Optional.of(new Simulation(steps, duration, pace, stop).run(start)), List.of());
        } catch (Plant.Stuck e) {
            return new Transient(Optional.empty(), e.why());
        }
    }

    private double quick() {
        return duration / Transient.QUICK;
    }

    private Plant plant(Transient.Step step) {
        return new Plant(step.model(), bodies, new Regulation(step.model().controls().laws(), quick()));
    }

    private History run(Transient.Start start) throws Plant.Stuck {
        Optional<ThermalState> rest = Optional.empty();
        if (start instanceof Transient.Settled) {
            Loop loop = first.settle(stop);
            if (loop.state().isEmpty()) {
                throw new Plant.Stuck(!loop.obstacles().isEmpty() ? loop.obstacles() : List.of(Finding.of(Severity.NOT_JUDGED, "",
                        "the timeline begins settled, but the condition never comes to rest").remedy("let it start cold")));
            }
            rest = loop.state();
        }
        double[] all = begin(start, rest);
        settle(all);
        for (int s = 0; s < steps.size(); s++) {
            double until = s + 1 < steps.size() ? steps.get(s + 1).at() : duration;
            enter(steps.get(s), s == 0, rest);
            follow(until);
        }
        return history();
    }

    /** Temperatures of all bodies at the beginning. */
    private double[] begin(Transient.Start start, Optional<ThermalState> rest) {
        bodies = Bodies.of(first);
        double outside = first.condition().temperature();
        double[] all = new double[bodies.size()];
        Arrays.fill(all, start instanceof Transient.At at ? at.temperature().orElse(outside) : outside);
        return rest.map(state -> bodies.at(state, outside)).orElse(all);
    }

    /** Leaves out bodies that follow the others quickly, at the most flow that each condition may have. */
    private void settle(double[] all) throws Plant.Stuck {
        List<String> gone = new ArrayList<>();
        List<Bodies.Node> kept = bodies.nodes();
        for (int s = 0; s < Math.min(steps.size(), MOST_LOOKED) && bodies.size() > 0; s++) {
            Plant most = plant(steps.get(s));
            Regulation.State highest = most.regulation().off().with(most.regulation().highest());
            double[] cold = new double[bodies.size()];
            Arrays.fill(cold, steps.get(s).model().condition().temperature());
            Plant.Held flowing = most.once(cold, highest, stop);
            boolean[] untold = new boolean[bodies.size()];
            double[] capacity = new double[bodies.size()];
            for (int i = 0; i < untold.length; i++) {
                int part = bodies.nodes().get(i).part();
                untold[i] = part >= 0 && most.untold(part);
                capacity[i] = bodies.nodes().get(i).capacity();
            }
            Settling.Left left = Settling.of(flowing.network(), quick());
            left.settled().forEach(node -> gone.add(node.name()));
            Bodies before = bodies;
            bodies = left.bodies();
            for (int i = 0; i < untold.length; i++) {
                if (untold[i]) {
                    int part = before.nodes().get(i).part();
                    List<Bodies.Node> others = bodies.nodes().stream().filter(node -> node.part() != part).toList();
                    bodies = Bodies.of(others, parts.size());
                }
            }
        }
        settled = List.copyOf(gone);
        temperatures = new double[bodies.size()];
        for (int i = 0, from = 0; i < temperatures.length; i++) {
            Bodies.Node node = bodies.nodes().get(i);
            while (!same(kept.get(from), node)) {
                from++;
            }
            temperatures[i] = all[from];
        }
    }

    private static boolean same(Bodies.Node one, Bodies.Node other) {
        return one.part() == other.part() && one.link() == other.link() && one.place() == other.place();
    }

    /** Brings everything to what holds from a step on. */
    private void enter(Transient.Step step, boolean begins, Optional<ThermalState> rest) throws Plant.Stuck {
        plant = plant(step);
        Regulation regulation = plant.regulation();
        if (begins || laws.setting().length != regulation.laws().size()) {
            laws = regulation.off();
            double[] guess = new double[regulation.laws().size()];
            for (int i = 0; i < guess.length; i++) {
                guess[i] = regulation.laws().get(i).curve().setting(0, step.model().condition().temperature());
            }
            laws = laws.with(guess);
        }
        double elapsed = begins ? Double.POSITIVE_INFINITY : 0;
        if (begins && rest.isPresent()) {
            laws = regulation.at(rest.get(), step.model());
        }
        hold(elapsed);
        for (int i = 0; i < MOST_SWITCHES && switchDue(time); i++) {
            hold(elapsed);
        }
        note(true);
    }

    /** Brings flows and settings into agreement where something jumps. */
    private void hold(double elapsed) throws Plant.Stuck {
        take(plant.hold(temperatures, Optional.ofNullable(held), laws, elapsed, AGREED_AT_ONCE, stop));
    }

    private void take(Plant.Held next) throws Plant.Stuck {
        for (int i = 0; i < next.reading().bay().length; i++) {
            if (Double.isNaN(next.reading().bay()[i])) {
                String bay = first.path().bays().get(i).id();
                throw new Plant.Stuck(List.of(Finding.of(Severity.NOT_MET, bay, "from ", new Amount(time, QuantityKind.TIME), " on bay " + bay
                        + " gets heat that neither air nor walls carry off, nor anything that holds heat: the air temperature there has no bound")
                        .remedy("give " + bay + " a way in and a way out, or walls in its enclosure, or its sources heat capacities")));
            }
        }
        held = next;
        laws = laws.with(next.settings());
        if (!next.agreed() && !remarks.contains(History.Remark.RESTLESS)) {
            remarks.add(History.Remark.RESTLESS);
        }
    }

    /** Switches what is due; whether anything was. */
    private boolean switchDue(double at) {
        return switchDue(plant.sensors(held.network(), held.network().read(temperatures)), at);
    }

    private boolean switchDue(double[] sensors, double at) {
        boolean any = false;
        for (int i = 0; i < sensors.length; i++) {
            if (plant.regulation().trips(i, laws, sensors[i], at)) {
                laws = plant.regulation().switched(i, laws, sensors[i], at);
                any = true;
            }
        }
        return any;
    }

    private void note(boolean mark) {
        extremes.at(time, held.reading().junction());
        List<String> banks = first.path().banks();
        double[] settings = new double[banks.size()];
        double[] flows = new double[banks.size()];
        for (int i = 0; i < settings.length; i++) {
            settings[i] = held.feeds().get(banks.get(i)).setting();
            flows[i] = held.point().bank(banks.get(i)).map(OperatingPoint.BankPoint::flow).orElse(0.0);
        }
        recorder.add(time, held.reading(), settings, flows, mark);
        dew();
    }

    /** Surfaces that are no warmer than the dew point of the air outside, all of which comes in with its water. */
    private void dew() {
        OptionalDouble dew = Air.dewPoint(plant.model().condition().temperature(), plant.model().condition().relativeHumidity());
        if (dew.isEmpty()) {
            return;
        }
        for (int k = 0; k < parts.size(); k++) {
            if (!parts.get(k).source().chain().isEmpty()) {
                String id = parts.get(k).source().id();
                dew("the surface of " + id, id, held.reading().surface()[k], dew.getAsDouble());
            }
        }
        for (int i = 0; i < temperatures.length; i++) {
            if (bodies.nodes().get(i).part() < 0) {
                dew(bodies.nodes().get(i).name(), first.path().bays().get(bodies.nodes().get(i).place()).id(), temperatures[i], dew.getAsDouble());
            }
        }
    }

    private void dew(String what, String place, double surface, double dew) {
        double[] last = lastSurface.put(what, new double[] {time, surface, dew});
        History.Wet known = wet.get(what);
        if (surface <= dew) {
            double since = last != null && last[1] > last[2] ? dries(last, surface, dew) : time;
            History.Wet so = known == null ? new History.Wet(what, place, since, time, surface, dew) : known;
            wet.put(what, new History.Wet(what, place, so.from(), time, Math.min(so.coldest(), surface),
                    surface < so.coldest() ? dew : so.dewPoint()));
        } else if (known != null && last != null && last[1] <= last[2]) {
            wet.put(what, new History.Wet(what, place, known.from(), dries(last, surface, dew), known.coldest(), known.dewPoint()));
        }
    }

    /** When a surface was at the dew point, straight between two times. */
    private double dries(double[] last, double surface, double dew) {
        double then = last[1] - last[2];
        return last[0] + (time - last[0]) * then / (then - (surface - dew));
    }

    private void follow(double until) throws Plant.Stuck {
        double piece = Math.min(pace * duration / FEWEST_PIECES, 0.1 * (until - time));
        List<Swing> swings = plant.regulation().laws().stream().map(law -> new Swing()).toList();
        Turn turn = null;
        while (time < until) {
            if (stop.getAsBoolean()) {
                throw new Plant.Stuck(List.of());
            }
            if (++pieces > MOST_PIECES) {
                throw new Plant.Stuck(List.of(Finding.of(Severity.NOT_JUDGED, "", "after " + MOST_PIECES
                        + " pieces of time temperatures are followed no further than to ", new Amount(time, QuantityKind.TIME))
                        .remedy("shorten the timeline, or draw the rise of control laws over more kelvin")));
            }
            piece = Math.min(piece, pace * duration / FEWEST_PIECES);
            double end = Math.min(Math.min(time + piece, plant.regulation().due(laws, time)), until);
            end = until - end < 0.05 * (end - time) ? until : end; // no crumbs
            piece = piece(end, until);
            for (int i = 0; i < swings.size(); i++) {
                if (swings.get(i).add(time, laws.setting()[i]) && i == 0) {
                    turn = leaveOut(swings, turn, until);
                }
            }
        }
        for (int i = 0; i < swings.size(); i++) {
            swings.get(i).cycle(plant.regulation().laws().get(i).law().id()).ifPresent(cycles::add);
        }
    }

    /** Where a control law turned. */
    private record Turn(double time, double[] temperatures, int left) {
    }

    /**
     * Leaves out whole cycles of what goes to and fro, over which all goes on changing as from one turn to the next. After L. R.
     * Petzold, "An efficient numerical method for highly oscillatory ordinary differential equations", SIAM J. Numer. Anal. 18
     * (1981) 455-479, of first order.
     */
    private Turn leaveOut(List<Swing> swings, Turn before, double until) throws Plant.Stuck {
        Turn here = new Turn(time, temperatures, before == null ? 0 : before.left() + 1);
        if (before == null || here.left() < CYCLES || swings.stream().anyMatch(swing -> !swing.alike(CYCLES))) {
            return here;
        }
        double period = here.time() - before.time();
        double change = moved(before.temperatures(), temperatures);
        double cycles = Math.floor(Math.min(Math.min(until - time, duration / FEWEST_LOOKS + CYCLES * period) / period - CYCLES, LEFT_OUT / change));
        if (!(cycles > CYCLES)) {
            return here;
        }
        double[] later = temperatures.clone();
        for (int i = 0; i < later.length; i++) {
            later[i] += cycles * (temperatures[i] - before.temperatures()[i]);
        }
        remarks.add(History.Remark.SKIPPED);
        time += cycles * period;
        temperatures = later;
        laws = laws.after(cycles * period);
        swings.forEach(swing -> swing.shift(cycles * period));
        hold(0);
        note(false);
        return new Turn(time, temperatures, 0);
    }

    /**
     * One piece of time.
     *
     * @return length for the next, s
     */
    private double piece(double aim, double until) throws Plant.Stuck {
        double end = aim;
        while (true) {
            double length = end - time;
            boolean shortest = length <= pace * duration / SHORTEST * 1.001;
            Extremes before = extremes.copy();
            Integration.Piece piece = integration(end);
            double moved = moved(held.reading().bay(), piece.reading().bay());
            if (moved > pace * MOST_BAY && !shortest) {
                extremes.back(before);
                end = shorter(length, pace * BAY / moved);
                continue;
            }
            boolean trips = piece.trips();
            Plant.Held next = plant.hold(piece.temperatures(), Optional.of(held), laws, piece.time() - time, pace * AGREED, stop);
            double changed = moved(laws.setting(), next.settings());
            if (changed > pace * MOST_SETTING && !shortest && !trips) {
                extremes.back(before);
                end = shorter(length, pace * SETTING / changed);
                continue;
            }
            double flows = flows(held.point(), next.point());
            double surfaces = moved(held.reading().surface(), piece.reading().surface());
            double done = piece.time() - time;
            double[] sensors = plant.sensors(held.network(), piece.reading());
            temperatures = piece.temperatures();
            time = piece.time();
            take(next);
            boolean switched = trips ? switchDue(sensors, time) : switchDue(time);
            if (switched) {
                note(false);
                hold(0);
                for (int i = 0; i < MOST_SWITCHES && switchDue(time); i++) {
                    hold(0);
                }
            }
            note(time == until);
            double growth = pace * Math.min(Math.min(BAY / moved, SETTING / changed), Math.min(SURFACE / surfaces, FLOW / flows));
            double grown = done * Math.max(0.2, Math.min(GROWTH, Double.isNaN(growth) ? GROWTH : growth));
            return Math.max(grown, pace * duration / SHORTEST);
        }
    }

    private double shorter(double length, double factor) {
        return time + Math.max(length * Math.max(0.1, 0.8 * factor), Math.min(length, pace * duration / SHORTEST));
    }

    private Integration.Piece integration(double end) {
        return new Integration(plant, extremes, quick()).run(held, laws, temperatures, time, end);
    }

    private static double moved(double[] from, double[] to) {
        double most = 0;
        for (int i = 0; i < from.length; i++) {
            double change = Math.abs(to[i] - from[i]);
            most = Double.isNaN(change) ? most : Math.max(most, change);
        }
        return most;
    }

    private static double flows(OperatingPoint before, OperatingPoint after) {
        double largest = 0;
        double most = 0;
        for (int i = 0; i < before.passages().size(); i++) {
            largest = Math.max(largest, Math.abs(before.passages().get(i).massFlow()));
            most = Math.max(most, Math.abs(after.passages().get(i).massFlow() - before.passages().get(i).massFlow()));
        }
        return largest > 0 ? most / largest : 0;
    }

    private History history() throws Plant.Stuck {
        ThermalModel last = steps.getLast().model();
        Loop rest = last.settle(stop);
        if (stop.getAsBoolean()) {
            throw new Plant.Stuck(List.of());
        }
        if (rest.state().isEmpty()) {
            remarks.add(History.Remark.NO_REST);
        }
        List<History.Course> courses = new ArrayList<>();
        double[] rates = held.network().computeDerivatives(time, temperatures);
        double ahead = 1e-3 * duration;
        double[] later = temperatures.clone();
        for (int i = 0; i < later.length; i++) {
            later[i] += ahead * rates[i];
        }
        double[] now = held.network().read(temperatures).junction();
        double[] then = held.network().read(later).junction();
        for (int k = 0; k < parts.size(); k++) {
            if (Double.isNaN(now[k]) || Double.isInfinite(extremes.peak(k))) {
                continue;
            }
            double reached = extremes.reached(k);
            String id = parts.get(k).source().id();
            courses.add(new History.Course(id, parts.get(k).source().limit().map(Quantity::si), extremes.peak(k), extremes.peakTime(k),
                    Double.isNaN(reached) ? Optional.empty() : Optional.of(reached), now[k], (then[k] - now[k]) / ahead,
                    rest.state().flatMap(state -> state.part(id)).filter(part -> part.junction().isPresent())
                            .map(part -> part.junction().getAsDouble())));
        }
        recorder.thin(MOST_TIMES);
        List<String> sources = parts.stream().map(part -> part.source().id()).toList();
        return new History(duration, recorder.times(), recorder.bays(first.path().bays().stream().map(bay -> bay.id()).toList()),
                recorder.junctions(sources), recorder.settings(first.path().banks()), recorder.flows(first.path().banks()), courses,
                steps.stream().map(step -> new History.Event(step.at(), step.what())).toList(), cycles, List.copyOf(wet.values()), settled,
                remarks.stream().distinct().toList());
    }
}
