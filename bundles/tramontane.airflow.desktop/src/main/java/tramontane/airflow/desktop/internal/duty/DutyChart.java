package tramontane.airflow.desktop.internal.duty;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BooleanSupplier;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tramontane.airflow.AirPathModel;
import tramontane.airflow.AirPathSolution;
import tramontane.airflow.AirPathSolver;
import tramontane.airflow.BankCurve;
import tramontane.airflow.DutyPoint;
import tramontane.airflow.Feed;
import tramontane.airflow.JointState;
import tramontane.airflow.NetworkSolver;
import tramontane.analysis.Chart;
import tramontane.analysis.Chart.Axis;
import tramontane.analysis.Chart.Look;
import tramontane.analysis.Chart.Mark;
import tramontane.analysis.Chart.Points;
import tramontane.analysis.Chart.Role;
import tramontane.analysis.Chart.Series;
import tramontane.analysis.Chart.Shape;
import tramontane.analysis.Chart.Side;
import tramontane.analysis.Chart.Style;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.SpeedLaw;
import tramontane.physics.AirState;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/**
 * Makes the duty chart of a bank out of an evaluation.
 *
 * <p>Duty points are those of the evaluation, whoever found them, at its temperatures and speeds; the curves are made anew through
 * the same air path. So a point lies where the drawn curves cross.
 */
public final class DutyChart {

    /** Speed settings for which a curve is drawn beside that at the set speed. */
    static final double[] SETTINGS = {1, 0.8, 0.6, 0.4};

    private static final int BANK = 0;
    private static final int FRONT = 1;
    private static final int EFFICIENCY = 3;
    /** Colours of the system curves of other cases. */
    private static final int[] OTHERS = {2, 4, 5, 6, 7};

    /** Places at which a system curve is asked for. */
    private static final int PLACES = 36;
    /** Room beyond the largest flow. */
    private static final double ROOM = 1.08;
    /** Part of the largest flow or pressure that cannot be told apart in a drawing. */
    private static final double VISIBLE = 0.005;
    /** The same for what is one and the same point. */
    private static final double SAME = 1e-4;

    private DutyChart() {
    }

    /**
     * What is loaded that says how air flows.
     *
     * @param kinds the passage kinds
     * @param laws  the speed laws, highest ranked first
     */
    public record Physics(List<PassageKind> kinds, List<SpeedLaw> laws) {
        public Physics {
            kinds = List.copyOf(kinds);
            laws = List.copyOf(laws);
        }
    }

    /**
     * What is asked for.
     *
     * @param bank       id of the bank
     * @param front      id of the case in front
     * @param others     ids of other cases whose system curve is shown, too
     * @param speeds     whether curves at other speeds are shown
     * @param tolerance  whether the tolerance of the curve is shown
     * @param efficiency whether the efficiency is shown
     */
    public record Asked(String bank, String front, Set<String> others, boolean speeds, boolean tolerance, boolean efficiency) {
        public Asked {
            others = Set.copyOf(others);
        }
    }

    /**
     * What came out.
     *
     * @param chart the chart; empty where there is none
     * @param why   why there is none; empty where there is one
     */
    public record Answer(Optional<Chart> chart, String why) {

        private static Answer none(String why) {
            return new Answer(Optional.empty(), why);
        }
    }

    /** One case, ready to be drawn. */
    private record Drawn(String id, AirPathModel model, AirPathSolver solver, OperatingPoint point, OperatingPoint.BankPoint bank, double viscosity) {

        Optional<BankCurve> curve(AirPathSolver at, double from, double to) {
            return at.bankCurve(bank.bank(), bank.density(), viscosity, from, to);
        }

        /** The speed of each bank's movers, rad/s. */
        static Map<String, Double> speeds(OperatingPoint point) {
            Map<String, Double> speeds = new LinkedHashMap<>();
            point.banks().forEach(each -> speeds.put(each.bank(), each.speed()));
            return speeds;
        }
    }

