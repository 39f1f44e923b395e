package tramontane.thermal.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import tramontane.airflow.AirPathModel;
import tramontane.analysis.Finding;
import tramontane.analysis.Severity;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.ControlLaw;
import tramontane.model.Design;
import tramontane.thermal.Drive;
import tramontane.thermal.LawCurve;
import tramontane.thermal.Loop;
import tramontane.thermal.PartState;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalState;

/**
 * The control laws of a design in a condition. They act where the condition states no speed setting of its own. Of several laws
 * that drive one bank the one counts that asks for most.
 */
public final class Controls {

    /** Difference between a law's setting and the one that it asks for at which they count as one. */
    private static final double SETTLED = 1e-9;
    /** Width of settings at which a jump between them counts as one. */
    private static final double NARROW = 1e-12;
    /** Difference at a jump from which there is no setting in between. */
    private static final double JUMP = 1e-5;
    private static final int MOST_TRIES = 200;
    private static final int MOST_SWEEPS = 60;

    private final List<Control> laws;
    private final List<Finding> obstacles;
    private final boolean idle;
    private final Map<String, String> bankOf = new HashMap<>();

    /** One law: its curve, the banks it drives, and how its sensor is read. */
    public record Control(ControlLaw law, LawCurve curve, List<String> banks) {
    }

    private Controls(List<Control> laws, List<Finding> obstacles, boolean idle) {
        this.laws = List.copyOf(laws);
        this.obstacles = List.copyOf(obstacles);
        this.idle = idle;
        laws.forEach(control -> control.banks().forEach(bank -> bankOf.merge(bank, "control law " + control.law().id(),
                (a, b) -> a.replace("control law ", "control laws ") + ", " + control.law().id())));
    }

    /** The laws of a design in a condition. */
    public static Controls of(Design design, Condition condition, AirPathModel path) {
        List<Control> laws = new ArrayList<>();
        List<Finding> obstacles = new ArrayList<>();
        boolean idle = condition.speed().isPresent() && !design.controlLaws().isEmpty();
        for (ControlLaw law : idle ? List.<ControlLaw>of() : design.controlLaws()) {
            if (law.temperature().size() == 0 || law.temperature().size() != law.speed().size()) {
                obstacles.add(Finding.of(Severity.NOT_JUDGED, "", "control law " + law.id() + " has " + law.temperature().size()
                        + " temperatures and " + law.speed().size() + " speed settings").remedy("give one setting for each temperature"));
                continue;
            }
            laws.add(new Control(law, LawCurve.of(law), banks(law, path)));
        }
        return new Controls(laws, obstacles, idle);
    }

    /** The banks of an air path that a law drives where it acts. */
    public static List<String> banks(ControlLaw law, AirPathModel path) {
        return law.banks().isEmpty() ? path.banks() : law.banks().stream().filter(path.banks()::contains).toList();
    }

    /** The laws that act. */
    public List<Control> laws() {
        return laws;
    }

    /** Why laws cannot act; empty if nothing is in the way. */
    public List<Finding> obstacles() {
        return obstacles;
    }

    /** Whether laws are there, but the condition states a speed setting, so that they do not act. */
    public boolean idle() {
        return idle;
    }

    /** What the setting of a bank comes from, for traces; empty where no law drives it. */
    public Optional<String> nameOf(String bank) {
        return Optional.ofNullable(bankOf.get(bank));
    }

    /** The temperature that a law's sensor reads, K; empty where it has none. */
    public static OptionalDouble sensor(ControlLaw law, ThermalState state, ThermalModel model) {
        AirPathModel path = model.path();
        Optional<PartState> part = state.part(law.sensor());
        if (part.isPresent()) {
            return part.get().junction();
        }
        if (law.sensor().equals(Bay.OUTSIDE)) {
            return OptionalDouble.of(path.condition().temperature());
        }
        for (int i = 0; i < path.bays().size(); i++) {
            if (path.bays().get(i).id().equals(law.sensor())) {
                return known(state.temperatures().get(i));
            }
        }
        return model.balancing().passageAir(law.sensor(), state);
    }

