package tramontane.airflow.internal;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tramontane.analysis.PassageKind;
import tramontane.model.AirMover;
import tramontane.model.Condition;
import tramontane.model.FailedMover;
import tramontane.model.Quantity;
import tramontane.model.Values;
import tramontane.physics.Resistance;

/**
 * A bank in a condition.
 *
 * @param id      the passage's id
 * @param mover   the part at each position
 * @param columns how many columns stand side by side
 * @param series  how many movers stand behind one another in each
 * @param failed  the movers that have failed, by position from 1
 * @param supply  supply frequency of the condition, Hz
 * @param setting its speed setting over that of the condition
 * @param fitting how they are fitted
 */
public record Bank(String id, AirMover mover, int columns, int series, Map<Integer, FailedMover.State> failed,
        Optional<Double> supply, double setting, Fitting fitting) {

    /**
     * Open area of a frame whose part does not state it, over the area of the frame: hub, struts and corners take the rest.
     * Assumed; axial fans of 40 to 120 mm come to some 0.5 to 0.65.
     */
    static final double ASSUMED_OPEN = 0.6;
    /**
     * Loss coefficients on the open area over that of a plain opening (Idelchik, as in {@link OpeningKind}): the blades of a
     * rotor that the air turns stand in the way, those of a locked one more so. Assumed, no published value is known.
     */
    static final double FREEWHEELING = 2;
    static final double LOCKED = 3;

    /**
     * How movers are fitted.
     *
     * @param stage        pressure of a mover behind another over what it gives alone
     * @param straightener whether something takes the swirl out of the air between them
     * @param derating     how their surroundings change the curve
     * @param clearance    free distance in front of them, m
     * @param installation installation category by ISO 5801
     * @param flap         the flap of each column
     */
    record Fitting(double stage, boolean straightener, MoverCharacteristic.Derating derating, Optional<Double> clearance,
            String installation, Optional<Flap> flap) {

        static Fitting of(Values values) {
            return new Fitting(values.si("stageFactor"), values.on("straightener"),
                    new MoverCharacteristic.Derating(values.si("flowFactor"), values.si("pressureFactor")),
                    values.ifQuantity("inletClearance").map(Quantity::si), values.text("installation"),
                    values.on("flaps") ? Optional.of(Flap.of(values)) : Optional.empty());
        }
    }

    /**
     * A non-return flap.
     *
     * @param loss    loss coefficient when open, on the open area, exit not included
     * @param lifting pressure that lifts it, Pa
     * @param leak    area of the leak when shut over the open area
     * @param assumed whether any of these is a standard value
     */
    record Flap(double loss, double lifting, double leak, boolean assumed) {

        static final List<String> FIELDS = List.of("flapLoss", "flapPressure", "flapLeak");

        static Flap of(Values values) {
            return new Flap(values.si("flapLoss"), values.si("flapPressure"), values.si("flapLeak"),
                    !FIELDS.stream().allMatch(values::has));
        }

        /** The law; the head that is lost behind the flap is that of the movers, which their static pressure leaves out. */
        FlapLaw law(double area) {
            return FlapLaw.of(area, loss, leak, Resistance.opening(0), lifting);
        }
    }

    public Bank {
        failed = Collections.unmodifiableMap(new TreeMap<>(failed));
    }

    /**
     * Reads a bank.
     *
     * @throws IllegalArgumentException if the design does not have its part
     */
    public static Bank of(Values values, PassageKind.Setting setting) {
        String part = values.text("mover");
        AirMover mover = setting.design().airMover(part).orElseThrow(() -> new IllegalArgumentException(
                "bank " + setting.passage().id() + " uses air mover " + part + ", which the design does not have"));
        int columns = values.whole("across") * values.whole("along");
        int series = values.whole("series");
        return new Bank(setting.passage().id(), mover, columns, series, failed(setting.condition(), setting.passage().id()),
                setting.condition().supplyFrequency().map(Quantity::si), values.si("speed"), Fitting.of(values));
    }

    private static Map<Integer, FailedMover.State> failed(Condition condition, String id) {
        Map<Integer, FailedMover.State> failed = new LinkedHashMap<>();
        for (FailedMover each : condition.failed()) {
            if (each.bank().orElse(id).equals(id) && each.position().isPresent()) {
                failed.put(each.position().get(), each.state());
            }
        }
        return failed;
    }

    /** Number of movers. */
    public int positions() {
        return columns * series;
    }

    /** Speed at full setting, rad/s; 0 where the part states none. */
    public double ratedSpeed() {
        return mover.ratedSpeedSi().orElse(0.0);
    }

    /** How the mover at a position stands still, if it does; at no speed every one counts as locked. */
    public Optional<FailedMover.State> standing(int position, double speed) {
        FailedMover.State state = failed.get(position);
        return state != null ? Optional.of(state) : speed > 0 ? Optional.empty() : Optional.of(FailedMover.State.LOCKED);
    }

    /** Area open to the air in the frame when the rotor is out, m²; assumed from the frame where not stated. */
    Optional<Double> openArea() {
        return mover.openArea().map(Quantity::si).or(() -> mover.width().flatMap(width -> mover.height()
                .map(height -> ASSUMED_OPEN * width.si() * height.si())));
    }

    /** The loss coefficient of a mover that stands still, on its open area; assumed where the part does not state it. */
    double loss(FailedMover.State state) {
        return statedLoss(state).orElseGet(() -> assumedLoss(state));
    }

    /** The measured loss coefficient of a mover that stands still, on its open area. */
    Optional<Double> statedLoss(FailedMover.State state) {
        return (switch (state) {
            case REMOVED -> Optional.<Quantity>empty();
            case FREEWHEELING -> mover.freewheelingLoss();
            case LOCKED -> mover.lockedLoss();
        }).map(Quantity::si);
    }

    static double assumedLoss(FailedMover.State state) {
        double plain = Resistance.opening(0);
        return switch (state) {
            case REMOVED -> plain;
            case FREEWHEELING -> FREEWHEELING * plain;
            case LOCKED -> LOCKED * plain;
        };
    }

    /** What keeps it from being computed with at a speed; empty if nothing does. */
    public Optional<String> fault(double speed) {
        Optional<String> fault = MoverCharacteristic.fault(mover);
        if (fault.isPresent()) {
            return fault.map(what -> "air mover " + mover.id() + " " + what);
        }
        int last = failed.isEmpty() ? 0 : Collections.max(failed.keySet());
        if (last > positions()) {
            return Optional.of("position " + last + " is said to have failed, but the bank has only " + positions());
        }
        if ((!failed.isEmpty() || !(speed > 0)) && openArea().isEmpty()) {
            return Optional.of("air mover " + mover.id() + " states neither its open area nor the width and height of its "
                    + "frame, which a mover that stands still is judged by");
        }
        return Optional.empty();
    }

    /**
     * Its flow law.
     *
     * @param speed of the running movers, rad/s; 0 for none
     */
    public BankLaw law(double speed) {
        return law(speed, 1);
    }

    /**
     * Its flow law with movers that give another pressure than their curve says.
     *
     * @param speed  of the running movers, rad/s; 0 for none
     * @param factor on the pressure at equal flow
     */
    public BankLaw law(double speed, double factor) {
        Map<Integer, LocalLoss> standing = new LinkedHashMap<>();
        for (int position = 1; position <= positions(); position++) {
            Optional<FailedMover.State> state = standing(position, speed);
            if (state.isPresent()) {
                standing.put(position, LocalLoss.of(loss(state.get()), openArea().orElseThrow()));
            }
        }
        return BankLaw.of(standing.size() == positions() ? Optional.empty() : Optional.of(MoverCharacteristic.of(mover, supply, speed,
                fitting.derating().times(factor))), columns, standing,
                new BankLaw.Build(series, fitting.stage(), fitting.flap().map(flap -> flap.law(openArea().orElseThrow()))));
    }

    /** The largest tolerance of the curves that its movers are taken from at a speed, rad/s; 0 where none is stated. */
    public double tolerance(double speed) {
        return speed > 0 ? characteristic(speed).shares().stream().flatMap(share -> share.curve().tolerance().stream())
                .mapToDouble(Quantity::si).max().orElse(0) : 0;
    }

    /** What one of its movers gives at a speed, rad/s, where it sits. */
    MoverCharacteristic characteristic(double speed) {
        return MoverCharacteristic.of(mover, supply, speed, fitting.derating());
    }
}
