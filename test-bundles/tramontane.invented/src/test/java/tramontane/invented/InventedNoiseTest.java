package tramontane.invented;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tramontane.invented.InventedCatalogueTest.items;
import static tramontane.invented.InventedCatalogueTest.noise;
import static tramontane.invented.InventedCatalogueTest.points;
import static tramontane.invented.InventedCatalogueTest.si;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import tramontane.model.AirMover;
import tramontane.model.Datasheet;
import tramontane.model.MoverCurve;
import tramontane.model.Value;
import tramontane.physics.MonotoneCurve;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.FanSpectrum;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.Weighting;
import tramontane.physics.units.QuantityKind;

/** Noise of the invented parts: all ways of stating it are there, and what is stated belongs to the curve and to one sound. */
class InventedNoiseTest {

    private static final List<AirMover> SHIPPED = InventedCatalogue.parts(InventedCatalogue.SHIPPED, InventedCatalogue.SEED);

    private static final List<AirMover> MANY = InventedCatalogue.parts(3000, InventedCatalogue.SEED);

    private static String way(AirMover mover) {
        Value.Tree noise = noise(mover);
        return noise.get("points").isPresent() ? "points" : noise.get("soundPressure").isPresent()
                ? noise.text("field").map(field -> "pressure, " + field).orElse("pressure") : noise.get("octaves").isPresent() ? "octaves"
                : noise.get("thirds").isPresent() ? "thirds" : noise.get("tones").isPresent() ? "power and hum" : "power";
    }

    @Test
    void theShippedPartsShowAllWays() {
        Map<String, Integer> ways = new TreeMap<>();
        SHIPPED.forEach(mover -> ways.merge(way(mover), 1, Integer::sum));
        System.out.println("shipped parts by the way they state noise: " + ways);
        assertEquals(List.of("octaves", "points", "power", "power and hum", "pressure", "pressure, half-space", "thirds"),
                List.copyOf(ways.keySet()));
        assertTrue(ways.get("power") > SHIPPED.size() / 2, "most state a sound power as data sheets do");
        assertEquals(AirMover.TYPES.stream().filter(type -> !type.equals("cross-flow")).sorted().toList(), SHIPPED.stream()
                .filter(mover -> way(mover).equals("points")).map(mover -> mover.type().orElseThrow()).distinct().sorted().toList());
    }

    @Test
    void bladesAreThoseOfTheType() {
        for (AirMover mover : MANY) {
            double blades = ((Value.Num) noise(mover).get("blades").orElseThrow()).number();
            // of centrifugal ones a few blades curved backward, or many curved forward
            boolean usual = switch (mover.type().orElseThrow()) {
                case "axial" -> blades >= 5 && blades <= 9;
                case "mixed-flow" -> blades >= 7 && blades <= 11;
                case "cross-flow" -> blades >= 24 && blades <= 36;
                default -> blades >= 6 && blades <= 9 || blades >= 30 && blades <= 50;
            };
            assertTrue(usual, mover.id() + " has " + blades);
        }
    }

    @Test
    void originsTellWhatWasMeasured() {
        for (AirMover mover : SHIPPED) {
            Datasheet.Origin origin = mover.datasheet().origin("sections.noise").orElseThrow();
            assertEquals(Optional.of(points(mover).isEmpty() ? "datasheet" : "measured"), origin.from(), mover.id());
            assertTrue(origin.source().isPresent());
        }
    }

    private static double level(Value.Tree point) {
        return si(point, "soundPower", QuantityKind.LEVEL);
    }

    private static double speed(Value.Tree point) {
        return si(point, "speed", QuantityKind.ROTATIONAL_SPEED);
    }

    private static double flow(Value.Tree point) {
        return si(point, "flow", QuantityKind.FLOW);
    }

    private static double pressure(Value.Tree point) {
        return si(point, "pressure", QuantityKind.PRESSURE);
    }

    private static Spectrum bands(Value.Tree stated, boolean weighted) {
        boolean octaves = stated.get("octaves").isPresent();
        String list = stated.text(octaves ? "octaves" : "thirds").orElseThrow();
        assertTrue(list.endsWith(" dB"), list);
        double[] levels = Arrays.stream(list.replace(" dB", "").split(" ")).mapToDouble(Double::parseDouble).toArray();
        for (int i = 0; i < levels.length && weighted; i++) {
            levels[i] -= Weighting.A.level(Bands.middle(octaves ? 3 * (i + 1) + 1 : 3 + i));
        }
        return octaves ? Spectrum.ofOctaves(1, levels) : Spectrum.ofThirds(3, levels);
    }