    /** That a law reads what has no temperature in a state. */
    public static Finding blind(ControlLaw law, ThermalState state) {
        String why = state.part(law.sensor()).flatMap(PartState::fault).map(fault -> ": " + fault).orElse("");
        return Finding.of(Severity.NOT_JUDGED, law.sensor(), "control law " + law.id() + " reads " + law.sensor()
                + ", whose temperature cannot be told" + why).remedy(state.part(law.sensor()).isPresent()
                ? "complete what is stated of " + law.sensor() : "let it read a bay or passage with air, or a heat source with a place");
    }

    private static OptionalDouble known(double temperature) {
        return Double.isNaN(temperature) ? OptionalDouble.empty() : OptionalDouble.of(temperature);
    }

    /** Brings settings into agreement with sensors. */
    public Loop settle(ThermalModel model, Drive drive, Optional<ThermalState> near, BooleanSupplier stop) {
        if (!obstacles.isEmpty()) {
            return new Loop(Optional.empty(), List.of(), Optional.empty(), obstacles);
        }
        return laws.isEmpty() ? model.at(drive, near, stop) : new Settling(model, drive, near, stop).run();
    }

    /** One search for settings and temperatures that agree. */
    private final class Settling {
        private final ThermalModel model;
        private final Drive drive;
        private final BooleanSupplier stop;
        private final double[] settings = new double[laws.size()];
        private final int[] stages = new int[laws.size()];
        private Optional<ThermalState> last;
        private Loop failed;

        Settling(ThermalModel model, Drive drive, Optional<ThermalState> near, BooleanSupplier stop) {
            this.model = model;
            this.drive = drive;
            this.stop = stop;
            last = near;
            for (int i = 0; i < settings.length; i++) {
                settings[i] = laws.get(i).curve().setting(0, model.condition().temperature());
            }
        }

        Loop run() {
            Map<List<Integer>, Integer> seen = new LinkedHashMap<>();
            List<ThermalState> visited = new ArrayList<>();
            while (true) {
                Optional<Loop> jump = sweep();
                if (jump.isPresent()) {
                    return jump.get();
                }
                ThermalState state = last.orElseThrow();
                List<Integer> here = Arrays.stream(stages).boxed().toList();
                Integer before = seen.putIfAbsent(here, visited.size());
                if (before != null) {
                    return new Loop(Optional.empty(), visited.subList(before, visited.size()), Optional.of(switching(state)), List.of());
                }
                visited.add(state);
                boolean moved = false;
                for (int i = 0; i < stages.length; i++) {
                    int next = laws.get(i).curve().next(stages[i], sensor(laws.get(i).law(), state, model).orElse(Double.MAX_VALUE));
                    moved |= next != stages[i];
                    stages[i] = next;
                }
                if (!moved) {
                    return seen(state).map(blind -> new Loop(Optional.empty(), List.of(), Optional.empty(), List.of(blind)))
                            .orElseGet(() -> new Loop(Optional.of(state), List.of(), Optional.empty(), List.of()));
                }
            }
        }

        /** That a law reads what has no temperature even where it comes to rest. */
        private Optional<Finding> seen(ThermalState state) {
            return laws.stream().map(Control::law).filter(law -> sensor(law, state, model).isEmpty()).findFirst().map(law -> blind(law, state));
        }

        private String switching(ThermalState state) {
            for (int i = 0; i < stages.length; i++) {
                OptionalDouble sensor = sensor(laws.get(i).law(), state, model);
                if (laws.get(i).curve().stages() > 1 && sensor.isPresent()
                        && laws.get(i).curve().next(stages[i], sensor.getAsDouble()) != stages[i]) {
                    return laws.get(i).law().id();
                }
            }
            return laws.getFirst().law().id();
        }

        /** Settles all laws within their stages; what it gives is a failure. */
        private Optional<Loop> sweep() {
            for (int sweep = 0; sweep < MOST_SWEEPS; sweep++) {
                double moved = 0;
                for (int i = 0; i < settings.length; i++) {
                    double before = settings[i];
                    Optional<Loop> jump = settle(i);
                    if (jump.isPresent()) {
                        return jump;
                    }
                    moved = Math.max(moved, Math.abs(settings[i] - before));
                }
                if (settings.length == 1 || moved <= SETTLED) {
                    return Optional.empty();
                }
            }
            return Optional.of(new Loop(Optional.empty(), List.of(last.orElseThrow()), Optional.of(laws.getFirst().law().id()), List.of()));
        }

