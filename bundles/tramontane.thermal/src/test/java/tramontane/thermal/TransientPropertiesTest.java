package tramontane.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import tramontane.analysis.Sentence;
import tramontane.model.Design;

/** What temperatures in time do whatever the numbers. */
class TransientPropertiesTest {

    private static final String MOVERS = "{'format': 1, 'airMovers': [{'id': 'F', 'curves': [{'speed': '3000 rpm',"
            + "'flow': '0 0.01 0.02 0.03 0.04 0.05 m³/s', 'pressure': '80 78 70 54 30 0 Pa'}]}],";

    private static Transient.Step step(double at, ThermalModel model) {
        return new Transient.Step(at, model, Sentence.of("step"));
    }

    /** One body in air as it comes from outside. */
    private static Design one(double resistance, double capacity, double power) {
        return Designs.design(MOVERS, "'airPath': {'bays': ['box'], 'passages': [",
                "{'id': 'in', 'kind': 'opening', 'from': 'outside', 'to': 'box', 'area': '50 cm²'},",
                "{'id': 'fan', 'kind': 'bank', 'from': 'box', 'to': 'outside', 'mover': 'F'}]},",
                String.format(Locale.ROOT, "'heatSources': [{'id': 'lump', 'power': %s, 'into': ['in'], 'chain': [{'kind': 'resistance',"
                        + " 'resistance': %s, 'heatCapacity': %s}]}]}", power, resistance, capacity));
    }

    /** Three bays in a row, the middle one fed back to the first; two parts in each, some with two bodies. */
    private static Design row(double factor, int seed) {
        java.util.Random random = new java.util.Random(seed);
        StringBuilder sources = new StringBuilder();
        for (int k = 0; k < 6; k++) {
            sources.append(k == 0 ? "" : ",").append(String.format(Locale.ROOT, "{'id': 'part%d', 'power': %s, 'into': ['b%d'], 'row': %d, 'chain': ["
                    + "{'kind': 'junction to case', 'resistance': %s%s}, {'kind': 'resistance', 'resistance': %s, 'reference': 'mean air',"
                    + " 'heatCapacity': %s}]}", k, factor * (5 + random.nextInt(30)), k / 2, 1 + random.nextInt(2), 0.1 + random.nextDouble(),
                    k % 2 == 0 ? String.format(Locale.ROOT, ", 'heatCapacity': %s", 5 + 50 * random.nextDouble()) : "",
                    0.3 + random.nextDouble(), 50 + random.nextInt(600)));
        }
        return Designs.design(MOVERS, "'airPath': {'bays': ['b0', {'id': 'b1', 'sections': {'enclosure': {'chassisHeatCapacity': 800,",
                "'chassisConductance': 3}}}, 'b2'], 'passages': [{'id': 'in', 'kind': 'opening', 'from': 'outside', 'to': 'b0', 'area': '60 cm²'},",
                "{'id': 'on', 'kind': 'opening', 'from': 'b0', 'to': 'b1', 'area': '50 cm²'},",
                "{'id': 'fan', 'kind': 'bank', 'from': 'b1', 'to': 'b2', 'mover': 'F', 'across': 2},",
                "{'id': 'back', 'kind': 'opening', 'from': 'b2', 'to': 'b0', 'area': '15 cm²'},",
                "{'id': 'out', 'kind': 'opening', 'from': 'b2', 'to': 'outside', 'area': '70 cm²'}]},",
                "'heatSources': [" + sources + "]}");
    }

    @Property(tries = 100)
    void oneBodyNeverOvershoots(@ForAll @DoubleRange(min = 0.1, max = 10) double resistance, @ForAll @DoubleRange(min = 1, max = 2000) double capacity,
            @ForAll @DoubleRange(min = 0, max = 50) double power, @ForAll @DoubleRange(min = 230, max = 400) double start,
            @ForAll @DoubleRange(min = 0.01, max = 4000) double constants) {
        Transient.Start from = new Transient.At(java.util.Optional.of(start));
        double duration = constants * resistance * capacity;
        History history = Transient.of(List.of(step(0, Designs.model(one(resistance, capacity, power)))), from, duration, () -> false)
                .history().orElseThrow();
        double rest = 293.15 + power * resistance;
        List<Double> course = history.junctions().get("lump");
        boolean settled = !history.settled().isEmpty();
        for (int i = 0; i < course.size(); i++) {
            assertTrue(course.get(i) >= Math.min(start, rest) - 1e-6 && course.get(i) <= Math.max(start, rest) + 1e-6,
                    course.get(i) + " K is not between " + start + " and " + rest);
            double exact = settled ? rest : rest + (start - rest) * Math.exp(-history.times().get(i) / (resistance * capacity));
            assertEquals(exact, course.get(i), 1e-6, "at " + history.times().get(i) + " s");
        }
    }

    @Property(tries = 25)
    void allEndWhereTheyWouldComeToRest(@ForAll @IntRange(min = 0, max = 1_000_000) int seed, @ForAll @DoubleRange(min = -40, max = 60) double above) {
        Transient.Start from = new Transient.At(java.util.Optional.of(293.15 + above));
        History history = Transient.of(List.of(step(0, Designs.model(row(1, seed)))), from, 30_000, () -> false).history().orElseThrow();
        history.parts().forEach(part -> assertEquals(part.steady().orElseThrow(), part.end(), 0.01, part.source()));
        assertEquals(6, history.parts().size());
    }

    @Property(tries = 25)
    void warmingUpNothingCools(@ForAll @IntRange(min = 0, max = 1_000_000) int seed) {
        History history = Transient.of(List.of(step(0, Designs.model(row(1, seed)))), Transient.Start.COLD, 3000, () -> false).history().orElseThrow();
        List<List<Double>> courses = new java.util.ArrayList<>(history.junctions().values());
        courses.addAll(history.bays().values());
        for (List<Double> course : courses) {
            for (int i = 1; i < course.size(); i++) {
                assertTrue(course.get(i) >= course.get(i - 1) - 1e-3, // flows are brought up to date piece by piece
                        "from " + course.get(i - 1) + " to " + course.get(i) + " K at " + history.times().get(i) + " s");
            }
        }
    }

    @Property(tries = 25)
    void moreHeatIsHotterAtAnyTime(@ForAll @IntRange(min = 0, max = 1_000_000) int seed, @ForAll @DoubleRange(min = 1.05, max = 3) double factor,
            @ForAll @DoubleRange(min = 5, max = 3000) double duration) {
        History less = Transient.of(List.of(step(0, Designs.model(row(1, seed)))), Transient.Start.COLD, duration, () -> false).history().orElseThrow();
        History more = Transient.of(List.of(step(0, Designs.model(row(factor, seed)))), Transient.Start.COLD, duration, () -> false).history().orElseThrow();
        for (History.Course part : less.parts()) {
            double hotter = more.part(part.source()).orElseThrow().end();
            assertTrue(hotter > part.end(), part.source() + " comes to " + part.end() + " K, with more heat to " + hotter);
        }
    }
}