    /**
     * Draws a bank.
     *
     * @param evaluation what was computed
     * @param asked      what is to be seen of it
     * @param physics    what is loaded
     * @param stop       asked now and then whether the answer is no longer wanted
     */
    public static Answer of(Evaluation evaluation, Asked asked, Physics physics, BooleanSupplier stop) {
        Optional<Engine.Case> front = evaluation.cases().stream().filter(each -> each.concrete().id().equals(asked.front())).findFirst();
        if (front.isEmpty()) {
            return Answer.none("Case " + asked.front() + " has not been computed yet.");
        }
        Optional<OperatingPoint> point = evaluation.data(OperatingPoint.class, asked.front());
        if (point.isEmpty()) {
            return Answer.none(why(evaluation, asked.front()));
        }
        if (point.get().bank(asked.bank()).isEmpty()) {
            return Answer.none("The design has no bank " + asked.bank() + ".");
        }
        Optional<Drawn> drawn = drawn(evaluation, front.get(), asked.bank(), physics);
        if (drawn.isEmpty()) {
            return Answer.none("The curves of bank " + asked.bank() + " cannot be made from what is loaded now.");
        }
        List<Drawn> others = new ArrayList<>();
        for (Engine.Case each : evaluation.cases()) {
            if (asked.others().contains(each.concrete().id()) && !each.concrete().id().equals(asked.front())) {
                drawn(evaluation, each, asked.bank(), physics).ifPresent(others::add);
            }
        }
        Optional<Chart> chart = new Drawing(drawn.get(), others, asked, physics, stop).chart();
        return chart.isPresent() && !stop.getAsBoolean() ? new Answer(chart, "") : Answer.none("No longer wanted.");
    }

    private static String why(Evaluation evaluation, String caseId) {
        return evaluation.outcomes().stream().filter(outcome -> outcome.condition().equals(caseId) && outcome.status() != Evaluation.Status.COMPUTED)
                .flatMap(outcome -> outcome.result().findings().stream()).findFirst().map(Finding::message)
                .map(message -> "No duty point in case " + caseId + ": " + message.in(UnitSystem.METRIC) + ".")
                .orElse("Case " + caseId + " has not been computed yet.");
    }

    private static Optional<Drawn> drawn(Evaluation evaluation, Engine.Case each, String bank, Physics physics) {
        Optional<OperatingPoint> found = evaluation.data(OperatingPoint.class, each.concrete().id());
        Optional<OperatingPoint.BankPoint> at = found.flatMap(point -> point.bank(bank));
        if (at.isEmpty() || found.get().bays().stream().anyMatch(bay -> !Double.isFinite(bay.temperature()))) {
            return Optional.empty();
        }
        AirPathModel model = AirPathModel.of(evaluation.design(), each.concrete(), physics.kinds());
        if (!model.obstacles().isEmpty()) {
            return Optional.empty();
        }
        AirPathSolver solver = model.at(Drawn.speeds(found.get()));
        AirState outside = model.outside();
        AirState inlet = at.get().temperature() == outside.temperature() ? outside : outside.heatedTo(at.get().temperature());
        return solver.obstacles().isEmpty()
                ? Optional.of(new Drawn(each.concrete().id(), model, solver, found.get(), at.get(), inlet.viscosity())) : Optional.empty();
    }

    /** A drawing in the making. */
    private static final class Drawing {

        private final Drawn front;
        private final List<Drawn> others;
        private final Asked asked;
        private final Physics physics;
        private final BooleanSupplier stop;
        private final List<Series> series = new ArrayList<>();
        private final List<Chart.Band> bands = new ArrayList<>();
        private final List<Chart.Region> regions = new ArrayList<>();
        private final List<Mark> marks = new ArrayList<>();
        /** Flows between which curves are drawn. */
        private final double from;
        private final double to;
        private final List<AirPathSolver> atSettings = new ArrayList<>();
        private final List<String> settingNames = new ArrayList<>();
        private double floor;
        private double ceiling;

