package tramontane.catalogue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.Severity;
import tramontane.catalogue.internal.StatedLife;
import tramontane.catalogue.internal.TypeBounds;
import tramontane.model.AirMover;
import tramontane.model.FormReader;
import tramontane.model.MoverCurve;
import tramontane.model.Quantity;
import tramontane.model.Value;
import tramontane.physics.FanNoise;
import tramontane.physics.units.QuantityKind;

/**
 * Whether the figures of a part can be true together: size, speed, curve, power, supply, noise, bearing, life and price.
 *
 * <p>Finds slips of units, decimal points and columns that every figure by itself survives. An error is impossible, a caution is
 * unlikely: look it up. What is not given is not judged, and a curve without any speed is not held against size. Sections
 * {@code drive}, {@code noise} and {@code life} are read as written, whatever is loaded; of noise, A-weighted levels are judged and bands are
 * not; of life, what a rating of another kind or at another temperature may stand for gets the benefit of the doubt.
 */
public final class Plausibility {

    /** Pressure at the end of a curve and flow at its beginning that still count as zero, over the highest. */
    private static final double ZERO = 0.03;

    /** Rise over one interval in the last third of a curve that is more than scatter of a measurement, over the highest pressure. */
    private static final double RISE = 0.1;

    /** Voltage times current over the electrical input: data sheets state the current at either end of the curve, and rounded. */
    private static final double LEAST_INPUT = 0.8;

    private static final double MOST_INPUT = 1.5;

    /** Share of an electrical input by which it may be above voltage times current by rounding alone. */
    private static final double ROUNDING = 0.05;

    /** Lowest power factor of single-phase motors with shaded poles or without power-factor correction. */
    private static final double LEAST_POWER_FACTOR = 0.25;

    /** Error of the specific-noise estimate, dB. */
    private static final double NOISE_ERROR = 10;

    /** Sound power level below which bearings and electronics are heard rather than air, dB. */
    private static final double QUIETEST_AIR = 20;

    /** Highest velocity of free delivery through the frame, m/s. */
    private static final double FASTEST_AIR = 40;

    /** Warmest air in which sleeve bearings keep their oil, K. */
    private static final double SLEEVE_WARMEST = 273.15 + 70;

    /** L10 at 40 °C of each kind of bearing in small air movers, h; those on the market, some room added. */
    private static final Map<String, double[]> LIVES = Map.of("sleeve", new double[] {10e3, 80e3}, "fluid-film", new double[] {15e3, 120e3},
            "magnetically supported sleeve", new double[] {15e3, 150e3}, "ball", new double[] {20e3, 150e3});

    private static final double HOUR = 3600;

    /** Temperatures count as one within this, K. */
    private static final double SAME_TEMPERATURE = 0.01;

    /** Speeds count as one within this share. */
    private static final double SAME_SPEED = 0.02;

    /** Of the frame of an axial mover, what a rotor fills about. */
    private static final double ROTOR_SHARE = 0.95;

    private static final String COMMON = "common practice";

    private static final String TYPE_RANGES = "ranges of types by Eck, Fans (1973), and Carolus, Ventilatoren (2013), from memory, widened";

    private final AirMover mover;
    private final List<Finding> findings = new ArrayList<>();
    private final Optional<TypeBounds> bounds;

    private Plausibility(AirMover mover) {
        this.mover = mover;
        bounds = mover.type().flatMap(TypeBounds::of);
    }

    /**
     * What is impossible or unlikely in a part.
     *
     * @param mover a part without errors
     * @return errors and cautions, each with the part's id as its place, with a remedy and the source of the rule; empty where all
     *         fits together
     */
    public static List<Finding> of(AirMover mover) {
        Plausibility plausibility = new Plausibility(mover);
        plausibility.frame();
        for (int i = 0; i < mover.curves().size(); i++) {
            MoverCurve curve = mover.curves().get(i);
            // other lengths of columns are an error of the file and told as such
            if (curve.flow().size() == curve.pressure().size() && curve.flow().size() > 1) {
                String name = mover.curves().size() == 1 ? "the curve" : "curve " + (i + 1);
                plausibility.shape(curve, name);
                plausibility.efficiency(curve, name);
                plausibility.coefficients(curve, name);
            }
        }
        plausibility.velocity();
        plausibility.noise();
        plausibility.supply();
        plausibility.dataSheet();
        plausibility.life();
        return List.copyOf(plausibility.findings);
    }

