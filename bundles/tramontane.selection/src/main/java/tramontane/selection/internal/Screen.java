package tramontane.selection.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import tramontane.analysis.Cancelled;
import tramontane.analysis.Cases;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.PassageKind;
import tramontane.analysis.SpeedLaw;
import tramontane.model.AirMover;
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
import tramontane.model.Values;
import tramontane.physics.MonotoneCurve;
import tramontane.physics.RootSearch;
import tramontane.selection.Arrangement;
import tramontane.selection.FigureBound;
import tramontane.selection.Placement;

/**
 * Says of a part in an arrangement whether it may be able to do what a reduced design needs, and from which speed on.
 *
 * <p>For each group of cases the bank's own flow law, with so many of its movers failed, must give at the flow needed the pressure
 * that the rest takes there. Speeds between are found by the fan laws along that one point; for parts with several curves, from the
 * curve at the speed found so far. Behind a bank that blows into the equipment the air takes more room by the heat of its movers, so
 * that less is needed at the inlet. What it says is a bound: a part that it turns down by more than {@link #SLACK} of its speed
 * fails, and the setting that it gives is no higher than the one that is found exactly.
 */
final class Screen {

    /**
     * How much more speed a part may need than it has before it is turned down, and by how much the setting that it gives is
     * lowered: flows between samples, densities that follow the flow, flaps and laminar resistances that the fan laws do not scale.
     */
    static final double SLACK = 0.006;
    /** By how much a power that is read from curves may be too high. */
    private static final double POWER_SLACK = 0.025;
    /** Flows beyond the one needed at which a bank may work instead whose law does not say that it has one answer at every flow. */
    private static final double[] BEYOND = {1, 1.1, 1.25, 1.5, 1.8, 2.2, 2.8};
    private static final int PASSES = 3;
    private static final double NARROW = 1e-4;
    /** To which flows and speeds are found that only say how far off one is, over what is needed. */
    private static final double FLOW = 1e-3;
    /** Speed over that asked for up to which it is looked for how much more would do. */
    private static final double MOST_SPEED = 4;
    private static final double SAME_SPEED = 1e-6;
    /** How many times the largest flow of a bank falls short that is far too small. */
    private static final double FAR = 1.5;
    /** Heat of a mover that is allowed for, over the largest that its curves state: at another speed it may be more. */
    private static final double MOST_HEAT = 1.5;
    /** Of air, J/(kg K). */
    private static final double SPECIFIC_HEAT = 1005;

    private final Design design;
    private final Passage bank;
    private final PassageKind kind;
    private final List<SpeedLaw> laws;
    private final List<Reduction.Group> groups;
    private final List<BankLoad> loads;
    /** The groups with all movers, and those with some failed. */
    private final List<Integer> whole;
    private final List<Integer> broken;
    private final double lowest;

    /**
     * What was found.
     *
     * @param passes  whether it may do
     * @param setting the speed setting from which on it may do, 1 for full; above 1 as much more speed as it would need, infinite
     *                where that is more than {@link #MOST_SPEED}
     * @param likely  the same as it is probably found exactly
     * @param group   the group of cases that decides
     * @param reached the flow that it reaches there at full speed, m³/s; what it needs or more where it passes
     * @param power   no more than the electrical input of the bank at that setting, the largest of all groups, W; NaN where the part
     *                states none
     * @param fault   why it cannot be looked at; empty where it can
     * @param free    whether what it reaches is what it moves against no pressure
     */
    record Found(boolean passes, double setting, double likely, int group, double reached, double power, Optional<String> fault, boolean free) {

        Found(boolean passes, double setting, double likely, int group, double reached, double power, Optional<String> fault) {
            this(passes, setting, likely, group, reached, power, fault, false);
        }

        static Found fault(String why) {
            return new Found(false, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, -1, 0, Double.NaN, Optional.of(why));
        }
    }

    Screen(Design design, Passage bank, PassageKind kind, List<SpeedLaw> laws, Reduction reduction, double lowest) {
        this.design = design;
        this.bank = bank;
        this.kind = kind;
        this.laws = laws;
        this.lowest = lowest;
        List<Reduction.Group> told = reduction.groups().stream().filter(group -> group.need().isPresent() && reduction.load(group).isPresent()).toList();
        groups = told;
        whole = IntStream.range(0, told.size()).filter(g -> told.get(g).failed() == 0).boxed().toList();
        broken = IntStream.range(0, told.size()).filter(g -> told.get(g).failed() > 0).boxed().toList();
        loads = told.stream().map(group -> reduction.load(group).orElseThrow()).toList();
    }