        Drawing(Drawn front, List<Drawn> others, Asked asked, Physics physics, BooleanSupplier stop) {
            this.front = front;
            this.others = others;
            this.asked = asked;
            this.physics = physics;
            this.stop = stop;
            if (asked.speeds()) {
                settings();
            }
            double largest = Stream.concat(all().map(Drawn::solver), atSettings.stream()).flatMapToDouble(solver -> solver.largestFlow(asked.bank()).stream())
                    .max().orElse(0);
            double[] flows = all().mapToDouble(each -> each.bank().flow()).toArray();
            double most = Math.max(largest, Arrays.stream(flows).max().orElse(0));
            double least = Math.min(0, Arrays.stream(flows).min().orElse(0));
            to = most > 0 ? most * ROOM : least < 0 ? -least / 10 : 1e-3;
            from = least * ROOM;
        }

        private Stream<Drawn> all() {
            return Stream.concat(Stream.of(front), others.stream());
        }

        /** The air path with this bank at other settings, as the speed laws say what speed that is. */
        private void settings() {
            OperatingPoint.BankPoint bank = front.bank();
            Set<Long> known = new TreeSet<>(List.of(Math.round(10 * bank.speed())));
            for (double setting : SETTINGS) {
                Feed feed = new Feed(setting, bank.density(), bank.temperature(), "duty chart");
                double speed = front.model().speeds(physics.laws(), Map.of(asked.bank(), feed)).getOrDefault(asked.bank(), 0.0);
                if (bank.speed() > 0 && speed > 0 && known.add(Math.round(10 * speed))) {
                    Map<String, Double> speeds = Drawn.speeds(front.point());
                    speeds.put(asked.bank(), speed);
                    AirPathSolver solver = front.solver().withSpeeds(speeds);
                    if (solver.obstacles().isEmpty()) {
                        atSettings.add(solver);
                        settingNames.add("at " + percent(setting) + ", " + rpm(speed));
                    }
                }
            }
        }

        private static String percent(double setting) {
            return Units.format(setting, QuantityKind.FRACTION, UnitSystem.METRIC, setting >= 0.995 ? 3 : 2);
        }

        private static String rpm(double speed) {
            return Units.format(speed, QuantityKind.ROTATIONAL_SPEED, UnitSystem.METRIC, 4);
        }

        Optional<Chart> chart() {
            Optional<BankCurve> curve = front.curve(front.solver(), from, to);
            if (curve.isEmpty()) {
                return Optional.empty();
            }
            List<JointState> states = states();
            bounds(curve.get());
            tolerance();
            speeds();
            banksOfOthers(curve.get());
            bank(curve.get());
            if (asked.efficiency()) {
                efficiency(curve.get());
            }
            for (int i = others.size() - 1; i >= 0; i--) {
                system(others.get(i), OTHERS[i % OTHERS.length], true);
            }
            system(front, FRONT, false);
            curve.get().stallFlow().ifPresent(flow -> regions.add(new Chart.Region("stall region", OptionalDouble.empty(), OptionalDouble.of(flow))));
            dutyPoints(states);
            return Optional.of(new Chart(asked.bank() + ", " + front.id(), new Axis("flow", QuantityKind.FLOW),
                    new Axis("static pressure", QuantityKind.PRESSURE), asked.efficiency() && series.stream().anyMatch(each -> each.side() == Side.RIGHT)
                    ? Optional.of(new Axis("static efficiency", QuantityKind.FRACTION)) : Optional.empty(), series, bands, regions, marks));
        }

        /** All states of the case in front; none where there is but one. */
        private List<JointState> states() {
            double[] temperatures = front.model().bays().stream().mapToDouble(bay -> front.point().bay(bay.id()).orElseThrow().temperature()).toArray();
            AirPathSolution solution = front.solver().solve(temperatures, NetworkSolver.Settings.STANDARD, Optional.empty(), stop);
            return solution.states();
        }

