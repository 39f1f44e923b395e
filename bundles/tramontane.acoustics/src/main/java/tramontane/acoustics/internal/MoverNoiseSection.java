package tramontane.acoustics.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.osgi.service.component.annotations.Component;
import tramontane.acoustics.MoverNoise;
import tramontane.analysis.SectionType;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Quantities;
import tramontane.model.Quantity;
import tramontane.model.Range;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.Written;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.Weighting;
import tramontane.physics.units.QuantityKind;

/** What is known of the noise of a part: levels, bands and tones, at one point or at several. */
@Component(service = SectionType.class)
public final class MoverNoiseSection implements SectionType<MoverNoise> {

    /** The name of all sections of this bundle. */
    public static final String NAME = MoverNoise.SECTION;

    private static final double MOST = 160;
    private static final double APART = 1;
    private static final Range LEVEL = Range.between(-30, MOST);
    private static final List<String> LEVELS = List.of("soundPower", "soundPressure", "octaves", "thirds");
    private static final String A_LEVEL = "expected soundPower, soundPressure, octaves or thirds";
    private static final List<String> WEIGHTINGS = List.of("none", "A");
    private static final double A_WEIGHTED_AT_LEAST = 1;

    private static final Form TONE = Form.of("tone", "A tone that stands out.",
            Field.amount("order", "order", QuantityKind.NUMBER, Range.POSITIVE,
                    "Its frequency over that of the rotation: the number of blades for the blade passing frequency, twice that for its"
                            + " first harmonic."),
            Field.amount("frequency", "frequency", QuantityKind.FREQUENCY, Range.POSITIVE,
                    "Its frequency at the speed of the measurement, where no order is given."),
            Field.amount("level", "level", QuantityKind.LEVEL, LEVEL,
                    "Its level without weighting, of power or pressure as the bands are.").mandatory(),
            Field.yesNo("fixed", "fixed frequency", "Whether it stays where it is, and as loud, whatever the speed, as mains hum does."));

    private static final Form POINT = Form.of("measured point", "Levels at one speed and flow.", point(true));

    private static final Form FORM = Form.of(NAME, "Noise of a part: an A-weighted level, band levels and tones, at one point or at several.",
            Stream.concat(Stream.of(
                    Field.whole("blades", "blades", 1, 200, "Number of blades of the rotor, for the blade passing frequency."),
                    Field.amount("exponent", "speed exponent", QuantityKind.NUMBER, Range.between(30, 80),
                            "By how many lg of the speed the level rises beyond the speeds that were measured: 50 by the sound law of fans;"
                                    + " small axial ones are often fitted with 55 to 60.").standard(50)),
                    Stream.concat(Stream.of(point(false)), Stream.of(Field.parts("points", "measured points", POINT,
                            "Points of a measurement over flow and speed, as in a test plenum (ISO 10302-1). What is stated above holds for"
                                    + " all that do not say otherwise."))))
                    .toArray(Field[]::new));