    /** The groups that it looks at; {@link Found#group} counts these. */
    List<Reduction.Group> groups() {
        return groups;
    }

    BankLoad load(int group) {
        return loads.get(group);
    }

    /**
     * What is left of a flow needed behind a bank that blows into the equipment: heat of its movers makes the air behind them take more
     * room, by its rise over its temperature, so that less is needed at the inlet. Nothing where it blows outside.
     */
    private double swelling(AirMover part, Passage passage, BankLoad load, double flow) {
        if (passage.to().equals(Bay.OUTSIDE) || !(flow > 0)) {
            return 1;
        }
        double watts = part.curves().stream().flatMap(curve -> curve.power().stream()).flatMap(powers -> powers.si().stream()).mapToDouble(Double::doubleValue)
                .max().orElse(part.ratedPower().map(Quantity::si).orElse(0.0)) * Cases.positions(passage);
        double rise = MOST_HEAT * watts / (load.density(flow) * SPECIFIC_HEAT * flow);
        return 1 / (1 + rise / load.temperature(flow));
    }

    /** A part in an arrangement, in one group of cases. */
    private final class Fitted {

        private final int group;
        private final AirMover part;
        private final Design holding;
        private final Passage passage;
        private final Values values;
        private final Condition condition;
        private final BankLoad load;
        private final double density;
        private final double viscosity;
        private final double need;
        private final FlowLaw.Drop drop = new FlowLaw.Drop();
        private FlowLaw law;
        /** A law that gives nowhere less and has one answer at every flow. */
        private FlowLaw most;
        private final Optional<Design> filled;
        /** Whether what it may give at most counts, and not what it gives. */
        private boolean atMost = true;
        /** At full setting, rad/s. */
        private double full;
        /** What it gives more there than is taken, over what is taken. */
        private double share;
        /** The speed that the law holds for, rad/s. */
        private double at;

        Fitted(AirMover part, Design holding, Passage passage, Values values, int group) {
            this.group = group;
            this.part = part;
            this.holding = holding;
            this.passage = passage;
            this.values = values;
            this.condition = groups.get(group).condition();
            this.load = loads.get(group);
            double stated = groups.get(group).need().orElseThrow().flow().orElse(load.points().getLast().flow());
            this.need = stated * swelling(part, passage, load, stated);
            this.density = load.density(need);
            this.viscosity = load.viscosity(need);
            this.filled = filled(part).map(each -> holding.withAirMovers(List.of(each)));
        }

        /** Takes the law at full speed from a group with as many failed, by the fan laws, where the part has one curve. */
        void turnAs(List<Fitted> before) {
            List<FailedMover> failed = groups.get(group).condition().failed();
            Optional<Fitted> same = part.curves().size() > 1 ? Optional.empty() : before.stream().filter(other -> groups.get(other.group).condition()
                    .failed().equals(failed)).findFirst();
            if (same.isPresent() && condition.supplyFrequency().equals(same.get().condition.supplyFrequency())) {
                law = same.get().law;
                most = same.get().most;
                at = same.get().at;
            } else {
                turn(full);
            }
        }

        void turn(double speed) {
            at = speed;
            Condition turning = condition.withSpeed(Quantity.of(speed / part.ratedSpeedSi().orElseThrow()));
            law = kind.law(values, new PassageKind.Setting(holding, turning, passage));
            most = filled.map(each -> kind.law(values, new PassageKind.Setting(each, turning, passage))).orElse(law);
        }

        /** Pressure of the bank at a flow and a speed, Pa. */
        double pressure(double flow, double speed) {
            return pressure(law, flow, speed);
        }

        private double pressure(FlowLaw law, double flow, double speed) {
            double ratio = speed / at;
            law.at(flow / ratio, density, viscosity, drop);
            return -drop.pressure() * ratio * ratio;
        }

        /** The speed at a setting over that of the condition, rad/s. */
        double speed(double setting) {
            return speed(setting, need);
        }

        private double speed(double setting, double flow) {
            return Screen.this.speed(new SpeedLaw.Supply(holding, passage, part, condition, setting * condition.speedSetting(), load.density(flow),
                    load.temperature(flow)));
        }