        /** Between which pressures curves are drawn: from nothing, or the lowest duty point, to a little above the highest curve. */
        private void bounds(BankCurve curve) {
            Stream<Points> fast = atSettings.stream().flatMap(solver -> front.curve(solver, from, to).stream()).flatMap(each -> each.pieces().stream());
            double highest = Stream.concat(curve.pieces().stream(), fast).flatMap(piece -> IntStream.range(0, piece.size())
                    .filter(i -> piece.x(i) >= 0).mapToObj(piece::y)).mapToDouble(Double::doubleValue).max().orElse(0);
            double[] duties = all().mapToDouble(each -> each.bank().pressure()).toArray();
            highest = Math.max(highest, Arrays.stream(duties).max().orElse(0));
            double lowest = Math.min(0, Arrays.stream(duties).min().orElse(0));
            double height = highest - lowest > 0 ? highest - lowest : 1;
            floor = lowest < -SAME * height ? lowest - 0.1 * height : 0;
            ceiling = highest > 0 ? highest + 0.1 * height : lowest < 0 ? -lowest / 10 : 1;
        }

        private void tolerance() {
            double tolerance = asked.tolerance() ? front.model().tolerance(asked.bank(), front.bank().speed()) : 0;
            if (tolerance > 0) {
                Map<String, Double> speeds = Drawn.speeds(front.point());
                Optional<BankCurve> low = front.curve(front.model().at(speeds, Map.of(asked.bank(), 1 - tolerance), Map.of()), from, to);
                Optional<BankCurve> high = front.curve(front.model().at(speeds, Map.of(asked.bank(), 1 + tolerance), Map.of()), from, to);
                if (low.isPresent() && high.isPresent() && low.get().pieces().size() == 1 && high.get().pieces().size() == 1) {
                    Points lower = within(low.get().pieces().getFirst(), floor, ceiling);
                    Points upper = within(high.get().pieces().getFirst(), floor, ceiling);
                    if (lower.size() > 1 && upper.size() > 1) {
                        bands.add(new Chart.Band("tolerance ±" + percent(tolerance), lower, upper, BANK));
                    }
                }
            }
        }

        private void speeds() {
            for (int i = 0; i < atSettings.size(); i++) {
                String name = settingNames.get(i);
                front.curve(atSettings.get(i), from, to).ifPresent(curve -> pieces(name, curve, new Look(Style.LINE, BANK, true)));
            }
        }

        private void bank(BankCurve curve) {
            String name = front.bank().speed() > 0 ? asked.bank() + ", " + rpm(front.bank().speed()) : asked.bank() + ", standing";
            pieces(name, curve, Look.line(BANK));
            front.solver().unevenCurve(front.bank(), front.viscosity(), from, to)
                    .ifPresent(uneven -> pieces(asked.bank() + ", flow shared unevenly", uneven, new Look(Style.DASHED, BANK, false)));
        }

        private void pieces(String name, BankCurve curve, Look look) {
            for (Points piece : curve.pieces()) {
                Points shown = within(piece, floor, ceiling);
                if (shown.size() > 1) {
                    series.add(new Series(name, Role.CURVE, look, shown));
                }
            }
        }

        /** What the bank gives in other cases, where that can be told from what it gives in that in front. */
        private void banksOfOthers(BankCurve curve) {
            for (int i = 0; i < others.size(); i++) {
                Drawn other = others.get(i);
                int colour = OTHERS[i % OTHERS.length];
                other.curve(other.solver(), from, to).filter(its -> differs(its, curve))
                        .ifPresent(its -> pieces(asked.bank() + ", " + other.id(), its, new Look(Style.DASHED, colour, true)));
            }
        }

        private boolean differs(BankCurve one, BankCurve other) {
            if (one.pieces().size() != 1 || other.pieces().size() != 1) {
                return !one.pieces().equals(other.pieces());
            }
            return other.pieces().getFirst().xs().anyMatch(flow -> {
                OptionalDouble its = one.pieces().getFirst().at(flow);
                return its.isPresent() && Math.abs(its.getAsDouble() - other.pieces().getFirst().at(flow).orElse(0)) > VISIBLE * (ceiling - floor);
            });
        }

