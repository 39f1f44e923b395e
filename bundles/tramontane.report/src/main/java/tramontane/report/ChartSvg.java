package tramontane.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.Collectors;
import tramontane.analysis.Chart;
import tramontane.physics.units.UnitSystem;

/**
 * A chart as an SVG picture: text that any browser shows and that stays sharp at any size.
 *
 * <p>Title and description tell who cannot see it what it shows and what its marks are.
 */
public final class ChartSvg {

    private static final double SIGN_STROKE = 2;

    private ChartSvg() {
    }

    /**
     * Draws a chart.
     *
     * @param chart   the chart
     * @param units   those of the reader
     * @param width   pixels of 1/96 inch, {@link ChartDrawing#LEAST} or more
     * @param height  the same
     * @param colours {@link ChartColours#LIGHT}, {@link ChartColours#DARK}, or others
     * @return a document of its own, UTF-8
     */
    public static String of(Chart chart, UnitSystem units, int width, int height, ChartColours colours) {
        Drawing drawing = ChartDrawing.of(chart, units, width, height, colours, TextWidth.ESTIMATE);
        StringBuilder svg = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        svg.append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"").append(width).append("\" height=\"").append(height)
                .append("\" viewBox=\"0 0 ").append(width).append(' ').append(height)
                .append("\" role=\"img\" aria-labelledby=\"title desc\" font-family=\"Inter, 'Segoe UI', 'Helvetica Neue', Arial, "
                        + "'DejaVu Sans', sans-serif\">\n");
        svg.append("<title id=\"title\">").append(escaped(chart.title())).append("</title>\n");
        svg.append("<desc id=\"desc\">").append(escaped(description(chart, units))).append("</desc>\n");
        Drawing.Box plot = drawing.plot();
        svg.append("<defs><clipPath id=\"plot\">");
        rectangle(svg, plot.left(), plot.top(), plot.width(), plot.height(), "");
        svg.append("</clipPath></defs>\n");
        rectangle(svg, 0, 0, width, height, " fill=\"" + colour(drawing.background()) + "\"");
        svg.append('\n');
        drawing.items().forEach(item -> draw(svg, item, drawing.background()));
        return svg.append("</svg>\n").toString();
    }

    /** What a chart shows, in sentences: its axes, its series, and where its marks are. */
    public static String description(Chart chart, UnitSystem units) {
        StringBuilder text = new StringBuilder();
        text.append(ChartDrawing.name(chart.y(), units));
        chart.right().ifPresent(right -> text.append(" and ").append(ChartDrawing.name(right, units)));
        text.append(" over ").append(ChartDrawing.name(chart.x(), units)).append('.');
        List<String> names = chart.series().stream().map(Chart.Series::name).filter(name -> !name.isEmpty()).distinct().toList();
        if (!names.isEmpty()) {
            text.append(" Shown: ").append(String.join("; ", names)).append('.');
        }
        for (Chart.Region region : chart.regions()) {
            text.append(' ').append(region.label());
            region.from().ifPresent(from -> text.append(" from ").append(chart.x().format(from, units, 3)));
            region.to().ifPresent(to -> text.append(" up to ").append(chart.x().format(to, units, 3)));
            text.append('.');
        }
        for (Chart.Mark mark : chart.marks()) {
            text.append(' ').append(mark.label()).append(" at ").append(chart.x().format(mark.x(), units, 3))
                    .append(", ").append(chart.axis(mark.side()).format(mark.y(), units, 3)).append('.');
        }
        return text.toString();
    }

    private static void draw(StringBuilder svg, Drawing.Item item, int background) {
        switch (item) {
            case Drawing.Line line -> {
                svg.append("<polyline points=\"").append(points(line.points())).append("\" fill=\"none\" stroke=\"")
                        .append(colour(line.colour())).append("\" stroke-width=\"").append(number(line.width()))
                        .append("\" stroke-linejoin=\"round\"");
                if (!line.dashes().isEmpty()) {
                    svg.append(" stroke-dasharray=\"").append(line.dashes().stream().map(ChartSvg::number).collect(Collectors.joining(" ")))
                            .append('"');
                }
                svg.append(clip(line.clip())).append("/>\n");
            }
            case Drawing.Area area -> svg.append("<polygon points=\"").append(points(area.points())).append("\" fill=\"")
                    .append(colour(area.colour())).append("\" fill-opacity=\"").append(number(area.opacity())).append('"')
                    .append(clip(area.clip())).append("/>\n");
            case Drawing.Sign sign -> sign(svg, sign, background);
            case Drawing.Words words -> words(svg, words, background);
        }
    }

    private static void words(StringBuilder svg, Drawing.Words words, int background) {
        svg.append("<text x=\"").append(number(words.x())).append("\" y=\"").append(number(words.y())).append("\" font-size=\"")
                .append(number(words.size())).append("\" fill=\"").append(colour(words.colour())).append('"');
        if (words.anchor() != Drawing.Anchor.START) {
            svg.append(" text-anchor=\"").append(words.anchor() == Drawing.Anchor.MIDDLE ? "middle" : "end").append('"');
        }
        if (words.bold()) {
            svg.append(" font-weight=\"bold\"");
        }
        if (words.turned()) {
            svg.append(" transform=\"rotate(-90 ").append(number(words.x())).append(' ').append(number(words.y())).append(")\"");
        }
        if (words.halo()) {
            svg.append(" paint-order=\"stroke\" stroke=\"").append(colour(background)).append("\" stroke-width=\"3\" stroke-linejoin=\"round\"");
        }
        svg.append('>').append(escaped(words.text())).append("</text>\n");
    }

    private static void sign(StringBuilder svg, Drawing.Sign sign, int background) {
        String filled = " fill=\"" + colour(sign.colour()) + "\"";
        String open = " fill=\"" + colour(background) + "\" stroke=\"" + colour(sign.colour()) + "\" stroke-width=\"" + number(SIGN_STROKE) + "\"";
        double x = sign.x();
        double y = sign.y();
        double r = sign.radius();
        switch (sign.shape()) {
            case DISC -> circle(svg, x, y, r, filled);
            case RING -> circle(svg, x, y, r - SIGN_STROKE / 2, open);
            case SQUARE -> rectangle(svg, x - 0.85 * r, y - 0.85 * r, 1.7 * r, 1.7 * r, filled);
            case DIAMOND -> polygon(svg, filled, x, y - r, x + r, y, x, y + r, x - r, y);
            case TRIANGLE -> polygon(svg, filled, x - r, y - r, x + r, y, x - r, y + r);
            case CROSS -> svg.append("<path d=\"M").append(number(x - r)).append(' ').append(number(y - r)).append('L').append(number(x + r))
                    .append(' ').append(number(y + r)).append('M').append(number(x - r)).append(' ').append(number(y + r)).append('L')
                    .append(number(x + r)).append(' ').append(number(y - r)).append("\" stroke=\"").append(colour(sign.colour()))
                    .append("\" stroke-width=\"").append(number(SIGN_STROKE)).append("\" fill=\"none\"/>");
        }
        svg.append('\n');
    }

    private static void circle(StringBuilder svg, double x, double y, double r, String style) {
        svg.append("<circle cx=\"").append(number(x)).append("\" cy=\"").append(number(y)).append("\" r=\"").append(number(r)).append('"')
                .append(style).append("/>");
    }

    private static void rectangle(StringBuilder svg, double x, double y, double wide, double high, String style) {
        svg.append("<rect x=\"").append(number(x)).append("\" y=\"").append(number(y)).append("\" width=\"").append(number(wide))
                .append("\" height=\"").append(number(high)).append('"').append(style).append("/>");
    }

    private static void polygon(StringBuilder svg, String style, double... xy) {
        svg.append("<polygon points=\"");
        for (int i = 0; i < xy.length; i++) {
            svg.append(i == 0 ? "" : i % 2 == 0 ? " " : ",").append(number(xy[i]));
        }
        svg.append('"').append(style).append("/>");
    }

    private static String points(Chart.Points points) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < points.size(); i++) {
            text.append(i == 0 ? "" : " ").append(number(points.x(i))).append(',').append(number(points.y(i)));
        }
        return text.toString();
    }

    private static String clip(boolean clip) {
        return clip ? " clip-path=\"url(#plot)\"" : "";
    }

    private static String colour(int rgb) {
        return String.format("#%06x", rgb & 0xffffff);
    }

    private static String number(double value) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_EVEN).stripTrailingZeros();
        return rounded.signum() == 0 ? "0" : rounded.toPlainString();
    }

    /** Text for XML; what XML cannot hold becomes a question mark. */
    static String escaped(String text) {
        StringBuilder safe = new StringBuilder();
        text.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                case '\t', '\n', '\r' -> safe.append(' ');
                default -> {
                    boolean allowed = c >= 0x20 && c <= 0xd7ff || c >= 0xe000 && c <= 0xfffd || c >= 0x10000;
                    safe.appendCodePoint(allowed ? c : '?');
                }
            }
        });
        return safe.toString();
    }
}