    private void add(Severity severity, String remedy, String source, Object... message) {
        findings.add(Finding.of(severity, mover.id(), message).remedy(remedy).source(source));
    }

    /** A quantity in a sentence; of figures absurd enough, products overflow. */
    private static Object amount(double si, QuantityKind kind) {
        return Double.isFinite(si) ? new Amount(si, kind) : "more than any number";
    }

    private static double highest(double[] values) {
        return Arrays.stream(values).max().orElse(0);
    }

    private static double si(Optional<Quantity> quantity) {
        return quantity.map(Quantity::si).orElse(Double.NaN);
    }

    /** Geometry: what turns inside a frame is not larger than the frame. */
    private void frame() {
        double[] sides = {si(mover.width()), si(mover.height()), si(mover.depth())};
        boolean face = bounds.filter(type -> type == TypeBounds.AXIAL || type == TypeBounds.MIXED_FLOW).isPresent();
        double room = face ? Math.min(sides[0], sides[1]) : second(sides);
        double rotor = si(mover.rotorDiameter());
        if (rotor > room) {
            add(Severity.ERROR, "compare the units of frame and rotor", "geometry", "its rotor of ", amount(rotor, QuantityKind.LENGTH),
                    " does not go into its frame; expected ", amount(room, QuantityKind.LENGTH), " at most");
        }
        double largest = face ? sides[0] * sides[1] : Math.max(Math.max(sides[0] * sides[1], sides[0] * sides[2]), sides[1] * sides[2]);
        double open = si(mover.openArea());
        if (open > largest) {
            add(Severity.ERROR, "compare the units of frame and open area", "geometry", "its open area of ", amount(open, QuantityKind.AREA),
                    " is more than its frame has; expected ", amount(largest, QuantityKind.AREA), " at most");
        }
    }

    /** The second largest side: a disc that lies in any plane needs two; NaN where a side is not given. */
    private static double second(double[] sides) {
        double[] sorted = sides.clone();
        Arrays.sort(sorted);
        return Double.isNaN(sorted[2]) ? Double.NaN : sorted[1];
    }

    /** The rotor that a curve was measured on, m; estimated from the frame of an axial mover; NaN for unknown. */
    private double rotor(MoverCurve curve) {
        return curve.rotorDiameter().or(mover::rotorDiameter).map(Quantity::si).orElseGet(() -> bounds
                .filter(type -> type == TypeBounds.AXIAL).map(type -> ROTOR_SHARE * Math.min(si(mover.width()), si(mover.height())))
                .orElse(Double.NaN));
    }

    private double speed(MoverCurve curve) {
        return curve.speed().map(Quantity::si).or(mover::ratedSpeedSi).orElse(Double.NaN);
    }

