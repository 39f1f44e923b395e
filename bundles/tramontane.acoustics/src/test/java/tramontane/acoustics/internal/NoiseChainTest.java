package tramontane.acoustics.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.acoustics.NoiseState;
import tramontane.airflow.internal.BankKind;
import tramontane.airflow.internal.OpeningKind;
import tramontane.analysis.Figure;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.OperatingPoint.BankPoint;
import tramontane.analysis.OperatingPoint.MoverPoint;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Trace;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.physics.sound.Bands;

/** Whole designs against {@code chain.csv}, which an implementation of its own has made: see {@code chain.py} beside it. */
class NoiseChainTest {

    private static final String FOLDER = "chain/";
    private static final double RPM = Math.PI / 30;

    static Stream<Arguments> points() {
        Map<List<String>, List<String[]>> expected = new LinkedHashMap<>();
        rows("chain.csv").forEach(row -> expected.computeIfAbsent(List.of(row[0], row[1]), key -> new ArrayList<>()).add(row));
        assertTrue(expected.size() >= 40, "points: " + expected.size());
        return expected.entrySet().stream().map(each -> Arguments.of(each.getKey().get(0), each.getKey().get(1), each.getValue()));
    }

    @ParameterizedTest(name = "{0}, {1}")
    @MethodSource("points")
    void figuresAreThoseOfTheOtherImplementation(String design, String point, List<String[]> expected) {
        Map<String, Double> given = figures(Movers.read(text(design + ".tramontane.json")), point(design, point));
        List<String> misses = new ArrayList<>();
        for (String[] row : expected) {
            Double value = given.get(row[2] + " at " + row[3]);
            double wanted = Double.parseDouble(row[4]);
            if (value == null || !(Math.abs(value - wanted) <= Double.parseDouble(row[5]))) {
                misses.add(row[2] + " at " + row[3] + ": " + value + ", expected " + wanted);
            }
        }
        assertEquals("", String.join("\n", misses));
    }

    private static Map<String, Double> figures(Design design, OperatingPoint point) {
        Result<NoiseState> result = new NoiseAnalysis(List.of(new OpeningKind(), new BankKind()))
                .run(new Given(design, Optional.of(Condition.NOMINAL), Map.of("", point)), Run.alone(Trace.SILENT));
        Map<String, Double> figures = new LinkedHashMap<>();
        for (Figure figure : result.figures()) {
            figures.put(figure.kind().id() + " at " + figure.place(), figure.value());
        }
        NoiseState state = result.data().orElseThrow();
        for (NoiseState.BankNoise bank : state.banks()) {
            for (int third = 0; third < Bands.THIRDS; third++) {
                figures.put("third " + third + " at " + bank.bank(), bank.total().level(third));
            }
        }
        for (NoiseState.PositionNoise position : state.positions()) {
            for (int octave = 0; octave < Bands.OCTAVES; octave++) {
                figures.put("octave " + octave + " at " + position.position(), position.total().octave(octave));
            }
            for (NoiseState.Heard tone : position.tones()) {
                String name = String.format(Locale.ROOT, "tone %.3f Hz, ", tone.frequency());
                figures.put(name + "level at " + position.position(), tone.level());
                figures.put(name + "to noise at " + position.position(), tone.toNoise());
                figures.put(name + "prominence at " + position.position(), tone.prominence());
            }
        }
        return figures;
    }

    private static OperatingPoint point(String design, String name) {
        Map<String, List<String[]>> banks = new LinkedHashMap<>();
        rows("points.csv").filter(row -> row[0].equals(design) && row[1].equals(name))
                .forEach(row -> banks.computeIfAbsent(row[2], bank -> new ArrayList<>()).add(row));
        return new OperatingPoint(banks.entrySet().stream().map(each -> bank(each.getKey(), each.getValue())).toList(), List.of(),
                List.of());
    }

    private static BankPoint bank(String id, List<String[]> rows) {
        List<MoverPoint> movers = new ArrayList<>();
        for (String[] row : rows) {
            movers.add(new MoverPoint(movers.size() + 1, row[4].equals("1"), Double.parseDouble(row[6]) / 3600, 0,
                    Double.parseDouble(row[5]) * RPM, OptionalDouble.empty()));
        }
        double density = Double.parseDouble(rows.getFirst()[3]);
        double flow = movers.stream().mapToDouble(MoverPoint::flow).sum();
        double speed = movers.stream().filter(MoverPoint::running).mapToDouble(MoverPoint::speed).average().orElse(0);
        return new BankPoint(id, flow, flow * density, 0, speed, OptionalDouble.empty(), 293.15, density, true, movers, 1);
    }

    private static Stream<String[]> rows(String file) {
        return text(file).lines().filter(line -> !line.startsWith("#")).map(line -> line.split(";", -1));
    }

    private static String text(String file) {
        try (InputStream in = NoiseChainTest.class.getResourceAsStream(FOLDER + file)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