        /** The speed at the setting from which on it may do; just below the one that probably does a mover may not start at all. */
        double slowest(double setting, double likely) {
            return slowest(setting, likely, need);
        }

        /** The same in the air of the largest flow that was looked at. */
        double coolest(double setting, double likely) {
            return slowest(setting, likely, load.points().getLast().flow());
        }

        private double slowest(double setting, double likely, double flow) {
            return Math.max(speed(setting, flow), speed(likely, flow) * (1 - 2 * SLACK));
        }

        /** What it gives more than is taken at the flow needed, or at a larger one where its curve has a dip, over what is taken. */
        double excess(double speed) {
            double best = Double.NEGATIVE_INFINITY;
            for (double beyond : BEYOND) {
                best = Math.max(best, pressure(atMost ? most : law, need * beyond, speed) - load.pressure(need * beyond));
                if ((atMost ? most : law).increasing()) {
                    break;
                }
            }
            return best;
        }

        /** Whether it gives what is needed at a speed no higher than full. */
        boolean holdsAt(double speed) {
            if (!(speed > 0)) {
                return false;
            }
            if (part.curves().size() > 1) {
                turn(speed);
            }
            return excess(speed) >= 0;
        }

        /** The speed from which on it gives what is needed, up to a multiple of full; infinite beyond. */
        double least(double full) {
            double most = full * MOST_SPEED;
            double found = full;
            for (int pass = 0; pass < PASSES; pass++) {
                turn(Math.min(full, found));
                DoubleUnaryOperator excess = this::excess;
                double low = full * lowest * (1 - SLACK);
                double atLow = excess(low);
                if (atLow >= 0) {
                    return low;
                }
                double high = excess(full) >= 0 ? full : most;
                double atHigh = excess(high);
                if (!(atHigh >= 0)) {
                    return Double.POSITIVE_INFINITY;
                }
                double next = RootSearch.between(excess, low, high, atLow, atHigh, full * (high > full ? FLOW : NARROW), 0).at();
                if (part.curves().size() == 1 || Math.abs(next - found) <= NARROW * full) {
                    return next;
                }
                found = next;
            }
            return found;
        }

        /** The flow at a speed: where its curve meets what is taken; the last crossing up to where it gives nothing. */
        double flow(double speed) {
            double high = load.points().getLast().flow();
            double low = load.points().getFirst().flow() * 1e-3;
            if (pressure(low, speed) <= load.pressure(low)) {
                return 0;
            }
            DoubleUnaryOperator excess = flow -> pressure(flow, speed) - load.pressure(flow);
            double atHigh = excess.applyAsDouble(high);
            return atHigh >= 0 ? high : RootSearch.between(excess, low, high, excess.applyAsDouble(low), atHigh, FLOW * Math.max(need, low), 0).at();
        }
    }

    /**
     * A part whose curves have a dip, with their dips filled up to the next higher pressure at a larger flow; empty for one without.
     * With a dip there may be several answers, columns side by side need not share the flow evenly, and one that works may do so at any
     * flow beyond the one needed; filled, a curve gives no less anywhere, and falls all the way, so that there is one answer.
     */
    static Optional<AirMover> filled(AirMover part) {
        List<MoverCurve> curves = part.curves().stream().map(Screen::filled).toList();
        return curves.equals(part.curves()) ? Optional.empty() : Optional.of(part.withCurves(curves));
    }

    private static MoverCurve filled(MoverCurve curve) {
        double[] pressure = curve.pressure().toArray();
        boolean dips = false;
        for (int i = pressure.length - 2; i >= 0; i--) {
            dips |= pressure[i] < pressure[i + 1];
            pressure[i] = Math.max(pressure[i], pressure[i + 1]);
        }
        return !dips ? curve : new MoverCurve(curve.speed(), curve.voltage(), curve.frequency(), curve.density(), curve.rotorDiameter(), curve.flow(),
                Quantities.of(pressure), curve.power(), curve.tolerance(), curve.more());
    }