    /** Both ends of the curve, and the way to the right one. */
    private void shape(MoverCurve curve, String name) {
        double[] flow = curve.flow().toArray();
        double[] pressure = curve.pressure().toArray();
        int last = flow.length - 1;
        double peak = highest(pressure);
        if (!(peak > 0)) {
            add(Severity.ERROR, "look whether the columns are in order", "definition of fan pressure, ISO 5801", name,
                    " has no pressure above zero; expected one that falls from its highest to zero");
            return;
        }
        if (flow[0] > ZERO * flow[last]) {
            add(Severity.CAUTION, "add the pressure at zero flow, or keep duty points right of the first point", COMMON, name, " starts at ",
                    amount(flow[0], QuantityKind.FLOW), "; expected zero flow, below which the curve is only extrapolated");
        }
        if (pressure[last] > ZERO * peak) {
            add(Severity.CAUTION, "add the flow of free delivery, or keep duty points left of the last point", COMMON, name, " ends at ",
                    amount(pressure[last], QuantityKind.PRESSURE), "; expected zero pressure, below which the curve is only extrapolated");
        }
        for (int i = 1; i <= last; i++) {
            double rise = pressure[i] - pressure[i - 1];
            if (flow[i] > 2.0 / 3 * flow[last] && rise > RISE * peak) {
                add(Severity.CAUTION, "look for swapped figures in the list", "stable branch of every type, " + COMMON, name,
                        " rises by ", amount(rise, QuantityKind.PRESSURE), " up to ", amount(flow[i], QuantityKind.FLOW),
                        "; expected pressure to fall in the last third of the flow");
                break;
            }
        }
    }

    /** Power in the air over the electrical input. */
    private void efficiency(MoverCurve curve, String name) {
        double[] flow = curve.flow().toArray();
        double[] pressure = curve.pressure().toArray();
        boolean rated = sameSpeed(speed(curve), mover.ratedSpeedSi().orElse(Double.NaN)) || mover.ratedSpeedSi().isEmpty();
        double[] power = curve.power().filter(given -> given.size() == flow.length).map(given -> given.toArray()).orElse(null);
        if (power == null && (!rated || mover.ratedPower().isEmpty())) {
            return;
        }
        // the rated power is stated for standard air
        double thin = MoverCurve.STANDARD_DENSITY / curve.statedDensity();
        double best = 0;
        for (int i = 0; i < flow.length; i++) {
            double input = power == null ? si(mover.ratedPower()) / thin : power[i];
            double air = flow[i] * pressure[i];
            best = air > 0 ? Math.max(best, air / input) : best; // infinite without any input
        }
        double reach = bounds.map(type -> type.bestEfficiency(rotor(curve))).orElse(Double.NaN);
        String remedy = "compare the units of flow, pressure and power";
        if (best > 1) {
            add(Severity.ERROR, remedy, "conservation of energy", name, " gives more power to the air than the part takes: efficiency ",
                    amount(best, QuantityKind.FRACTION), "; expected below ", amount(1, QuantityKind.FRACTION));
        } else if (best > reach) {
            add(Severity.CAUTION, remedy, COMMON + ", best of type and size from memory", name, " reaches a static efficiency of ",
                    amount(best, QuantityKind.FRACTION), "; expected ", amount(reach, QuantityKind.FRACTION),
                    " at most, what the best of its type and size reach");
        }
    }

    private static boolean sameSpeed(double one, double other) {
        return Math.abs(one - other) <= SAME_SPEED * other;
    }

    /** Size and speed against flow and pressure. */
    private void coefficients(MoverCurve curve, String name) {
        double diameter = rotor(curve);
        double tip = speed(curve) * diameter / 2;
        double[] sides = {si(mover.width()), si(mover.height()), si(mover.depth())};
        Arrays.sort(sides);
        if (bounds.isEmpty() || !(tip > 0)) {
            return;
        }
        TypeBounds type = bounds.get();
        // the longest side of a cross-flow blower is the length of its rotor; of a scaled one it is not that of the measured
        double area = type != TypeBounds.CROSS_FLOW ? Math.PI / 4 * diameter * diameter
                : curve.rotorDiameter().isPresent() ? Double.NaN : diameter * sides[2];
        coefficient(name, "flow", highest(curve.flow().toArray()) / (area * tip), type.leastFlow(), type.mostFlow());
        coefficient(name, "pressure", highest(curve.pressure().toArray()) / (curve.statedDensity() / 2 * tip * tip), type.leastPressure(),
                type.mostPressure());
    }