    private static Field[] point(boolean ofSeveral) {
        Field tolerance = Field.amount("tolerance", "tolerance", QuantityKind.LEVEL, Range.between(0, 20),
                "How far the levels may be off; 3 dB is twice the standard deviation of reproducibility of ISO 3744 and ISO 10302-1 for"
                        + " A-weighted levels.");
        Field density = Field.amount("density", "density", QuantityKind.DENSITY, Range.POSITIVE, "Density of the air it was measured in.");
        Field at = Field.choice("at", "measured at", Stream.of(MoverNoise.Place.values()).map(MoverNoise.Place::word).toList(),
                "Where it worked, if no flow is given. Data sheets mostly mean free delivery, which is seldom where it works later.");
        Field bands = Field.choice("bandWeighting", "weighting of bands", WEIGHTINGS, "Whether the band levels are A-weighted ones. Where"
                + " not given, those written in dB(A) are.");
        return new Field[] {
            Field.amount("speed", "speed", QuantityKind.ROTATIONAL_SPEED, Range.POSITIVE, "Speed of the rotor; the rated one where not given."),
            Field.amount("flow", "flow", QuantityKind.FLOW, Range.NOT_NEGATIVE, "Flow at which it was measured."),
            Field.amount("pressure", "static pressure", QuantityKind.PRESSURE, Range.ANY, "Fan static pressure at which it was measured; for the"
                    + " record, the flow counts."),
            ofSeveral ? at : at.standard(MoverNoise.Place.FREE_DELIVERY.word()),
            Field.amount("soundPower", "sound power level", QuantityKind.LEVEL, LEVEL, "A-weighted sound power level, dB re 1 pW; in B or dB."),
            Field.amount("soundPressure", "sound pressure level", QuantityKind.LEVEL, LEVEL,
                    "A-weighted sound pressure level at the distance, dB re 20 µPa; sound power is taken from it."),
            Field.amount("distance", "distance", QuantityKind.LENGTH, Range.POSITIVE,
                    "Distance at which sound pressure was measured; 1 m where not given."),
            Field.choice("field", "sound field", Stream.of(MoverNoise.Field.values()).map(MoverNoise.Field::word).toList(),
                    "What sound pressure was measured in: a free field (at 1 m power is 11 dB above pressure), or a half-space over a reflecting"
                            + " plane (8 dB). Where not given, a free field is assumed, which gives the higher power."),
            Field.amounts("octaves", "octave levels", QuantityKind.LEVEL, Range.between(-50, MOST), 1,
                    "Levels of neighbouring octaves, of sound power, or of sound pressure where that or a distance is given."),
            Field.amount("lowestOctave", "lowest octave", QuantityKind.FREQUENCY, Range.POSITIVE, "Middle frequency of the first octave; 63 Hz"
                    + " where not given."),
            Field.amounts("thirds", "third-octave levels", QuantityKind.LEVEL, Range.between(-50, MOST), 1,
                    "Levels of neighbouring third-octaves, of sound power, or of sound pressure where that or a distance is given."),
            Field.amount("lowestThird", "lowest third", QuantityKind.FREQUENCY, Range.POSITIVE, "Middle frequency of the first third-octave; 50 Hz"
                    + " where not given."),
            ofSeveral ? bands : bands.standard("none"),
            Field.parts("tones", "tones", TONE, "Tones that stand out; the band levels include them."),
            ofSeveral ? density : density.standard("1.2 kg/m³"),
            Field.amount("rotorDiameter", "rotor diameter", QuantityKind.LENGTH, Range.POSITIVE,
                    "Rotor diameter of the like mover that was measured; the part itself where not given."),
            ofSeveral ? tolerance : tolerance.standard("3 dB")};
    }

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Set<Owner> owners() {
        return Set.of(Owner.MOVER);
    }

    @Override
    public MoverNoise decode(Values values) {
        List<MoverNoise.Measurement> measurements = new ArrayList<>();
        List<Values> points = values.parts("points");
        if (points.isEmpty()) {
            measurements.add(measurement(List.of(values)));
        } else {
            points.forEach(point -> measurements.add(measurement(List.of(point, values))));
        }
        measurements.removeIf(each -> each.level().isEmpty() && each.bands().isEmpty());
        return new MoverNoise(measurements, values.ifWhole("blades"), values.si("exponent"));
    }

    /** From the first of these that states it. */
    private static MoverNoise.Measurement measurement(List<Values> from) {
        Values own = from.getFirst();
        Values all = from.getLast();
        boolean pressure = own.has("soundPressure") || !own.has("soundPower") && (all.has("soundPressure") || given(from, "distance").isPresent()
                || text(from, "field").isPresent());
        Optional<MoverNoise.Distance> distance = pressure ? Optional.of(new MoverNoise.Distance(given(from, "distance").orElse(1.0),
                text(from, "field").flatMap(MoverNoiseSection::field))) : Optional.empty();
        boolean octaves = own.has("octaves");
        Optional<Quantities> written = own.ifQuantities(octaves ? "octaves" : "thirds");
        List<Double> levels = written.map(Quantities::si).orElse(List.of());
        int first = octaves ? octave(given(from, "lowestOctave").orElse(63.0)) : Bands.third(given(from, "lowestThird").orElse(50.0));
        boolean weighted = text(from, "bandWeighting").map("A"::equals).orElseGet(() -> written.filter(some ->
                BandFields.weighted(some.written(), true)).isPresent());
        return new MoverNoise.Measurement(given(from, "speed"), given(from, "flow"), text(from, "at").or(() -> Optional.of(all.text("at")))
                .flatMap(MoverNoiseSection::place).orElse(MoverNoise.Place.FREE_DELIVERY),
                own.ifQuantity(pressure ? "soundPressure" : "soundPower").map(Quantity::si), distance,
                weighted ? unweighted(levels, octaves, first) : levels, octaves, first,
                own.parts("tones").stream().map(MoverNoiseSection::tone).toList(), given(from, "density").orElseGet(() -> all.si("density")),
                given(from, "rotorDiameter"), given(from, "tolerance").orElseGet(() -> all.si("tolerance")));
    }

