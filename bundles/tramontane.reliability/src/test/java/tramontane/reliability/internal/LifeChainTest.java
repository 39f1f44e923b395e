package tramontane.reliability.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.engine.internal.WiredEngine;
import tramontane.model.file.DesignFile;

/** Whole designs against {@code chain.csv}, which an implementation of its own has made: see {@code chain.py} beside it. */
class LifeChainTest {

    private static final String FOLDER = "chain/";

    /** Relative, of what follows in closed form. */
    private static final double CLOSED = 1e-6;
    /** Absolute, of probabilities that either side has by quadrature. */
    private static final double PROBABILITY = 1e-4;
    /** Relative, of times that either side has by quadrature. */
    private static final double TIME = 1e-4;
    /** The same of times between visits: the sampling behind chain.csv, with 2^20 points, still moves them by some 1e-4 where movers differ. */
    private static final double INTERVAL = 2e-4;

    private static Engine engine;

    @BeforeAll
    static void wire() {
        engine = WiredEngine.with().engine();
    }

    static Stream<Arguments> designs() {
        Map<String, List<String[]>> expected = new LinkedHashMap<>();
        text("chain.csv").lines().filter(line -> !line.startsWith("#")).map(line -> line.split(";", -1))
                .forEach(row -> expected.computeIfAbsent(row[0], key -> new ArrayList<>()).add(row));
        assertTrue(expected.size() >= 20, "designs: " + expected.size());
        return expected.entrySet().stream().map(each -> Arguments.of(each.getKey(), each.getValue()));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("designs")
    void figuresAreThoseOfTheOtherImplementation(String design, List<String[]> expected) {
        Evaluation evaluation = engine.evaluate(Engine.Request.all(DesignFile.parse(text(design + ".tramontane.json")).design().orElseThrow()),
                Engine.Watch.NONE);
        Map<String, List<Figure>> given = new LinkedHashMap<>();
        for (Figure figure : evaluation.figures()) {
            if (figure.kind().id().startsWith("reliability.")) {
                given.computeIfAbsent(name(figure.kind().id(), figure.condition().split(":")[0], figure.place()), key -> new ArrayList<>()).add(figure);
            }
        }
        List<String> misses = new ArrayList<>();
        for (String[] row : expected) {
            String name = name(row[2], row[1], row[3]);
            List<Figure> figures = given.remove(name);
            if (figures == null) {
                misses.add(name + " is missing");
                continue;
            }
            // the shortest life counts of the cases of a condition
            compare(row[2], name, row[4], figures.stream().mapToDouble(Figure::value).min().orElseThrow(), misses);
            compare(row[2], name + ", lower", row[5], figures.stream().mapToDouble(each -> each.lower().orElse(each.value())).min().orElseThrow(), misses);
            compare(row[2], name + ", upper", row[6], figures.stream().mapToDouble(each -> each.upper().orElse(each.value())).min().orElseThrow(), misses);
        }
        given.keySet().forEach(name -> misses.add(name + " is not expected"));
        assertEquals("", String.join("\n", misses));
    }

    private static void compare(String figure, String name, String expected, double given, List<String> misses) {
        double wanted = Double.parseDouble(expected);
        boolean shared = figure.startsWith("reliability.system.") || figure.startsWith("reliability.visits.") || figure.startsWith("reliability.repair.");
        boolean probability = figure.endsWith("survival") || figure.endsWith("availability");
        double relative = figure.equals("reliability.visits.interval") ? INTERVAL : shared ? TIME : CLOSED;
        double tolerance = shared && probability ? PROBABILITY : relative * Math.abs(wanted);
        if (!(Math.abs(given - wanted) <= tolerance)) {
            misses.add(name + ": " + given + ", expected " + wanted);
        }
    }

    private static String name(String figure, String condition, String place) {
        return figure + " at \"" + place + "\" in \"" + condition + "\"";
    }

    private static String text(String file) {
        try (InputStream in = LifeChainTest.class.getResourceAsStream(FOLDER + file)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
