package tramontane.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import tramontane.analysis.Chart;
import tramontane.analysis.Chart.Axis;
import tramontane.analysis.Chart.Look;
import tramontane.analysis.Chart.Mark;
import tramontane.analysis.Chart.Points;
import tramontane.analysis.Chart.Role;
import tramontane.analysis.Chart.Series;
import tramontane.analysis.Chart.Shape;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

class ChartSvgTest {

    private static final Chart EMPTY = Chart.of("fans", new Axis("flow", QuantityKind.FLOW), new Axis("static pressure", QuantityKind.PRESSURE));

    private static Chart duty() {
        double[] x = IntStream.range(0, 50).mapToDouble(i -> i / 500.0).toArray();
        double[] bank = IntStream.range(0, 50).mapToDouble(i -> 60 - i * i / 42.0).toArray();
        double[] low = IntStream.range(0, 50).mapToDouble(i -> 0.9 * bank[i]).toArray();
        double[] high = IntStream.range(0, 50).mapToDouble(i -> 1.1 * bank[i]).toArray();
        double[] system = IntStream.range(0, 50).mapToDouble(i -> 3000 * x[i] * x[i] * 3).toArray();
        return EMPTY.withRight(new Axis("efficiency", QuantityKind.FRACTION))
                .with(new Chart.Band("tolerance", Points.of(x, low), Points.of(x, high), 0))
                .with(new Chart.Region("stall region", OptionalDouble.empty(), OptionalDouble.of(0.02)))
                .with(new Series("bank at 3000 rpm", Role.CURVE, Look.line(0), Points.of(x, bank)))
                .with(new Series("system, hot day", Role.SYSTEM, new Look(Chart.Style.DASHED, 1, false), Points.of(x, system)))
                .with(new Series("efficiency", Role.BESIDE, new Look(Chart.Style.DOTTED, 2, true), Chart.Side.RIGHT,
                        Points.of(x, IntStream.range(0, 50).mapToDouble(i -> 0.3 * Math.sin(i / 16.0)).toArray()), 2))
                .with(new Mark("duty point", 0.068, 33, Shape.DISC, 0)).with(new Mark("unstable duty point", 0.015, 57, Shape.RING, 0));
    }