    private static List<Double> unweighted(List<Double> levels, boolean octaves, int first) {
        List<Double> plain = new ArrayList<>();
        for (int i = 0; i < levels.size(); i++) {
            int third = octaves ? 3 * (first + i) + 1 : first + i;
            plain.add(levels.get(i) - Weighting.A.level(Bands.middle(third)));
        }
        return plain;
    }

    private static MoverNoise.Tone tone(Values v) {
        return new MoverNoise.Tone(v.ifQuantity("order").map(Quantity::si), v.ifQuantity("frequency").map(Quantity::si), v.si("level"),
                v.on("fixed"));
    }

    private static int octave(double frequency) {
        return Math.floorDiv(Bands.third(frequency), 3);
    }

    private static Optional<Double> given(List<Values> from, String field) {
        return from.stream().flatMap(values -> values.ifQuantity(field).stream()).findFirst().map(Quantity::si);
    }

    private static Optional<String> text(List<Values> from, String field) {
        return from.stream().flatMap(values -> values.ifText(field).stream()).findFirst();
    }

    private static Optional<MoverNoise.Place> place(String word) {
        return Stream.of(MoverNoise.Place.values()).filter(each -> each.word().equals(word)).findFirst();
    }

    private static Optional<MoverNoise.Field> field(String word) {
        return Stream.of(MoverNoise.Field.values()).filter(each -> each.word().equals(word)).findFirst();
    }

    @Override
    public List<Problem> check(Values values, String place) {
        List<Problem> problems = new ArrayList<>();
        List<Values> points = values.parts("points");
        if (points.isEmpty()) {
            check(List.of(values), place, place, problems);
            if (silent(values) && !values.unreadable("points")) {
                problems.add(Problem.caution(place, "states no level; " + A_LEVEL));
            }
        } else {
            for (String field : List.of("soundPower", "soundPressure", "octaves", "thirds", "tones", "flow")) {
                if (values.has(field)) {
                    problems.add(Problem.error(place + "." + field, "stands beside measured points, which have their own; expected it in one of"
                            + " them"));
                }
            }
            for (int i = 0; i < points.size(); i++) {
                String at = place + ".points[" + i + "]";
                check(List.of(points.get(i), values), at, place, problems);
                if (silent(points.get(i))) {
                    problems.add(Problem.caution(at, "states no level and does not count; " + A_LEVEL));
                }
            }
            twice(points, values, place, problems);
        }
        return problems;
    }

    private static boolean silent(Values own) {
        return LEVELS.stream().noneMatch(field -> own.has(field) || own.unreadable(field));
    }

    /** Whether nothing that counts is written so that it cannot be read. */
    private static boolean readable(List<Values> from, Collection<String> fields) {
        return fields.stream().allMatch(field -> from.stream().filter(each -> each.has(field) || each.unreadable(field)).findFirst()
                .filter(each -> each.unreadable(field)).isEmpty());
    }

    /** Levels that jump from one to the other at a point would be of no use. */
    private static void twice(List<Values> points, Values values, String place, List<Problem> problems) {
        Set<List<?>> seen = new HashSet<>();
        for (int i = 0; i < points.size(); i++) {
            List<Values> from = List.of(points.get(i), values);
            if (silent(points.get(i)) || !readable(from, List.of("speed", "flow", "at"))) {
                continue;
            }
            Object where = given(from, "flow").<Object>map(flow -> flow).orElseGet(() -> text(from, "at").orElse(values.text("at")));
            if (!seen.add(List.of(given(from, "speed"), where))) {
                problems.add(Problem.error(place + ".points[" + i + "]", "is at the speed and flow of another point; expected each once, the mean of"
                        + " those that were measured twice"));
            }
        }
    }

