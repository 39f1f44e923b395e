package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tramontane.analysis.Relation;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.Trace;
import tramontane.model.AirMover;
import tramontane.model.MoverCurve;
import tramontane.model.Quantity;
import tramontane.physics.electric.DcMotor;
import tramontane.physics.units.QuantityKind;

/**
 * The speed that a part's own data give at a supply, and where it comes from; see {@link tramontane.airflow.SupplySpeed}.
 *
 * @param speed       rad/s
 * @param relation    its formula
 * @param byVoltage   whether the supply voltage of the condition went into it
 * @param byFrequency whether the supply frequency of the condition went into it
 * @param inputs      what went into it beside the speed setting
 */
public record SpeedAtSupply(double speed, Relation relation, boolean byVoltage, boolean byFrequency, List<Trace.Term> inputs) {

    /** The speed; empty where the part's data do not say how it follows the supply. */
    public static Optional<SpeedAtSupply> of(SpeedLaw.Supply supply) {
        AirMover mover = supply.mover();
        Optional<Double> voltage = supply.condition().supplyVoltage().map(Quantity::si);
        Optional<Double> frequency = supply.condition().supplyFrequency().map(Quantity::si);
        MeasuredCurves measured = MeasuredCurves.of(mover, frequency);
        if (measured.curves().isEmpty()) {
            return Optional.empty(); // a half-finished part
        }
        boolean byFrequency = frequency.isPresent() && measured.frequency().isPresent();
        TreeMap<Double, Double> speeds = speedsByVoltage(measured.curves());
        boolean between = voltage.isPresent() && speeds.size() > 1;
        String part = "air mover " + mover.id();
        String condition = "condition " + supply.condition().id();
        List<Trace.Term> inputs = new ArrayList<>();
        voltage.ifPresent(each -> inputs.add(new Trace.Term("supply voltage", QuantityKind.VOLTAGE, each, condition)));
        frequency.ifPresent(each -> inputs.add(new Trace.Term("supply frequency", QuantityKind.FREQUENCY, each, condition)));
        Optional<Double> atFrequency = byFrequency || measured.several() ? full(measured) : Optional.empty();
        Optional<Double> measuredSpeed = between ? Optional.of(atVoltage(speeds, voltage.get())) : atFrequency;
        Optional<Motor> motor = Motor.of(mover, measured.curves(), between ? measuredSpeed : Optional.empty(), voltage);
        if (motor.isPresent()) {
            Motor dc = motor.get();
            inputs.addAll(List.of(new Trace.Term("density at the inlet ρ", QuantityKind.DENSITY, supply.density(), SpeedLaw.INLET),
                    new Trace.Term("density of the curve ρ1", QuantityKind.DENSITY, dc.density(), part),
                    new Trace.Term("speed of the curve n1", QuantityKind.ROTATIONAL_SPEED, dc.measured(), part),
                    new Trace.Term("no-load speed n0", QuantityKind.ROTATIONAL_SPEED, dc.noLoad(), part),
                    new Trace.Term("voltage over that of the curve v", QuantityKind.NUMBER, dc.voltage(), part)));
            return Optional.of(new SpeedAtSupply(supply.setting() * dc.speed(supply.density()), Relations.DC_MOTOR,
                    between || dc.followsVoltage(), byFrequency, inputs));
        }
        if (between) {
            int number = 0;
            for (Map.Entry<Double, Double> each : speeds.entrySet()) {
                number++;
                inputs.add(new Trace.Term("measured voltage " + number, QuantityKind.VOLTAGE, each.getKey(), part));
                inputs.add(new Trace.Term("speed at measured voltage " + number, QuantityKind.ROTATIONAL_SPEED, each.getValue(),
                        part));
            }
        } else {
            measured.frequency().ifPresent(each -> inputs.add(
                    new Trace.Term("frequency of the curve", QuantityKind.FREQUENCY, each, part)));
            atFrequency.ifPresent(each -> inputs.add(
                    new Trace.Term("speed of the curve", QuantityKind.ROTATIONAL_SPEED, each, part)));
        }
        return measuredSpeed.map(speed -> new SpeedAtSupply(supply.setting() * speed,
                between ? Relations.SPEED_BY_VOLTAGE : Relations.SPEED_BY_FREQUENCY, between, byFrequency, inputs));
    }