    /** Looks at a part in an arrangement. */
    Found look(AirMover part, Arrangement arrangement) {
        if (part.ratedSpeedSi().isEmpty()) {
            return Found.fault("states no speed");
        }
        Design holding = design.withAirMovers(List.of(part));
        Passage passage = Placement.passage(bank, part.id(), arrangement, 1);
        try {
            Optional<Found> small = farTooSmall(part, arrangement, holding, passage);
            if (small.isPresent()) {
                return small.get();
            }
        } catch (RuntimeException | LinkageError e) { // a speed law that fails
            return Found.fault("cannot be computed with" + (e.getMessage() == null ? "" : ": " + e.getMessage()));
        }
        List<Problem> problems = new ArrayList<>();
        Values values = FormReader.read(kind.form(), passage.parameters(), "", problems);
        PassageKind.Setting whole = new PassageKind.Setting(holding, groups.isEmpty() ? Condition.NOMINAL : groups.getFirst().condition(), passage);
        problems.addAll(kind.check(values, whole, ""));
        Optional<Problem> error = problems.stream().filter(Problem::isError).findFirst();
        if (error.isPresent()) {
            return Found.fault(error.get().message());
        }
        try {
            return look(part, arrangement, holding, passage, values);
        } catch (Cancelled e) {
            throw e;
        } catch (RuntimeException | LinkageError e) { // a curve that no law can be made of, or a law of somebody else that fails
            return Found.fault("cannot be computed with" + (e.getMessage() == null ? "" : ": " + e.getMessage()));
        }
    }

    /** Whether the speed of a part follows its setting. */
    boolean isAdjustable(AirMover part, Arrangement arrangement) {
        if (groups.isEmpty() || part.ratedSpeedSi().isEmpty()) {
            return true;
        }
        for (int g = 0; g < groups.size(); g++) {
            Fitted here = fitted(part, arrangement, g);
            double full = here.speed(1);
            if (here.speed(lowest) < full * (1 - SAME_SPEED) || here.speed((1 + lowest) / 2) < full * (1 - SAME_SPEED)) {
                return true;
            }
        }
        return false;
    }

    /** Where a bank works in each group of cases at the setting from which on it may do, and how fast it is at full setting there. */
    List<FigureBound.Duty> duties(AirMover part, Arrangement arrangement, Found found) {
        List<FigureBound.Duty> duties = new ArrayList<>();
        for (int g = 0; g < groups.size(); g++) {
            Fitted here = fitted(part, arrangement, g);
            // one whose speed follows the air turns slower where more of it flows than is needed
            double speed = Math.min(here.slowest(Math.min(1, found.setting()), Math.min(1, found.likely())),
                    here.coolest(Math.min(1, found.setting()), Math.min(1, found.likely())));
            int running = arrangement.movers() - groups.get(g).failed();
            if (running > 0 && speed > 0) {
                here.turn(speed);
                double flow = here.flow(speed);
                double pressure = here.pressure(flow, speed);
                double full = Math.max(speed, here.speed(1));
                if (part.curves().size() > 1) {
                    here.turn(full);
                }
                double fullFlow = here.flow(full);
                duties.add(new FigureBound.Duty(groups.get(g).declared(), running, flow, pressure, speed, here.density,
                        fullFlow < here.load.points().getLast().flow() ? fullFlow : Double.POSITIVE_INFINITY, full));
            }
        }
        return duties;
    }

    /** The flow at full speed in a group of cases, m³/s; where a healthy curve meets what is taken. */
    double flow(AirMover part, Arrangement arrangement, int group) {
        Fitted here = fitted(part, arrangement, group);
        here.turn(here.speed(1));
        return here.flow(here.speed(1));
    }

    /** Pressure at full speed in a group of cases and a flow, Pa. */
    double pressure(AirMover part, Arrangement arrangement, int group, double flow) {
        Fitted here = fitted(part, arrangement, group);
        double full = here.speed(1);
        here.turn(full);
        return here.pressure(flow, full);
    }

    /** By how much less pressure the air path would have to take at the flows needed, over what it takes; empty where nothing would do. */
    OptionalDouble pressureToSpare(AirMover part, Arrangement arrangement) {
        double most = 0;
        for (int group = 0; group < groups.size(); group++) {
            double flow = groups.get(group).need().flatMap(need -> need.flow().stream().boxed().findFirst()).orElse(0.0);
            if (flow > 0 && groups.get(group).failed() < arrangement.movers()) {
                most = Math.max(most, 1 - pressure(part, arrangement, group, flow) / loads.get(group).pressure(flow));
            }
        }
        return most > 0 && most < 1 ? OptionalDouble.of(most) : OptionalDouble.empty();
    }