    private void coefficient(String name, String what, double value, double least, double most) {
        if (value < least || value > most) {
            add(Severity.CAUTION, "compare the units of " + what + ", speed and rotor diameter", TYPE_RANGES, name, " has a highest " + what
                    + " coefficient of ", amount(value, QuantityKind.NUMBER), " at its tip speed; expected ", amount(least, QuantityKind.NUMBER),
                    " to ", amount(most, QuantityKind.NUMBER), " for its type");
        }
    }

    private void velocity() {
        double frame = mover.openArea().map(Quantity::si).orElse(si(mover.width()) * si(mover.height()));
        double flow = mover.curves().stream().filter(curve -> curve.rotorDiameter().isEmpty())
                .mapToDouble(curve -> highest(curve.flow().toArray())).max().orElse(0);
        if (flow / frame > FASTEST_AIR) {
            add(Severity.CAUTION, "compare the units of flow and frame", COMMON, "its free delivery goes through the frame with ",
                    amount(flow / frame, QuantityKind.VELOCITY), "; expected ", amount(FASTEST_AIR, QuantityKind.VELOCITY), " at most");
        }
    }

    /**
     * A level as it is stated.
     *
     * @param level    dB
     * @param distance at which it is a sound pressure, m; NaN of a sound power
     * @param least    sound power level for which it stands at least, dB
     * @param most     sound power level for which it stands at most, dB
     * @param speed    rad/s; NaN where nothing tells
     * @param flow     m³/s; NaN where not given
     */
    private record StatedNoise(double level, double distance, double least, double most, double speed, double flow) {

        boolean pressure() {
            return !Double.isNaN(distance);
        }
    }

    /**
     * The level for which the law of specific noise holds: of several points that at the speed nearest to the rated one and, of these,
     * at the flow nearest to the best point. The loudest would not do, as stall makes several decibels.
     *
     * @param stated   one or more
     * @param bestFlow at the best point over speed, m³/s per rad/s
     */
    private StatedNoise judged(List<StatedNoise> stated, double bestFlow) {
        double rated = mover.ratedSpeedSi().or(() -> mover.curves().stream().findFirst().map(this::speed)).orElse(Double.NaN);
        double nearest = stated.stream().mapToDouble(StatedNoise::speed).boxed()
                .min(Comparator.comparingDouble(speed -> Math.abs(speed - rated))).orElse(Double.NaN);
        return stated.stream().filter(each -> sameSpeed(each.speed(), nearest) || Double.isNaN(nearest))
                .min(Comparator.comparingDouble(each -> Math.abs(each.flow() - bestFlow * each.speed()))).orElse(stated.getFirst());
    }

    /** All levels that can be read: those of measured points, else that of the part. */
    private List<StatedNoise> statedNoise() {
        Value.Tree all = section("noise").orElse(Value.Tree.EMPTY);
        List<Value> points = all.get("points").filter(Value.Items.class::isInstance).map(items -> ((Value.Items) items).values())
                .orElse(List.of());
        List<StatedNoise> stated = points.stream().filter(Value.Tree.class::isInstance).map(Value.Tree.class::cast)
                .flatMap(point -> stated(point, all).stream()).toList();
        return stated.isEmpty() ? stated(all, all).stream().toList() : stated;
    }

    private Optional<StatedNoise> stated(Value.Tree own, Value.Tree all) {
        double speed = quantity(own, "speed", QuantityKind.ROTATIONAL_SPEED)
                .or(() -> quantity(all, "speed", QuantityKind.ROTATIONAL_SPEED)).or(mover::ratedSpeedSi).orElse(Double.NaN);
        double flow = quantity(own, "flow", QuantityKind.FLOW).orElse(Double.NaN);
        Optional<StatedNoise> power = quantity(own, "soundPower", QuantityKind.LEVEL)
                .map(level -> new StatedNoise(level, Double.NaN, level, level, speed, flow));
        if (power.isPresent()) {
            return power;
        }
        double distance = quantity(own, "distance", QuantityKind.LENGTH)
                .or(() -> quantity(all, "distance", QuantityKind.LENGTH)).orElse(1.0);
        String field = own.text("field").or(() -> all.text("field")).orElse("");
        // spreading over 2πr² or 4πr², either of them where nothing says so
        double over = 20 * Math.log10(distance) + 10 * Math.log10(2 * Math.PI);
        double twice = 10 * Math.log10(2);
        double least = over + (field.equals("free field") ? twice : 0);
        double most = over + (field.equals("half-space") ? 0 : twice);
        return quantity(own, "soundPressure", QuantityKind.LEVEL).filter(level -> distance > 0)
                .map(level -> new StatedNoise(level, distance, level + least, level + most, speed, flow));
    }

