package tramontane.desktop.internal.icons;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The shapes of an icon as cubic outlines on its grid of 16 units. Pure; the part of SVG that {@code Icon} names is understood.
 *
 * @param shapes its shapes in the order they are drawn
 */
public record Drawing(List<Shape> shapes) {

    private static final Pattern ELEMENT = Pattern.compile("<(path|line|polyline|polygon|rect|circle|ellipse)\\b([^>]*)>", Pattern.DOTALL);
    private static final Pattern ATTRIBUTE = Pattern.compile("([\\w-]+)\\s*=\\s*\"([^\"]*)\"");
    private static final Pattern TOKEN = Pattern.compile("[A-Za-z]|[-+]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][-+]?\\d+)?");
    /** Bézier handles of a quarter circle. */
    private static final double QUARTER = 0.5522847498;

    public Drawing {
        shapes = List.copyOf(shapes);
    }

    /**
     * One shape.
     *
     * @param steps its outline
     * @param fill  whether it is filled instead of stroked
     */
    public record Shape(List<Step> steps, boolean fill) {
        public Shape {
            steps = List.copyOf(steps);
        }
    }

    /**
     * A step of an outline.
     *
     * @param kind   M move, L line, C cubic, Z close
     * @param points coordinates x, y, …: two for M and L, six for C, none for Z
     */
    public record Step(char kind, double... points) {
    }

    /**
     * Reads a drawing.
     *
     * @throws IllegalArgumentException if a path is not understood
     */
    public static Drawing of(String svg) {
        List<Shape> shapes = new ArrayList<>();
        Matcher element = ELEMENT.matcher(svg);
        while (element.find()) {
            String attributes = element.group(2);
            List<Step> steps = switch (element.group(1)) {
                case "path" -> path(text(attributes, "d"));
                case "line" -> List.of(new Step('M', number(attributes, "x1"), number(attributes, "y1")),
                        new Step('L', number(attributes, "x2"), number(attributes, "y2")));
                case "polyline" -> path("M" + text(attributes, "points"));
                case "polygon" -> path("M" + text(attributes, "points") + "Z");
                case "rect" -> rectangle(number(attributes, "x"), number(attributes, "y"), number(attributes, "width"),
                        number(attributes, "height"), number(attributes, "rx"));
                case "circle" -> ellipse(number(attributes, "cx"), number(attributes, "cy"), number(attributes, "r"),
                        number(attributes, "r"));
                default -> ellipse(number(attributes, "cx"), number(attributes, "cy"), number(attributes, "rx"),
                        number(attributes, "ry"));
            };
            shapes.add(new Shape(steps, text(attributes, "fill").equals("currentColor")));
        }
        return new Drawing(shapes);
    }

    private static String text(String attributes, String name) {
        Matcher attribute = ATTRIBUTE.matcher(attributes);
        while (attribute.find()) {
            if (attribute.group(1).equals(name)) {
                return attribute.group(2);
            }
        }
        return "";
    }

    private static double number(String attributes, String name) {
        String text = text(attributes, name);
        return text.isEmpty() ? 0 : Double.parseDouble(text);
    }

    private static List<Step> rectangle(double x, double y, double width, double height, double r) {
        double k = r * (1 - QUARTER);
        double right = x + width;
        double low = y + height;
        if (r == 0) {
            return List.of(new Step('M', x, y), new Step('L', right, y), new Step('L', right, low), new Step('L', x, low), new Step('Z'));
        }
        return List.of(new Step('M', x + r, y), new Step('L', right - r, y), new Step('C', right - k, y, right, y + k, right, y + r),
                new Step('L', right, low - r), new Step('C', right, low - k, right - k, low, right - r, low),
                new Step('L', x + r, low), new Step('C', x + k, low, x, low - k, x, low - r),
                new Step('L', x, y + r), new Step('C', x, y + k, x + k, y, x + r, y), new Step('Z'));
    }

    private static List<Step> ellipse(double cx, double cy, double rx, double ry) {
        double kx = rx * QUARTER;
        double ky = ry * QUARTER;
        return List.of(new Step('M', cx + rx, cy), new Step('C', cx + rx, cy + ky, cx + kx, cy + ry, cx, cy + ry),
                new Step('C', cx - kx, cy + ry, cx - rx, cy + ky, cx - rx, cy),
                new Step('C', cx - rx, cy - ky, cx - kx, cy - ry, cx, cy - ry),
                new Step('C', cx + kx, cy - ry, cx + rx, cy - ky, cx + rx, cy), new Step('Z'));
    }

    private static List<Step> path(String data) {
        List<String> tokens = new ArrayList<>();
        Matcher token = TOKEN.matcher(data);
        while (token.find()) {
            tokens.add(token.group());
        }
        return new PathReader(tokens).read();
    }

    /** Turns path data into absolute moves, lines and cubics. */
    private static final class PathReader {
        private final List<String> tokens;
        private final List<Step> steps = new ArrayList<>();
        private int next;
        private double x;
        private double y;
        private double startX;
        private double startY;