    /**
     * What does not fit together of a measurement.
     *
     * @param place where its own values stand
     * @param above where those stand that hold for all
     */
    private static void check(List<Values> from, String place, String above, List<Problem> problems) {
        Values own = from.getFirst();
        if (own.has("soundPower") && own.has("soundPressure")) {
            problems.add(Problem.error(place + ".soundPressure", "stands beside a sound power level; expected one of them"));
        }
        if (own.has("octaves") && own.has("thirds")) {
            problems.add(Problem.error(place + ".thirds", "stand beside octaves; expected one of them"));
        }
        int before = problems.size();
        bands(from, true, place, above, problems);
        bands(from, false, place, above, problems);
        if (own.has("soundPower") && (own.has("distance") || own.has("field"))) {
            problems.add(Problem.caution(place, "states a distance or a field, which only sound pressure has; they do not count beside a sound"
                    + " power level"));
        }
        List<Values> tones = own.parts("tones");
        for (int i = 0; i < tones.size(); i++) {
            tone(tones.get(i), place + ".tones[" + i + "]", problems);
        }
        boolean sound = readable(from, POINT.fields().stream().map(Field::name).toList())
                && tones.stream().allMatch(tone -> tone.has("level"));
        if (problems.size() == before && sound) {
            agreement(measurement(from), place, problems);
        }
    }

    private static void tone(Values tone, String place, List<Problem> problems) {
        if (!tone.unreadable("order") && !tone.unreadable("frequency") && tone.has("order") == tone.has("frequency")) {
            problems.add(Problem.error(place, "states " + (tone.has("order") ? "both an order and a frequency"
                    : "neither an order nor a frequency") + "; expected one of them"));
        } else if (tone.has("order") && tone.on("fixed")) {
            problems.add(Problem.error(place + ".fixed", "is set for a tone with an order, which follows the speed; expected its frequency"));
        }
        if (tone.ifQuantity("level").filter(level -> BandFields.weighted(level.written(), true)).isPresent()) {
            problems.add(Problem.error(place + ".level", "is A-weighted; expected the level without weighting"));
        }
    }

    private static void bands(List<Values> from, boolean octaves, String place, String above, List<Problem> problems) {
        Values own = from.getFirst();
        String field = octaves ? "octaves" : "thirds";
        String lowest = octaves ? "lowestOctave" : "lowestThird";
        Optional<Quantities> levels = own.ifQuantities(field);
        if (levels.isEmpty()) {
            return;
        }
        if (readable(from, List.of("bandWeighting")) && BandFields.weighted(levels.get().written(), false)) {
            Optional<String> weighting = text(from, "bandWeighting");
            if (weighting.filter("none"::equals).isPresent()) {
                problems.add(Problem.error(place + "." + field, "are written in dB(A), but bandWeighting is none; expected dB, or the weighting A"));
            } else if (weighting.isEmpty() && !BandFields.weighted(levels.get().written(), true)) {
                problems.add(Problem.error(place + "." + field, "are written in dB and in dB(A); expected one of them, or a bandWeighting"));
            }
        }
        if (readable(from, List.of(lowest))) {
            BandFields.first(octaves, given(from, lowest).orElse(octaves ? 63.0 : 50.0), (own.has(lowest) ? place : above) + "." + lowest, problems)
                    .ifPresent(first -> BandFields.end(octaves, first, levels.get().size(), place + "." + field, problems));
        }
    }