    /** How many times its full speed would do in all groups of cases; infinite where no speed would, or more than is looked at. */
    double speedNeeded(AirMover part, Arrangement arrangement) {
        double most = 0;
        for (int g = 0; g < groups.size(); g++) {
            if (groups.get(g).need().orElseThrow().flow().isEmpty() || groups.get(g).failed() >= arrangement.movers()
                    && groups.get(g).need().orElseThrow().flow().orElse(0) > 0) {
                return Double.POSITIVE_INFINITY;
            }
            Fitted here = fitted(part, arrangement, g);
            here.full = here.speed(1);
            if (here.need > 0) {
                here.atMost = false; // said to people, who want no more than would do
                here.turn(here.full);
                most = Math.max(most, here.least(here.full) / here.full);
            }
        }
        return most * (1 + FLOW); // needs are found a little low
    }

    private Fitted fitted(AirMover part, Arrangement arrangement, int group) {
        Design holding = design.withAirMovers(List.of(part));
        Passage passage = Placement.passage(bank, part.id(), arrangement, 1);
        return new Fitted(part, holding, passage, FormReader.read(kind.form(), passage.parameters(), "", new ArrayList<>()), group);
    }

    /**
     * What moves far too little even against no pressure, which needs no law to tell: by the fan laws its largest flow goes with the
     * speed, and side by side flows add up.
     */
    private Optional<Found> farTooSmall(AirMover part, Arrangement arrangement, Design holding, Passage passage) {
        double free = 0;
        for (MoverCurve curve : part.curves()) {
            int last = curve.flow().size() - 1;
            if (last < 0 || last >= curve.pressure().size() || curve.pressure().si().get(last) > 0 || curve.rotorDiameter().isPresent()) {
                return Optional.empty();
            }
            double measured = curve.speed().map(Quantity::si).orElseGet(() -> part.ratedSpeedSi().orElseThrow());
            free = Math.max(free, curve.flow().si().get(last) / measured);
        }
        for (int g : whole) {
            double need = groups.get(g).need().orElseThrow().flow().orElse(0) * swelling(part, passage, loads.get(g), groups.get(g).need().orElseThrow().flow().orElse(0));
            if (need > 0) {
                BankLoad load = loads.get(g);
                SpeedLaw.Supply supply = new SpeedLaw.Supply(holding, passage, part, groups.get(g).condition(), groups.get(g).condition().speedSetting(),
                        load.density(need), load.temperature(need));
                double most = arrangement.columns() * free * speed(supply);
                return load.pressure(need) > 0 && most > 0 && most * FAR < need ? Optional.of(new Found(false, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY,
                        g, most, Double.NaN, Optional.empty(), true)) : Optional.empty();
            }
        }
        return Optional.empty();
    }

    private double speed(SpeedLaw.Supply supply) {
        for (SpeedLaw law : laws) {
            Optional<Double> speed = law.speed(supply);
            if (speed.isPresent()) {
                return speed.get();
            }
        }
        return supply.mover().ratedSpeedSi().orElse(0.0) * supply.setting();
    }

    private Found look(AirMover part, Arrangement arrangement, Design holding, Passage passage, Values values) {
        double setting = lowest * (1 - SLACK);
        int decides = -1;
        List<Fitted> fitted = new ArrayList<>();
        // with all movers first: that is quickly looked at, and most that fail do so there
        for (List<Integer> some : List.of(whole, broken)) {
            for (int g : some) {
                if (groups.get(g).need().orElseThrow().flow().isEmpty()) {
                    return new Found(false, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, g, loads.get(g).points().getLast().flow(), Double.NaN,
                            Optional.empty());
                }
                Fitted here = new Fitted(part, holding, passage, values, g);
                here.full = here.speed(1);
                if (!(here.full > 0)) {
                    return Found.fault("does not turn in " + groups.get(g).declared());
                }
                OptionalInt last = groups.get(g).condition().failed().stream().flatMap(failed -> failed.position().stream()).mapToInt(Integer::intValue).max();
                if (last.isPresent() && last.getAsInt() > arrangement.movers() && last.getAsInt() > groups.get(g).failed()) {
                    return Found.fault("has no position " + last.getAsInt() + ", which fails in " + groups.get(g).declared());
                }
                if (here.need > 0 && groups.get(g).failed() >= arrangement.movers()) {
                    return new Found(false, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, g, 0, Double.NaN, Optional.empty());
                }
                here.turnAs(fitted);
                here.share = here.need > 0 ? here.excess(here.full) / Math.abs(here.load.pressure(here.need)) : Double.POSITIVE_INFINITY;
                fitted.add(here);
            }
            // the group with the least to spare at full speed probably decides; the others need only be asked whether they ask for more
            List<Fitted> order = fitted.stream().filter(each -> some.contains(each.group)).sorted(Comparator.comparingDouble(each -> each.share)).toList();
            for (Fitted here : order) {
                if (here.need == 0 || decides >= 0 && here.holdsAt(here.speed(setting))) {
                    continue;
                }
                double speed = here.least(here.full);
                double wanted = speed > here.full ? speed / here.full : setting(here, speed, here.full, setting);
                if (wanted > setting) {
                    setting = wanted;
                    decides = here.group;
                }
                if (wanted > 1 + SLACK) {
                    here.turn(here.full);
                    return new Found(false, wanted, wanted, here.group, here.flow(here.full), Double.NaN, Optional.empty());
                }
            }
        }
        double bound = Math.min(1, setting * (1 - SLACK));
        double power = power(part, arrangement, fitted, bound, Math.min(1, setting));
        return new Found(true, bound, Math.min(1, setting), decides, decides < 0 ? 0 : groups.get(decides).need().orElseThrow().flow().orElseThrow(), power,
                Optional.empty());
    }