    private static Document parsed(String svg) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        return factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
    }

    private static List<String> texts(Document document) {
        NodeList nodes = document.getElementsByTagName("text");
        return IntStream.range(0, nodes.getLength()).mapToObj(i -> nodes.item(i).getTextContent()).toList();
    }

    @Test
    void itIsXmlWithTitleDescriptionAndUnits() throws Exception {
        Document document = parsed(ChartSvg.of(duty(), UnitSystem.METRIC, 640, 420, ChartColours.LIGHT));
        Element root = document.getDocumentElement();
        assertEquals("svg", root.getLocalName());
        assertEquals("http://www.w3.org/2000/svg", root.getNamespaceURI());
        assertEquals("fans", document.getElementsByTagName("title").item(0).getTextContent());
        String description = document.getElementsByTagName("desc").item(0).getTextContent();
        assertTrue(description.contains("unstable duty point at 54.0 m³/h, 57.0 Pa"), description);
        assertTrue(description.contains("stall region up to 72.0 m³/h"), description);
        List<String> texts = texts(document);
        assertTrue(texts.containsAll(List.of("flow (m³/h)", "static pressure (Pa)", "efficiency (%)", "bank at 3000 rpm", "tolerance",
                "stall region", "system, hot day")), texts.toString());
        assertEquals(1, texts.stream().filter("duty point"::equals).count(), "beside it");
    }

    @Test
    void stableAndUnstableDifferInShape() {
        String svg = ChartSvg.of(duty(), UnitSystem.METRIC, 640, 420, ChartColours.LIGHT);
        assertTrue(svg.matches("(?s).*<circle [^>]*fill=\"#0072b2\"/>.*"), "a filled disc");
        assertTrue(svg.matches("(?s).*<circle [^>]*fill=\"#ffffff\" stroke=\"#0072b2\".*"), "a ring");
    }

    @Test
    void allOfManyThingsInOneColumnAreDrawn() {
        double[] x = IntStream.range(0, 20).mapToDouble(i -> 1).toArray();
        double[] y = IntStream.range(0, 20).mapToDouble(i -> i).toArray();
        Chart chart = EMPTY.with(new Series("parts", Role.SCATTER, Look.marks(0, Shape.RING), Points.of(x, y)));
        String svg = ChartSvg.of(chart, UnitSystem.SI, 640, 420, ChartColours.LIGHT);
        assertEquals(21, svg.split("<circle [^>]*fill=\"#ffffff\" stroke", -1).length - 1, "twenty, and one in the legend");
    }

    @Test
    void textIsEscaped() throws Exception {
        String nasty = "<script>&\"'\u0007\uD800]]>";
        Chart chart = Chart.of(nasty, new Axis(nasty, QuantityKind.FLOW), new Axis(nasty, QuantityKind.PRESSURE))
                .with(new Series(nasty, Role.CURVE, Look.line(0), Points.of(new double[] {0, 1}, new double[] {0, 1})))
                .with(new Mark(nasty, 0.5, 0.5, Shape.CROSS, 0));
        Document document = parsed(ChartSvg.of(chart, UnitSystem.SI, 640, 420, ChartColours.DARK));
        assertEquals("<script>&\"'??]]>", document.getElementsByTagName("title").item(0).getTextContent());
        assertEquals(0, document.getElementsByTagName("script").getLength());
    }

    @Test
    void anEmptyChartIsDrawn() throws Exception {
        parsed(ChartSvg.of(EMPTY, UnitSystem.US, 160, 160, ChartColours.LIGHT));
        assertThrows(IllegalArgumentException.class, () -> ChartSvg.of(EMPTY, UnitSystem.US, 159, 400, ChartColours.LIGHT));
    }

    @Test
    void wordsNeverOverlap() {
        Random random = new Random(3);
        for (int run = 0; run < 300; run++) {
            Chart chart = run % 2 == 0 ? duty() : life(Chart.Scale.values()[run / 2 % 5]);
            for (int i = random.nextInt(12); i > 0; i--) {
                chart = chart.with(new Mark("point " + i, 0.06 + 0.03 * random.nextDouble(), 30 + 10 * random.nextDouble(), Shape.DIAMOND, i));
            }
            double wide = 260 + random.nextInt(900);
            double high = 320 + random.nextInt(600);
            Drawing drawing = ChartDrawing.of(chart, UnitSystem.values()[run % 3], wide, high, ChartColours.LIGHT, TextWidth.ESTIMATE);
            List<Drawing.Box> boxes = new ArrayList<>();
            for (Drawing.Item item : drawing.items()) {
                if (item instanceof Drawing.Words words) {
                    Drawing.Box box = box(words);
                    assertTrue(new Drawing.Box(0, 0, wide + 0.01, high).holds(box), () -> words + " leaves the canvas " + wide + " × " + high);
                    boxes.forEach(other -> assertFalse(other.overlaps(box), () -> words.text() + " lies on another at " + wide + " × " + high));
                    boxes.add(box);
                }
            }
        }
    }

    /** The box of some words: from 70 % of their size above the base line to 20 % below. */
    private static Drawing.Box box(Drawing.Words words) {
        double length = TextWidth.ESTIMATE.of(words.text(), words.size(), words.bold());
        double before = switch (words.anchor()) {
            case START -> 0;
            case MIDDLE -> length / 2;
            case END -> length;
        };
        double up = 0.7 * words.size();
        double down = 0.2 * words.size();
        return words.turned() ? new Drawing.Box(words.x() - up, words.y() - length + before, words.x() + down, words.y() + before)
                : new Drawing.Box(words.x() - before, words.y() - up, words.x() - before + length, words.y() + down);
    }

    private static Chart life(Chart.Scale scale) {
        double[] hours = {0, 16, 34, 53, 75, 93, 120};
        double[] failed = {0, 0.109, 0.264, 0.421, 0.579, 0.736, 0.891};
        double[] times = java.util.Arrays.stream(hours).map(hour -> 3600 * hour).toArray();
        return Chart.of("life", new Axis("time", QuantityKind.TIME, Chart.Scale.LOG), new Axis("failed", QuantityKind.FRACTION, scale))
                .with(new Chart.Band("bounds", Points.of(times, java.util.Arrays.stream(failed).map(share -> share / 2).toArray()),
                        Points.of(times, java.util.Arrays.stream(failed).map(share -> Math.min(1, share * 1.2)).toArray()), 0))
                .with(new Series("fit", Role.CURVE, Look.line(1), Points.of(times, failed)))
                .with(new Series("units", Role.SCATTER, Look.marks(2), Points.of(times, failed)))
                .with(new Mark("never", 0, 0, Shape.CROSS, 3)).with(new Mark("L10", 16 * 3600, 0.109, Shape.DIAMOND, 3));
    }

    @Test
    void onOtherScalesThingsAreDrawnWhereTheyLieAndNothingIsNowhere() throws Exception {
        for (Chart.Scale scale : Chart.Scale.values()) {
            Chart chart = life(scale);
            String svg = ChartSvg.of(chart, UnitSystem.METRIC, 640, 420, ChartColours.LIGHT);
            assertFalse(svg.contains("NaN") || svg.contains("Infinity"), scale.name());
            Document document = parsed(svg);
            Element plot = (Element) document.getElementsByTagName("rect").item(0);
            double left = Double.parseDouble(plot.getAttribute("x"));
            double top = Double.parseDouble(plot.getAttribute("y"));
            double wide = Double.parseDouble(plot.getAttribute("width"));
            double high = Double.parseDouble(plot.getAttribute("height"));
            Points units = chart.series().get(1).points();
            NodeList circles = document.getElementsByTagName("circle");
            assertEquals(7, circles.getLength(), "one in the legend, then six units; none at no time");
            double first = Math.log(16) - 0.05 * Math.log(120 / 16.0);
            for (int i = 1; i <= 6; i++) {
                Element circle = (Element) circles.item(i);
                double x = left + wide * (Math.log(units.x(i) / 3600) - first) / (1.1 * Math.log(120 / 16.0));
                assertEquals(x, Double.parseDouble(circle.getAttribute("cx")), 0.01, scale.name());
                double y = top + high * (1 - scale.share(chart.extent(Chart.Side.LEFT), units.y(i)));
                assertEquals(y, Double.parseDouble(circle.getAttribute("cy")), 0.01, scale.name());
            }
            List<String> texts = texts(document);
            assertTrue(texts.containsAll(List.of("20", "50", "100", "L10")), () -> scale + " " + texts);
            assertFalse(texts.contains("never"));
        }
    }

    @Test
    void ticksStandWithinThePlotAtTheirValues() {
        for (Chart.Scale scale : List.of(Chart.Scale.WEIBULL, Chart.Scale.NORMAL, Chart.Scale.EXPONENTIAL)) {
            Chart chart = life(scale);
            Drawing drawing = ChartDrawing.of(chart, UnitSystem.METRIC, 640, 420, ChartColours.LIGHT, TextWidth.ESTIMATE);
            List<Drawing.Words> ticks = drawing.items().stream().filter(Drawing.Words.class::isInstance).map(Drawing.Words.class::cast)
                    .filter(words -> words.anchor() == Drawing.Anchor.END).toList();
            assertTrue(ticks.stream().map(Drawing.Words::text).toList().containsAll(List.of("50", "63.2", "80")), () -> scale + " " + ticks);
            for (Drawing.Words tick : ticks) {
                double share = scale.share(chart.extent(Chart.Side.LEFT), Double.parseDouble(tick.text()) / 100);
                assertEquals(drawing.plot().bottom() - share * drawing.plot().height() + 11 / 3.0, tick.y(), 1e-6, tick.text());
                assertTrue(share > -1e-9 && share < 1 + 1e-9, tick.text());
            }
        }
    }

    @Test
    void aLineEndsWhereItsScaleCannotShowHowItGoesOn() {
        double[] x = {1, 2, 3, 4, 5, 6};
        Chart chart = Chart.of("life", new Axis("time", QuantityKind.TIME), new Axis("life", QuantityKind.TIME, Chart.Scale.LOG))
                .with(new Series("", Role.CURVE, Look.line(0), Points.of(x, new double[] {1, 10, 0, 10, 100, 10})));
        List<Drawing.Line> lines = ChartDrawing.of(chart, UnitSystem.SI, 400, 300, ChartColours.LIGHT, TextWidth.ESTIMATE).items().stream()
                .filter(Drawing.Line.class::isInstance).map(Drawing.Line.class::cast).filter(line -> line.width() == 2).toList();
        assertEquals(List.of(2, 3), lines.stream().map(line -> line.points().size()).toList());
    }

    @Test
    void whatIsZoomedOutIsNotMarked() throws Exception {
        Chart zoomed = duty().within(new Chart.Extent(0.05, 0.08), new Chart.Extent(20, 40));
        List<String> texts = texts(parsed(ChartSvg.of(zoomed, UnitSystem.METRIC, 640, 420, ChartColours.LIGHT)));
        assertEquals(0, texts.stream().filter("unstable duty point"::equals).count());
        assertEquals(1, texts.stream().filter("duty point"::equals).count());
    }

    @Test
    void whereAWordFindsNoRoomTheLegendHasIt() throws Exception {
        Chart crowded = duty();
        for (int i = 0; i < 40; i++) {
            crowded = crowded.with(new Mark("a mark with a long name", 0.04 + 0.001 * (i % 8), 30 + i / 8, Shape.DIAMOND, 4));
        }
        Document document = parsed(ChartSvg.of(crowded, UnitSystem.METRIC, 640, 420, ChartColours.LIGHT));
        double below = Double.parseDouble(((Element) document.getElementsByTagName("rect").item(0)).getAttribute("y"))
                + Double.parseDouble(((Element) document.getElementsByTagName("rect").item(0)).getAttribute("height"));
        NodeList texts = document.getElementsByTagName("text");
        assertEquals(1, IntStream.range(0, texts.getLength()).mapToObj(i -> (Element) texts.item(i))
                .filter(text -> text.getTextContent().equals("a mark with a long name") && Double.parseDouble(text.getAttribute("y")) > below).count());
    }

    @Test
    void coloursCanBeToldFromTheirBackground() {
        for (ChartColours colours : List.of(ChartColours.LIGHT, ChartColours.DARK)) {
            assertTrue(contrast(colours.text(), colours.background()) >= 4.5);
            assertTrue(contrast(colours.muted(), colours.background()) >= 4.5);
            // the first four carry what matters; a thin line needs 3:1 (WCAG 2.2, 1.4.11)
            for (int i = 0; i < 4; i++) {
                double contrast = contrast(colours.series(i), colours.background());
                assertTrue(contrast >= 3, "series " + i + ": " + contrast);
            }
        }
    }

    private static double contrast(int one, int other) {
        double a = luminance(one) + 0.05;
        double b = luminance(other) + 0.05;
        return Math.max(a, b) / Math.min(a, b);
    }

    private static double luminance(int rgb) {
        return 0.2126 * linear(rgb >> 16 & 255) + 0.7152 * linear(rgb >> 8 & 255) + 0.0722 * linear(rgb & 255);
    }

    private static double linear(int channel) {
        double c = channel / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }
}