        /** The difference between what a law asks for at a setting and that setting; NaN where there is no answer. */
        private double excess(int i, double setting) {
            settings[i] = setting;
            Map<String, Double> byBank = new HashMap<>();
            for (int k = 0; k < settings.length; k++) {
                for (String bank : laws.get(k).banks()) {
                    byBank.merge(bank, settings[k], Math::max);
                }
            }
            Loop loop = model.at(drive.with(byBank), last, stop);
            if (loop.state().isEmpty()) {
                failed = loop;
                return Double.NaN;
            }
            last = loop.state();
            OptionalDouble sensor = sensor(laws.get(i).law(), last.get(), model);
            // without air to carry its heat off it would be hotter than any point of the law
            return laws.get(i).curve().setting(stages[i], sensor.orElse(Double.MAX_VALUE)) - setting;
        }

        /** Finds the setting of one law, those of the others given. */
        private Optional<Loop> settle(int i) {
            LawCurve curve = laws.get(i).curve();
            double low = curve.lowest(stages[i]);
            double high = curve.highest(stages[i]);
            double guess = Math.max(low, Math.min(high, settings[i]));
            double atGuess = excess(i, guess);
            if (Double.isNaN(atGuess)) {
                return Optional.of(failed);
            }
            if (Math.abs(atGuess) <= SETTLED) {
                return Optional.empty();
            }
            // what is asked for cannot leave the stage's range, so it brackets
            double a = atGuess > 0 ? guess : low;
            double b = atGuess > 0 ? high : guess;
            double fa = atGuess > 0 ? atGuess : excess(i, low);
            if (Double.isNaN(fa)) {
                return Optional.of(failed);
            }
            if (Math.abs(fa) <= SETTLED) {
                return Optional.empty();
            }
            double fb = atGuess > 0 ? excess(i, high) : atGuess;
            if (Double.isNaN(fb)) {
                return Optional.of(failed);
            }
            if (Math.abs(fb) <= SETTLED) {
                return Optional.empty();
            }
            if (fa < 0 || fb > 0) { // at neither end: the same setting twice gave two answers
                return Optional.of(new Loop(Optional.empty(), List.of(last.orElseThrow()), Optional.of(laws.get(i).law().id()), List.of()));
            }
            return narrow(i, a, b, fa, fb);
        }

        private Optional<Loop> narrow(int i, double from, double to, double atFrom, double atTo) {
            double a = from;
            double b = to;
            double fa = atFrom;
            double fb = atTo;
            double jumpA = fa;
            double jumpB = fb;
            ThermalState stateA = null;
            ThermalState stateB = null;
            int same = 0;
            for (int tries = 0; tries < MOST_TRIES; tries++) {
                // regula falsi in the Illinois form; halved now and then so that the bracket shrinks for certain
                double next = tries % 4 == 3 ? 0.5 * (a + b) : (a * fb - b * fa) / (fb - fa);
                double f = excess(i, next);
                if (Double.isNaN(f)) {
                    return Optional.of(failed);
                }
                if (Math.abs(f) <= SETTLED) {
                    return Optional.empty();
                }
                if (f > 0) {
                    a = next;
                    fa = f;
                    jumpA = f;
                    stateA = last.orElseThrow();
                    fb = same > 0 ? 0.5 * fb : fb;
                    same = 1;
                } else {
                    b = next;
                    fb = f;
                    jumpB = f;
                    stateB = last.orElseThrow();
                    fa = same < 0 ? 0.5 * fa : fa;
                    same = -1;
                }
                if (b - a <= NARROW) {
                    break;
                }
            }
            if (jumpA - jumpB < JUMP) {
                return Optional.empty();
            }
            List<ThermalState> cycle = new ArrayList<>();
            Optional.ofNullable(stateA).ifPresent(cycle::add);
            Optional.ofNullable(stateB).ifPresent(cycle::add);
            return Optional.of(new Loop(Optional.empty(), cycle, Optional.of(laws.get(i).law().id()), List.of()));
        }
    }
}