        private void efficiency(BankCurve curve) {
            if (curve.power().isEmpty()) {
                return;
            }
            for (int p = 0; p < curve.pieces().size(); p++) {
                Points pressure = curve.pieces().get(p);
                Points power = curve.power().get().get(p);
                int[] useful = IntStream.range(0, pressure.size()).filter(i -> pressure.x(i) >= 0 && pressure.y(i) >= 0 && power.y(i) > 0).toArray();
                if (useful.length > 1) {
                    series.add(new Series("static efficiency", Role.BESIDE, new Look(Style.DOTTED, EFFICIENCY, false), Side.RIGHT, Points.of(
                            Arrays.stream(useful).mapToDouble(pressure::x).toArray(),
                            Arrays.stream(useful).mapToDouble(i -> pressure.x(i) * pressure.y(i) / power.y(i)).toArray()), 3));
                }
            }
        }

        private void system(Drawn drawn, int colour, boolean faint) {
            double[] flows = DoubleStream.concat(IntStream.rangeClosed(0, PLACES).mapToDouble(i -> from + (to - from) * i / PLACES),
                    DoubleStream.of(0, drawn.bank().flow())).sorted().distinct().toArray();
            Points system = within(drawn.solver().systemCurve(asked.bank(), drawn.point(), flows, stop), Double.NEGATIVE_INFINITY, ceiling);
            if (system.size() > 1) {
                series.add(new Series("system, " + drawn.id(), Role.SYSTEM, new Look(Style.LINE, colour, faint), system));
            }
        }

        private void dutyPoints(List<JointState> states) {
            for (int i = others.size() - 1; i >= 0; i--) {
                OperatingPoint.BankPoint point = others.get(i).bank();
                marks.add(new Mark((point.stable() ? "duty point, " : "unstable duty point, ") + others.get(i).id(), point.flow(), point.pressure(),
                        point.stable() ? Shape.SQUARE : Shape.RING, OTHERS[i % OTHERS.length]));
            }
            OperatingPoint.BankPoint judged = front.bank();
            for (JointState state : states) {
                for (DutyPoint point : state.points()) {
                    boolean same = Math.abs(point.flow() - judged.flow()) <= SAME * (to - from)
                            && Math.abs(point.pressure() - judged.pressure()) <= SAME * (ceiling - floor);
                    if (point.bank().equals(asked.bank()) && !same) {
                        String word = (state.stable() ? "other stable duty point" : "unstable duty point") + (state.even() ? "" : ", shared unevenly");
                        marks.add(new Mark(word, point.flow(), point.pressure(), state.stable() ? Shape.DIAMOND : Shape.RING, BANK));
                    }
                }
            }
            marks.add(new Mark(judged.stable() ? "duty point" : "unstable duty point", judged.flow(), judged.pressure(),
                    judged.stable() ? Shape.DISC : Shape.RING, FRONT));
        }

    }

    /**
     * The part of a line between two heights, cut where it crosses them. Of a line that leaves and comes back it is all up to
     * where it leaves for good, so that no hole is bridged.
     */
    static Points within(Points line, double low, double high) {
        int first = 0;
        int last = line.size() - 1;
        while (first <= last && !(line.y(first) >= low && line.y(first) <= high)) {
            first++;
        }
        while (last >= first && !(line.y(last) >= low && line.y(last) <= high)) {
            last--;
        }
        DoubleStream.Builder x = DoubleStream.builder();
        DoubleStream.Builder y = DoubleStream.builder();
        if (first <= last) {
            if (first > 0) {
                cut(line, first - 1, first, low, high, x, y);
            }
            for (int i = first; i <= last; i++) {
                x.add(line.x(i));
                y.add(line.y(i));
            }
            if (last + 1 < line.size()) {
                cut(line, last + 1, last, low, high, x, y);
            }
        }
        return Points.of(x.build().toArray(), y.build().toArray());
    }

    private static void cut(Points line, int outside, int inside, double low, double high, DoubleStream.Builder x, DoubleStream.Builder y) {
        double edge = line.y(outside) > high ? high : low;
        double part = (edge - line.y(inside)) / (line.y(outside) - line.y(inside));
        if (part > 0) {
            x.add(line.x(inside) + part * (line.x(outside) - line.x(inside)));
            y.add(edge);
        }
    }
}