    private void noise() {
        List<StatedNoise> all = statedNoise();
        if (all.isEmpty() || bounds.isEmpty()) {
            return;
        }
        Optional<MoverCurve> near = nearest(judged(all, Double.NaN).speed()).filter(curve -> curve.rotorDiameter().isEmpty()
                && curve.flow().size() == curve.pressure().size());
        if (near.isEmpty()) {
            return;
        }
        double[] flow = near.get().flow().toArray();
        double[] pressure = near.get().pressure().toArray();
        int best = 0;
        for (int i = 1; i < flow.length; i++) {
            best = flow[i] * pressure[i] > flow[best] * pressure[best] ? i : best;
        }
        if (!(flow[best] * pressure[best] > 0) || !Double.isFinite(flow[best] + pressure[best])) {
            return; // told of the curve
        }
        StatedNoise stated = judged(all, flow[best] / speed(near.get()));
        double faster = stated.speed() / speed(near.get());
        double estimate = FanNoise.level(bounds.get().specificNoise(), flow[best], pressure[best])
                + (faster > 0 && Double.isFinite(faster) ? FanNoise.difference(faster, 1, 1) : 0);
        if (stated.least() <= Math.max(estimate, QUIETEST_AIR) + NOISE_ERROR && stated.most() >= estimate - NOISE_ERROR) {
            return;
        }
        String source = COMMON + ": Lw = K + 10 lg Q + 20 lg Δp at the best point, K of types from memory";
        if (stated.pressure()) {
            add(Severity.CAUTION, "look whether a sound power, another distance, another speed or another weighting is meant", source,
                    "its sound pressure of ", amount(stated.level(), QuantityKind.LEVEL), " at ",
                    amount(stated.distance(), QuantityKind.LENGTH), ", which stands for a sound power of ",
                    amount(Math.clamp(estimate, stated.least(), stated.most()), QuantityKind.LEVEL),
                    ", does not fit its flow and pressure; expected a sound power of ", amount(estimate, QuantityKind.LEVEL), " ± ",
                    amount(NOISE_ERROR, QuantityKind.LEVEL));
        } else {
            add(Severity.CAUTION, "look whether a sound pressure, another speed or another weighting is meant", source, "its sound power of ",
                    amount(stated.level(), QuantityKind.LEVEL), " does not fit its flow and pressure; expected ",
                    amount(estimate, QuantityKind.LEVEL), " ± ", amount(NOISE_ERROR, QuantityKind.LEVEL));
        }
    }

    /** The curve whose speed is nearest to a speed; the first where speeds are not told. */
    private Optional<MoverCurve> nearest(double speed) {
        return mover.curves().stream().min(Comparator.comparingDouble(curve -> {
            double apart = Math.abs(speed(curve) - speed);
            return Double.isNaN(apart) ? 0 : apart;
        }));
    }