    /** The setting at which it turns so fast, no less than the one given. */
    private static double setting(Fitted here, double speed, double full, double least) {
        if (here.speed(least) >= here.full * (1 - SAME_SPEED)) {
            return 1; // it does not follow the setting
        }
        if (here.speed(least) >= speed * (1 - SAME_SPEED)) {
            return least;
        }
        double low = least;
        double high = 1;
        while (high - low > NARROW) {
            double middle = (low + high) / 2;
            if (here.speed(middle) < speed) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    private double power(AirMover part, Arrangement arrangement, List<Fitted> fitted, double setting, double likely) {
        double most = Double.NaN;
        for (Fitted here : fitted) {
            int running = arrangement.movers() - groups.get(here.group).failed();
            if (!whole.isEmpty() && groups.get(here.group).failed() > 0) {
                continue; // with some failed it takes less, and a bound may leave out what is not the largest
            }
            double speed = here.slowest(setting, likely);
            if (running > 0 && speed > 0) {
                double power = running * power(part, here.flow(speed) / arrangement.columns(), speed, here.density);
                most = Double.isNaN(most) ? power : Math.max(most, power);
            }
        }
        return Double.isNaN(most) && part.ratedPower().isPresent() ? 0 : most * (1 - POWER_SLACK);
    }

    /** Electrical input of one mover, W, between two curves mixed by their speeds as airflow does; NaN where nothing states it. */
    static double power(AirMover part, double flow, double speed, double density) {
        double fixed = part.fixedLoss().map(Quantity::si).orElse(0.0);
        double rated = part.ratedSpeedSi().orElse(Double.NaN);
        MoverCurve below = null;
        MoverCurve above = null;
        double lower = Double.NEGATIVE_INFINITY;
        double higher = Double.POSITIVE_INFINITY;
        for (MoverCurve curve : part.curves()) {
            double measured = curve.speed().map(Quantity::si).orElse(rated);
            if (curve.power().isPresent() && measured <= speed && measured > lower) {
                below = curve;
                lower = measured;
            } else if (curve.power().isPresent() && measured > speed && measured < higher) {
                above = curve;
                higher = measured;
            }
        }
        if (below == null && above == null) {
            return part.ratedPower().map(power -> scaled(power.si(), fixed, speed / rated, density / MoverCurve.STANDARD_DENSITY)).orElse(Double.NaN);
        }
        double one = below == null ? Double.NaN : power(below, fixed, flow, speed / lower, density);
        double other = above == null ? Double.NaN : power(above, fixed, flow, speed / higher, density);
        return below == null ? other : above == null ? one : one + (other - one) * (speed - lower) / (higher - lower);
    }

    private static double power(MoverCurve curve, double fixed, double flow, double ratio, double density) {
        MonotoneCurve power = MonotoneCurve.of(curve.flow().toArray(), curve.power().orElseThrow().toArray());
        double there = Math.max(power.firstX(), Math.min(power.lastX(), flow / ratio));
        return scaled(power.value(there), fixed, ratio, density / curve.statedDensity());
    }

    private static double scaled(double power, double fixed, double speed, double density) {
        return fixed + Math.max(0, power - fixed) * speed * speed * speed * density;
    }
}