    /** The A-weighted level is the sum of the bands within the rounding of both, and no tone is louder than its band. */
    @Test
    void levelsBandsAndTonesAreOfOneSound() {
        int judged = 0;
        for (AirMover mover : MANY) {
            List<Value.Tree> all = new ArrayList<>(points(mover));
            all.addAll(noise(mover).get("octaves").or(() -> noise(mover).get("thirds")).isPresent() ? List.of(noise(mover)) : List.of());
            for (Value.Tree stated : all) {
                Spectrum bands = bands(stated, stated.get("bandWeighting").isPresent());
                assertEquals(bands.level(Weighting.A), level(stated), 0.1, mover.id());
                for (Value.Tree tone : items(stated, "tones")) {
                    double frequency = tone.get("order").isPresent()
                            ? ((Value.Num) tone.get("order").get()).number() * speed(stated) / (2 * Math.PI)
                            : si(tone, "frequency", QuantityKind.FREQUENCY);
                    int third = Bands.third(frequency);
                    double band = stated.get("octaves").isPresent() ? bands.octave(third / 3) : bands.level(third);
                    assertTrue(si(tone, "level", QuantityKind.LEVEL) <= band + 0.1, mover.id());
                    judged++;
                }
            }
        }
        assertTrue(judged > 1000, judged + " tones");
    }

    /** Points lie on the curve; their level is flat from the best point, rises to stall and follows the speed. */
    @Test
    void pointsBelongToTheCurve() {
        int parts = 0;
        int held = 0;
        double steepest = 0;
        for (AirMover mover : MANY) {
            List<Value.Tree> points = points(mover);
            if (points.isEmpty()) {
                continue;
            }
            parts++;
            MoverCurve curve = mover.curves().getFirst();
            held += curve.power().isPresent() ? 1 : 0;
            MonotoneCurve law = MonotoneCurve.of(curve.flow().toArray(), curve.pressure().toArray());
            double most = law.value(0);
            double rated = curve.speed().orElseThrow().si();
            int atSpeed = points.size() / 2;
            assertTrue(atSpeed >= 3 && points.size() == 2 * atSpeed, mover.id());
            for (int i = 0; i < points.size(); i++) {
                double ratio = speed(points.get(i)) / rated;
                assertEquals(i < atSpeed ? 1 : 0.6, ratio, 0.01, mover.id());
                // three figures of flow, of pressure and of the points between which the curve goes
                assertEquals(law.value(flow(points.get(i)) / ratio), pressure(points.get(i)) / ratio / ratio, 0.02 * most, mover.id());
            }
            double best = efficiency(mover, law, flow(points.get(1)));
            assertEquals(level(points.get(0)), level(points.get(1)), 0.051, mover.id());
            for (int i = 1; i < atSpeed; i++) {
                double rise = level(points.get(i)) - level(points.get(1));
                double off = FanSpectrum.offPeak(Math.min(1, efficiency(mover, law, flow(points.get(i))) / best));
                assertTrue(i == 1 || level(points.get(i)) >= level(points.get(i - 1)) - 0.1, mover.id());
                // what does not state its power hides how efficient it is
                assertTrue(curve.power().isEmpty() || rise <= off + 0.2, mover.id() + " rises by " + rise + " of " + off);
                steepest = Math.max(steepest, rise);
            }
            double exponent = ((Value.Num) noise(mover).get("exponent").orElseThrow()).number();
            for (int i = 0; i < atSpeed; i++) {
                double slower = speed(points.get(i + atSpeed)) / speed(points.get(i));
                // bearings, 16 dB, are heard a little in the slowest
                assertEquals(level(points.get(i)) + exponent * Math.log10(slower), level(points.get(i + atSpeed)),
                        level(points.get(i + atSpeed)) > 36 ? 0.15 : 1, mover.id());
            }
        }
        System.out.printf("%d parts with points, %d of them state power; levels near stall up to %.1f dB above the best point%n", parts, held,
                steepest);
        assertTrue(parts > 300 && held > parts / 2, held + " of " + parts + " parts");
        assertTrue(steepest > 5, steepest + " dB");
    }

    /** With the power that the part states; where it states none, that of the air alone is known. */
    private static double efficiency(AirMover mover, MonotoneCurve law, double flow) {
        MoverCurve curve = mover.curves().getFirst();
        double input = curve.power().map(power -> MonotoneCurve.of(curve.flow().toArray(), power.toArray()).value(flow)).orElse(1.0);
        return flow * law.value(flow) / input;
    }
}