    /** Voltage and current against power. */
    private void supply() {
        double volts = Math.abs(member("drive.supply", "voltage", QuantityKind.VOLTAGE).orElse(Double.NaN));
        double product = volts * member("drive.supply", "rated", QuantityKind.CURRENT).orElse(Double.NaN);
        Optional<String> current = section("drive.supply").flatMap(supply -> supply.text("current"));
        Optional<double[]> power = mover.ratedPower().map(rated -> new double[] {rated.si()})
                .or(() -> nearest(mover.ratedSpeedSi().orElse(Double.NaN)).flatMap(MoverCurve::power).map(given -> given.toArray()));
        if (current.isEmpty() || power.isEmpty() || Double.isNaN(product)) {
            return;
        }
        double least = Arrays.stream(power.get()).min().orElse(0);
        double most = highest(power.get());
        String remedy = "compare the units of current and power, and which voltage they are stated at";
        if (current.get().equals("DC")) {
            if (product < LEAST_INPUT * least || product > MOST_INPUT * most) {
                add(Severity.CAUTION, remedy, "P = V I; margins " + COMMON, "its rated voltage times its rated current is ",
                        amount(product, QuantityKind.POWER), "; expected ", amount(LEAST_INPUT * least, QuantityKind.POWER), " to ",
                        amount(MOST_INPUT * most, QuantityKind.POWER), " by its electrical input");
            }
        } else {
            double apparent = product * (current.get().equals("three-phase AC") ? Math.sqrt(3) : 1);
            if (least > (1 + ROUNDING) * apparent) {
                add(Severity.ERROR, remedy, "real power is not above apparent power", "its electrical input of ",
                        amount(least, QuantityKind.POWER), " is more than its rated voltage times its rated current; expected ",
                        amount(apparent, QuantityKind.POWER), " at most");
            } else if (most < LEAST_POWER_FACTOR * apparent) {
                add(Severity.CAUTION, remedy, COMMON, "its electrical input of ", amount(most, QuantityKind.POWER), " is ",
                        amount(most / apparent, QuantityKind.FRACTION), " of its rated voltage times its rated current; expected ",
                        amount(LEAST_POWER_FACTOR, QuantityKind.FRACTION), " at least");
            }
        }
    }

    private void dataSheet() {
        if (mover.datasheet().price().isPresent() && mover.datasheet().currency().isEmpty()) {
            add(Severity.CAUTION, "name the currency, such as EUR", COMMON, "its price of ",
                    FormReader.describe(mover.datasheet().price().get().written()), " has no currency; expected one, since prices without are"
                            + " not compared");
        }
        double warmest = si(mover.datasheet().highestTemperature());
        if (mover.datasheet().bearing().filter("sleeve"::equals).isPresent() && warmest > SLEEVE_WARMEST) {
            add(Severity.CAUTION, "look whether the bearing or the temperature is that of another part of the family", COMMON,
                    "its sleeve bearing is said to work in air of ", amount(warmest, QuantityKind.TEMPERATURE), "; expected ",
                    amount(SLEEVE_WARMEST, QuantityKind.TEMPERATURE), " at most, above which oil is lost");
        }
    }

    private void life() {
        Value.Tree life = section("life").orElse(Value.Tree.EMPTY);
        Optional<StatedLife> stated = StatedLife.of(life);
        stated.filter(rated -> rated.statistic().equals("MTTF") && !rated.shaped()).ifPresent(this::mean);
        stated.ifPresent(this::length);
        double warmest = si(mover.datasheet().highestTemperature());
        quantity(life, "at", QuantityKind.TEMPERATURE).filter(at -> at > warmest + SAME_TEMPERATURE).ifPresent(at -> add(Severity.CAUTION,
                "look whether the life was tested there, and rated lower", COMMON, "its life is rated in air of ",
                amount(at, QuantityKind.TEMPERATURE), ", in which it may not work; expected ", amount(warmest, QuantityKind.TEMPERATURE),
                " at most, its highest temperature"));
        if (mover.datasheet().bearing().filter("sleeve"::equals).isPresent() && life.text("shaft").filter("any"::equals).isPresent()) {
            add(Severity.CAUTION, "ask the maker, or look whether the bearing is another", COMMON, "its sleeve bearing is said to work with the"
                    + " shaft in any attitude; expected a level shaft, as oil leaves a bearing that stands");
        }
        storage(life);
    }