    /** The speed of the curves of a frequency; the highest, where the part was measured at several settings. */
    private static Optional<Double> full(MeasuredCurves measured) {
        return measured.curves().stream().filter(curve -> curve.frequency().isPresent()).flatMap(curve -> curve.speed().stream())
                .map(Quantity::si).max(Double::compare);
    }

    /** The speeds that belong to voltages; the highest of a voltage, where the part was measured at several settings. */
    private static TreeMap<Double, Double> speedsByVoltage(List<MoverCurve> curves) {
        TreeMap<Double, Double> speeds = new TreeMap<>();
        for (MoverCurve curve : curves) {
            if (curve.voltage().isPresent() && curve.speed().isPresent()) {
                speeds.merge(curve.voltage().get().si(), curve.speed().get().si(), Math::max);
            }
        }
        return speeds;
    }

    private static double atVoltage(TreeMap<Double, Double> speeds, double voltage) {
        Map.Entry<Double, Double> below = speeds.floorEntry(voltage);
        Map.Entry<Double, Double> above = speeds.ceilingEntry(voltage);
        if (below == null || above == null) {
            Map.Entry<Double, Double> nearest = below == null ? above : below;
            return nearest.getValue() * voltage / nearest.getKey();
        }
        double distance = above.getKey() - below.getKey();
        return distance == 0 ? below.getValue()
                : below.getValue() + (above.getValue() - below.getValue()) * (voltage - below.getKey()) / distance;
    }

    /**
     * An unregulated DC motor.
     *
     * @param measured       n₁, rad/s
     * @param noLoad         n₀, rad/s, above n₁
     * @param density        ρ₁, kg/m³
     * @param voltage        v, voltage over that at which n₁ and n₀ hold
     * @param followsVoltage whether v was stated
     */
    record Motor(double measured, double noLoad, double density, double voltage, boolean followsVoltage) {

        /**
         * The motor of a part; empty where it is none, or its no-load speed is missing or not above that of the curve.
         *
         * @param curves   the curves that hold
         * @param atSupply speed by curves of several voltages at that of the supply, rad/s
         * @param supply   supply voltage, V
         */
        static Optional<Motor> of(AirMover mover, List<MoverCurve> curves, Optional<Double> atSupply, Optional<Double> supply) {
            Optional<Double> noLoad = mover.noLoadSpeed().map(Quantity::si);
            Optional<Double> speed = mover.ratedSpeedSi();
            if (!isUnregulated(mover) || noLoad.isEmpty() || speed.isEmpty()) {
                return Optional.empty();
            }
            MoverCurve rated = rated(curves, speed.get());
            Optional<Double> ratio = supply.flatMap(volts -> rated.voltage().map(measured -> volts / measured.si()));
            double density = rated.statedDensity();
            Motor motor = atSupply.isPresent() && ratio.isPresent()
                    ? new Motor(atSupply.get(), noLoad.get() * ratio.get(), density, 1, true)
                    : new Motor(speed.get(), noLoad.get(), density, ratio.orElse(1.0), ratio.isPresent());
            return motor.noLoad() > motor.measured() ? Optional.of(motor) : Optional.empty();
        }

        /** The curve nearest to the rated speed, of those that state their voltage if any does; of equals that of the lower one. */
        private static MoverCurve rated(List<MoverCurve> curves, double speed) {
            return curves.stream().min(Comparator.<MoverCurve, Boolean>comparing(curve -> curve.voltage().isEmpty())
                    .thenComparing(curve -> Math.abs(curve.speed().map(Quantity::si).orElse(speed) - speed))
                    .thenComparing(curve -> curve.voltage().map(Quantity::si).orElse(0.0))).orElseThrow();
        }

        /** Speed in air of a density, rad/s. */
        double speed(double air) {
            return DcMotor.speed(measured, noLoad, air / density, voltage);
        }
    }

    static boolean isUnregulated(AirMover mover) {
        return mover.motor().filter(AirMover.DC_UNREGULATED::equals).isPresent();
    }
}