        PathReader(List<String> tokens) {
            this.tokens = tokens;
        }

        List<Step> read() {
            char command = 'M';
            while (next < tokens.size()) {
                if (Character.isLetter(tokens.get(next).charAt(0))) {
                    command = tokens.get(next++).charAt(0);
                    if (Character.toUpperCase(command) == 'Z') {
                        steps.add(new Step('Z'));
                        x = startX;
                        y = startY;
                        continue;
                    }
                }
                step(command);
                // further pairs behind a move are lines
                command = command == 'M' ? 'L' : command == 'm' ? 'l' : command;
            }
            return steps;
        }

        private void step(char command) {
            double dx = Character.isLowerCase(command) ? x : 0;
            double dy = Character.isLowerCase(command) ? y : 0;
            switch (Character.toUpperCase(command)) {
                case 'M' -> {
                    x = dx + number();
                    y = dy + number();
                    startX = x;
                    startY = y;
                    steps.add(new Step('M', x, y));
                }
                case 'L' -> line(dx + number(), dy + number());
                case 'H' -> line(dx + number(), y);
                case 'V' -> line(x, dy + number());
                case 'C' -> cubic(dx + number(), dy + number(), dx + number(), dy + number(), dx + number(), dy + number());
                case 'Q' -> {
                    double qx = dx + number();
                    double qy = dy + number();
                    double toX = dx + number();
                    double toY = dy + number();
                    cubic(x + 2 * (qx - x) / 3, y + 2 * (qy - y) / 3, toX + 2 * (qx - toX) / 3, toY + 2 * (qy - toY) / 3, toX, toY);
                }
                case 'A' -> arc(number(), number(), Math.toRadians(number()), number() != 0, number() != 0, dx + number(), dy + number());
                default -> throw new IllegalArgumentException("no path command " + command);
            }
        }

        private double number() {
            if (next == tokens.size()) {
                throw new IllegalArgumentException("path ends in the middle of a command");
            }
            return Double.parseDouble(tokens.get(next++));
        }

        private void line(double toX, double toY) {
            x = toX;
            y = toY;
            steps.add(new Step('L', x, y));
        }

        private void cubic(double x1, double y1, double x2, double y2, double toX, double toY) {
            x = toX;
            y = toY;
            steps.add(new Step('C', x1, y1, x2, y2, x, y));
        }

        /** An arc as cubics of a quarter turn at most (SVG 1.1, appendix F.6.5: from end points to centre). */
        private void arc(double radiusX, double radiusY, double turn, boolean large, boolean sweep, double toX, double toY) {
            double cos = Math.cos(turn);
            double sin = Math.sin(turn);
            double hx = (x - toX) / 2;
            double hy = (y - toY) / 2;
            double px = cos * hx + sin * hy;
            double py = -sin * hx + cos * hy;
            double grow = Math.sqrt(Math.max(1, px * px / (radiusX * radiusX) + py * py / (radiusY * radiusY)));
            double rx = radiusX * grow;
            double ry = radiusY * grow;
            double rest = rx * rx * ry * ry - rx * rx * py * py - ry * ry * px * px;
            double factor = Math.sqrt(Math.max(0, rest / (rx * rx * py * py + ry * ry * px * px))) * (large == sweep ? -1 : 1);
            double cxp = factor * rx * py / ry;
            double cyp = -factor * ry * px / rx;
            double cx = cos * cxp - sin * cyp + (x + toX) / 2;
            double cy = sin * cxp + cos * cyp + (y + toY) / 2;
            double from = Math.atan2((py - cyp) / ry, (px - cxp) / rx);
            double swept = Math.atan2((-py - cyp) / ry, (-px - cxp) / rx) - from;
            if (sweep && swept < 0) {
                swept += 2 * Math.PI;
            } else if (!sweep && swept > 0) {
                swept -= 2 * Math.PI;
            }
            int pieces = Math.max(1, (int) Math.ceil(Math.abs(swept) / (Math.PI / 2) - 1e-9));
            double piece = swept / pieces;
            double handle = 4.0 / 3 * Math.tan(piece / 4);
            for (int i = 0; i < pieces; i++) {
                double a = from + i * piece;
                double b = a + piece;
                double[] p1 = place(cx, cy, rx, ry, cos, sin, Math.cos(a) - handle * Math.sin(a), Math.sin(a) + handle * Math.cos(a));
                double[] p2 = place(cx, cy, rx, ry, cos, sin, Math.cos(b) + handle * Math.sin(b), Math.sin(b) - handle * Math.cos(b));
                double[] end = i == pieces - 1 ? new double[] {toX, toY} : place(cx, cy, rx, ry, cos, sin, Math.cos(b), Math.sin(b));
                cubic(p1[0], p1[1], p2[0], p2[1], end[0], end[1]);
            }
        }

        private static double[] place(double cx, double cy, double rx, double ry, double cos, double sin, double u, double v) {
            return new double[] {cx + cos * rx * u - sin * ry * v, cy + sin * rx * u + cos * ry * v};
        }
    }
}