    /** Whether band levels, tones and the A-weighted level are of one sound. */
    private static void agreement(MoverNoise.Measurement point, String place, List<Problem> problems) {
        boolean bands = !point.bands().isEmpty();
        Spectrum spectrum = spectrum(point);
        double weighted = spectrum.level(Weighting.A);
        if (bands && point.level().filter(level -> Math.abs(level - weighted) > APART).isPresent()) {
            problems.add(Problem.caution(place, "states an A-weighted level of " + shown(point.level().get()) + ", but its bands add up to "
                    + shown(weighted) + "; the bands count"));
        }
        boolean louder = false;
        for (MoverNoise.Tone tone : point.tones()) {
            // at the rated speed, which is not known here, where none is stated
            Optional<Double> stated = tone.frequency()
                    .or(() -> tone.order().flatMap(order -> point.speed().map(speed -> order * speed / (2 * Math.PI))));
            if (stated.isEmpty()) {
                continue;
            }
            double frequency = stated.get();
            int third = Bands.third(frequency);
            if (third < 0 || third >= Bands.THIRDS) {
                problems.add(Problem.caution(place + ".tones", "has a tone at " + hertz(frequency) + ", outside of 25 Hz to 20 kHz, where nothing"
                        + " counts"));
            } else if (bands) {
                double band = point.octaves() ? spectrum.octave(third / 3) : spectrum.level(third);
                if (tone.level() > band + APART) {
                    problems.add(Problem.caution(place + ".tones", "has a tone of " + shown(tone.level()) + " at " + hertz(frequency)
                            + ", above the level of the band that should include it"));
                }
            } else {
                louder |= point.level().filter(level -> tone.level() + Weighting.A.level(frequency) > level + A_WEIGHTED_AT_LEAST).isPresent();
            }
        }
        if (louder) {
            problems.add(Problem.caution(place + ".tones", "has a tone louder than the A-weighted level that should include it"));
        }
    }

    private static String hertz(double frequency) {
        return BigDecimal.valueOf(frequency).round(new MathContext(4)).stripTrailingZeros().toPlainString() + " Hz";
    }

    private static String shown(double level) {
        return Math.round(10 * level) / 10.0 + " dB";
    }

    /** The band levels of a measurement as they are stated; silence where there are none. */
    static Spectrum spectrum(MoverNoise.Measurement point) {
        double[] levels = point.bands().stream().mapToDouble(Double::doubleValue).toArray();
        return point.octaves() ? Spectrum.ofOctaves(point.first(), levels) : Spectrum.ofThirds(point.first(), levels);
    }

    /** From sound pressure to sound power: 10 lg 4πr², or 2πr²; nothing where levels are of power. */
    static double toPower(MoverNoise.Measurement point) {
        return point.distance().map(from -> Levels.of((from.field().orElse(MoverNoise.Field.FREE) == MoverNoise.Field.FREE ? 4 : 2) * Math.PI
                * from.metres() * from.metres())).orElse(0.0);
    }

    @Override
    public Value.Tree encode(MoverNoise noise) {
        Written all = new Written();
        noise.blades().ifPresent(blades -> all.number("blades", blades));
        all.number("exponent", noise.exponent());
        List<Value.Tree> points = noise.measurements().stream().map(MoverNoiseSection::written).toList();
        return points.size() == 1 ? all.tree().with(points.getFirst()) : all.parts("points", points).tree();
    }

    private static Value.Tree written(MoverNoise.Measurement m) {
        boolean power = m.distance().isEmpty();
        String bands = m.octaves() ? "octaves" : "thirds";
        Written w = new Written().number("speed", m.speed()).number("flow", m.flow()).text("at", Optional.of(m.place().word()))
                .number(power ? "soundPower" : "soundPressure", m.level()).number("distance", m.distance().map(MoverNoise.Distance::metres))
                .text("field", m.distance().flatMap(MoverNoise.Distance::field).map(MoverNoise.Field::word)).numbers(bands, m.bands());
        if (!m.bands().isEmpty()) {
            w.number(m.octaves() ? "lowestOctave" : "lowestThird", m.octaves() ? Bands.nominalOctave(m.first()) : Bands.nominal(m.first()));
        }
        return w.parts("tones", m.tones().stream().map(tone -> new Written().number("order", tone.order()).number("frequency", tone.frequency())
                .number("level", tone.level()).flag("fixed", tone.fixed()).tree()).toList()).number("density", m.density())
                .number("rotorDiameter", m.rotorDiameter()).number("tolerance", m.tolerance()).tree();
    }
}