    /** A mean is no L10: much of it lies behind the L10, the more the lower the shape. */
    private void mean(StatedLife stated) {
        add(Severity.CAUTION, "ask the maker for the L10, or give the shape of the life test",
                "Weibull distribution, shapes 1.1 to 3.5; " + COMMON, "its rated life of ", amount(stated.rated(), QuantityKind.TIME),
                " is a mean life (MTTF) without a shape, which may stand for an L10 of ",
                amount(stated.l10().least(), QuantityKind.TIME), " to ", amount(stated.l10().most(), QuantityKind.TIME),
                "; expected an L10, or the shape beside it");
    }

    private void length(StatedLife stated) {
        String bearing = mover.datasheet().bearing().orElse("");
        double[] hours = LIVES.get(bearing);
        if (hours == null || stated.mild().most() >= hours[0] * HOUR && stated.mild().least() <= hours[1] * HOUR) {
            return;
        }
        boolean isLong = stated.mild().least() > hours[1] * HOUR;
        boolean plain = stated.statistic().equals("L10") && stated.at() == StatedLife.MILD;
        List<Object> message = new ArrayList<>(List.of("its rated life of ", amount(stated.rated(), QuantityKind.TIME)));
        if (!plain) {
            message.addAll(List.of(" (" + stated.statistic() + " at ", amount(stated.at(), QuantityKind.TEMPERATURE),
                    "), which stands for an L10 of at " + (isLong ? "least " : "most "),
                    amount(isLong ? stated.mild().least() : stated.mild().most(), QuantityKind.TIME), " at ", amount(StatedLife.MILD, QuantityKind.TEMPERATURE), ","));
        }
        message.addAll(List.of(isLong ? " is long for its " : " is short for its ", bearing + " bearing; expected an L10 of ",
                amount(hours[0] * HOUR, QuantityKind.TIME), " to ", amount(hours[1] * HOUR, QuantityKind.TIME), " at ",
                amount(StatedLife.MILD, QuantityKind.TEMPERATURE)));
        add(Severity.CAUTION, isLong ? "look whether a mean life (MTTF), a test without failures or another temperature is meant"
                : "compare the units, and look whether another life or another temperature is meant", COMMON, message.toArray());
    }

    /** A part on the shelf stands no less than one at work. */
    private void storage(Value.Tree life) {
        double coldest = si(mover.datasheet().lowestTemperature());
        double warmest = si(mover.datasheet().highestTemperature());
        String remedy = "look whether temperatures of work and of storage are swapped";
        quantity(life, "lowestStorage", QuantityKind.TEMPERATURE).filter(low -> low > coldest + SAME_TEMPERATURE).ifPresent(low -> add(
                Severity.CAUTION, remedy, COMMON, "it may be stored down to ", amount(low, QuantityKind.TEMPERATURE), " but work in colder air; expected ",
                amount(coldest, QuantityKind.TEMPERATURE), " at most, its lowest temperature at work"));
        quantity(life, "highestStorage", QuantityKind.TEMPERATURE).filter(high -> high < warmest - SAME_TEMPERATURE).ifPresent(high -> add(
                Severity.CAUTION, remedy, COMMON, "it may be stored up to ", amount(high, QuantityKind.TEMPERATURE),
                " but work in warmer air; expected ", amount(warmest, QuantityKind.TEMPERATURE), " at least, its highest temperature at work"));
    }

    /** An object within the sections. */
    private Optional<Value.Tree> section(String path) {
        Optional<Value.Tree> at = mover.more().tree(AirMover.SECTIONS);
        for (String name : path.split("\\.")) {
            at = at.flatMap(tree -> tree.tree(name));
        }
        return at;
    }

    private Optional<Double> member(String path, String name, QuantityKind kind) {
        return section(path).flatMap(tree -> quantity(tree, name, kind));
    }

    private static Optional<Double> quantity(Value.Tree of, String name, QuantityKind kind) {
        return of.get(name).flatMap(value -> FormReader.quantity(value, kind)).map(Quantity::si);
    }
}
