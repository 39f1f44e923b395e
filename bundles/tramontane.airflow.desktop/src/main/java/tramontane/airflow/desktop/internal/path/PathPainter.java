package tramontane.airflow.desktop.internal.path;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Device;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.FontData;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Path;
import org.eclipse.swt.graphics.Pattern;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.graphics.Transform;
import org.eclipse.swt.widgets.Control;
import tramontane.desktop.Palette;
import tramontane.model.FailedMover;

/**
 * Draws a {@link PathPicture} with a palette. It keeps the fonts it makes; whoever made it disposes of it.
 */
final class PathPainter {

    /** Below this zoom all texts are left out, as they could not be read. */
    private static final double READABLE = 0.22;
    /** Below this zoom no more than two lines each are written, so that they can be larger. */
    private static final double FULL = 0.44;
    /** Below this zoom texts are drawn larger than the picture, */
    private static final double COMFORTABLE = 0.85;
    /** but no more than so where all of them are, */
    private static final double MOST_ENLARGED = 1.22;
    /** and so where fewer are. */
    private static final double FEW_ENLARGED = 1.6;
    private static final double ROUND = 18;
    private static final int HALO = 2;
    private static final int SEGMENTS = 20;
    private static final int FEW = 6;
    /** Thinner ribbons are drawn with the same thickness however steep they run; wider ones keep their height, so that neighbours never overlap. */
    private static final double THIN = 8;

    private final Device device;
    private final Font text;
    private final Font name;
    private final Map<String, Point> extents = new HashMap<>();
    private final Map<Object, Path> areas = new IdentityHashMap<>();
    private final Map<Object, Path> borders = new IdentityHashMap<>();
    private Optional<PathPicture> drawn = Optional.empty();

    /** What is pointed out. */
    record Emphasis(Optional<PathTarget> selected, Optional<PathTarget> hovered, Optional<PathTarget> linking) {
        static final Emphasis NONE = new Emphasis(Optional.empty(), Optional.empty(), Optional.empty());

        boolean selects(PathTarget target) {
            return selected.filter(target::equals).isPresent();
        }

        boolean hovers(PathTarget target) {
            return hovered.filter(target::equals).isPresent();
        }

        boolean links(PathTarget target) {
            return linking.filter(target::equals).isPresent();
        }
    }

    PathPainter(Control control) {
        device = control.getDisplay();
        FontData[] data = control.getFont().getFontData();
        text = new Font(device, data);
        for (FontData each : data) {
            each.setStyle(each.getStyle() | SWT.BOLD);
        }
        name = new Font(device, data);
    }

    void dispose() {
        forget();
        text.dispose();
        name.dispose();
    }

    /** Paths are kept as long as the same picture is drawn, as making them costs more than drawing them. */
    private void forget() {
        areas.values().forEach(Path::dispose);
        borders.values().forEach(Path::dispose);
        areas.clear();
        borders.clear();
    }

    /** How large text is in these fonts. */
    Measure measure() {
        return new Measure() {
            @Override
            public double width(String line, Face face) {
                return extent(line, face).x;
            }

            @Override
            public double height(Face face) {
                return extent("Ápm³", face).y;
            }
        };
    }

    private Point extent(String line, Measure.Face face) {
        return extents.computeIfAbsent(face + line, key -> {
            GC gc = new GC(device);
            try {
                gc.setFont(face == Measure.Face.NAME ? name : text);
                return gc.textExtent(line, SWT.DRAW_TRANSPARENT);
            } finally {
                gc.dispose();
            }
        });
    }

    /**
     * Draws.
     *
     * @param gc       where to
     * @param picture  what
     * @param view     which part of it and how large
     * @param palette  the colours
     * @param emphasis what is pointed out
     */
    void paint(GC gc, PathPicture picture, Viewport view, Palette palette, Emphasis emphasis) {
        if (drawn.isEmpty() || drawn.get() != picture) {
            forget();
            drawn = Optional.of(picture);
        }
        gc.setAntialias(SWT.ON);
        gc.setTextAntialias(SWT.ON);
        gc.setLineCap(SWT.CAP_ROUND);
        gc.setLineJoin(SWT.JOIN_ROUND);
        Transform transform = new Transform(device);
        gc.getTransform(transform);
        Transform before = new Transform(device);
        gc.getTransform(before);
        transform.translate((float) view.x(), (float) view.y());
        transform.scale((float) view.zoom(), (float) view.zoom());
        gc.setTransform(transform);
        try {
            Stroke stroke = new Stroke(gc, picture, view, palette, emphasis);
            stroke.bar(picture.source(), true);
            stroke.bar(picture.sink(), false);
            picture.ribbons().forEach(stroke::ribbon);
            picture.bays().forEach(stroke::bay);
            picture.joints().forEach(stroke::joint);
        } finally {
            gc.setAlpha(255);
            gc.setTransform(before);
            before.dispose();
            transform.dispose();
        }
    }

    /** One drawing. */
    private final class Stroke {

        private final GC gc;
        private final PathPicture picture;
        private final Box seen;
        private final Palette palette;
        private final Emphasis emphasis;
        private final boolean readable;
        private final boolean brief;
        private final double zoom;
        private final double enlarged;

        Stroke(GC gc, PathPicture picture, Viewport view, Palette palette, Emphasis emphasis) {
            this.gc = gc;
            this.picture = picture;
            seen = view.seen();
            this.palette = palette;
            this.emphasis = emphasis;
            readable = view.zoom() >= READABLE;
            zoom = view.zoom();
            brief = view.zoom() < FULL;
            enlarged = brief ? Math.clamp(COMFORTABLE * 0.8 / view.zoom(), MOST_ENLARGED, FEW_ENLARGED)
                    : Math.clamp(COMFORTABLE / view.zoom(), 1, MOST_ENLARGED);
        }

        private Color air(OptionalDouble tint) {
            return tint.isPresent() ? muted(palette.scale(tint.getAsDouble())) : palette.line();
        }

        /** Values of an earlier state are drawn half as strong. */
        private Color muted(Color colour) {
            return picture.stale() ? mix(colour, palette.surface(), 0.55) : colour;
        }

        void bar(PathPicture.Bar bar, boolean left) {
            Box box = bar.box();
            Color colour = bar.tint().isPresent() ? air(bar.tint()) : palette.line();
            // one unit further on both sides, as the toolkit begins anew at the ends of a gradient
            float open = (float) (left ? box.x() - 1 : box.right() + 1);
            float shut = (float) (left ? box.right() + 1 : box.x() - 1);
            Pattern fade = new Pattern(device, open, 0, shut, 0, colour, 0, colour, bar.tint().isPresent() ? 255 : 110);
            // the bar fades, so its text stands above it
            double head = !readable ? 0 : brief ? 18 * bar.lines().size() * enlarged + 14
                    : bar.lines().stream().mapToDouble(line -> line.box().bottom() + 8 - box.y()).max().orElse(0);
            Path path = round(new Box(box.x(), box.y() + head, box.width(), Math.max(1, box.height() - head)), 4);
            gc.setBackgroundPattern(fade);
            gc.fillPath(path);
            gc.setBackgroundPattern(null);
            fade.dispose();
            path.dispose();
            PathTarget target = left ? PathTarget.SOURCE : PathTarget.SINK;
            ring(box, 4, target);
            block(bar.lines(), new Spot(box.middle().x(), box.y() + 8), box.width() + 20, line -> palette.text());
        }

        void ribbon(PathPicture.Ribbon ribbon) {
            PathTarget target = new PathTarget.Joint(ribbon.passage());
            boolean chosen = emphasis.selects(target);
            boolean seenAtAll = false;
            for (PathPicture.Half half : ribbon.halves()) {
                if (!seen(half)) {
                    continue;
                }
                seenAtAll = true;
                if (!readable && !chosen && !emphasis.hovers(target)) {
                    thin(half, ribbon);
                    continue;
                }
                Path path = areas.computeIfAbsent(half, key -> outline(half));
                Path edges = borders.computeIfAbsent(half, key -> edges(half));
                if (readable) {
                    gc.setLineCap(SWT.CAP_FLAT);
                    gc.setLineWidth(2 * HALO);
                    gc.setForeground(palette.surface());
                    gc.drawPath(edges);
                }
                fill(path, half, ribbon.known());
                if (chosen || emphasis.hovers(target) || readable && (faint(half.start()) || faint(half.end()))) {
                    gc.setLineWidth(chosen ? 3 : 1);
                    gc.setForeground(chosen ? palette.accent() : emphasis.hovers(target) ? palette.text() : palette.muted());
                    gc.drawPath(edges);
                }
                gc.setLineCap(SWT.CAP_ROUND);
            }
            if (!seenAtAll || !ribbon.known() || !readable && !ribbon.reverse()) {
                return;
            }
            if (ribbon.reverse()) {
                gc.setForeground(ribbon.width() < 8 ? palette.caution() : ink(air(ribbon.halves().getLast().end())));
                gc.setAlpha(ribbon.width() < 8 ? 255 : 130);
                gc.setLineWidth(1);
                for (PathPicture.Stroke hatch : ribbon.hatches()) {
                    Path path = new Path(device);
                    path.moveTo((float) hatch.from().x(), (float) hatch.from().y());
                    path.lineTo((float) hatch.to().x(), (float) hatch.to().y());
                    gc.drawPath(path);
                    path.dispose();
                }
            }
            for (int i = 0; i < ribbon.marks().size(); i++) {
                PathPicture.Half half = ribbon.halves().get(i);
                mark(ribbon.marks().get(i), ribbon, ink(air(i == 0 ? half.end() : half.start())));
            }
            gc.setAlpha(255);
        }

        /** A ribbon of which no more than its way and its colour can be seen. */
        private void thin(PathPicture.Half half, PathPicture.Ribbon ribbon) {
            int[] points = new int[2 * (half.spine().size() * FEW + 1)];
            int at = 0;
            points[at++] = (int) half.spine().getFirst().start().x();
            points[at++] = (int) half.spine().getFirst().start().y();
            for (Curve curve : half.spine()) {
                for (int i = 1; i <= FEW; i++) {
                    Spot spot = curve.at((double) i / FEW);
                    points[at++] = (int) Math.round(spot.x());
                    points[at++] = (int) Math.round(spot.y());
                }
            }
            gc.setLineCap(SWT.CAP_FLAT);
            gc.setLineWidth((int) Math.max(Math.round(half.width()), Math.ceil(1 / zoom)));
            gc.setForeground(!ribbon.known() ? palette.muted() : faint(half.end()) && half.width() * zoom < 4 ? palette.muted() : air(half.end()));
            gc.drawPolyline(points);
            gc.setLineCap(SWT.CAP_ROUND);
        }

        /** Whether a tint hardly stands out of the ground, so that it needs an edge: less than 3:1. */
        private boolean faint(OptionalDouble tint) {
            return tint.isPresent() && ratio(air(tint), palette.surface()) < 3;
        }

        private void fill(Path path, PathPicture.Half half, boolean known) {
            boolean onward = half.spine().stream().allMatch(Curve::onward);
            if (known && readable && onward && half.start().isPresent() && half.end().isPresent() && !half.start().equals(half.end())) {
                double from = half.spine().getFirst().start().x();
                double to = half.spine().getLast().end().x();
                double beyond = Math.signum(to - from);
                Pattern pattern = new Pattern(device, (float) (from - beyond), 0, (float) (to + beyond), 0, air(half.start()), 255, air(half.end()), 255);
                gc.setBackgroundPattern(pattern);
                gc.fillPath(path);
                gc.setBackgroundPattern(null);
                pattern.dispose();
            } else {
                gc.setBackground(known ? air(half.start()) : palette.muted());
                gc.setAlpha(known ? 255 : 120);
                gc.fillPath(path);
                gc.setAlpha(255);
            }
        }

        private void mark(PathPicture.Mark mark, PathPicture.Ribbon ribbon, Color ink) {
            boolean inside = ribbon.width() >= 14;
            double size = inside ? mark.size() * 0.75 : 5;
            Spot tip = mark.tip().plus(mark.direction().x() * size / 2, mark.direction().y() * size / 2);
            double bx = tip.x() - mark.direction().x() * size;
            double by = tip.y() - mark.direction().y() * size;
            double nx = -mark.direction().y() * size * 0.8;
            double ny = mark.direction().x() * size * 0.8;
            Path path = new Path(device);
            path.moveTo((float) (bx + nx), (float) (by + ny));
            path.lineTo((float) tip.x(), (float) tip.y());
            path.lineTo((float) (bx - nx), (float) (by - ny));
            if (inside) {
                gc.setAlpha(ribbon.reverse() ? 255 : 190);
                gc.setForeground(ink);
                gc.setLineWidth(2);
                gc.drawPath(path);
            } else {
                path.close();
                gc.setAlpha(255);
                gc.setForeground(palette.surface());
                gc.setLineWidth(2);
                gc.drawPath(path);
                gc.setBackground(ribbon.reverse() ? palette.caution() : palette.text());
                gc.fillPath(path);
            }
            path.dispose();
        }

        void bay(PathPicture.BayShape bay) {
            if (!bay.box().grown(8).overlaps(seen)) {
                return;
            }
            boolean known = bay.tint().isPresent();
            Color ground = known ? air(bay.tint()) : palette.raised();
            gc.setBackground(ground);
            if (!readable && known) {
                gc.fillRoundRectangle((int) bay.box().x(), (int) bay.box().y(), (int) bay.box().width(), (int) bay.box().height(), 36, 36);
                ring(bay.box(), ROUND, new PathTarget.Chamber(bay.id()));
                return;
            }
            Path path = areas.computeIfAbsent(bay, key -> round(bay.box(), ROUND));
            gc.fillPath(path);
            if (!known || faint(bay.tint())) {
                gc.setLineWidth(1);
                gc.setLineStyle(bay.missing() ? SWT.LINE_DASH : SWT.LINE_SOLID);
                gc.setForeground(bay.missing() ? palette.caution() : palette.muted());
                gc.drawPath(path);
                gc.setLineStyle(SWT.LINE_SOLID);
            }
            ring(bay.box(), ROUND, new PathTarget.Chamber(bay.id()));
            Color ink = known ? ink(ground) : palette.text();
            block(bay.lines(), bay.box().middle(), bay.box().width() - 4, line -> line.tone() == PathPicture.Tone.CAUTION && !known ? palette.caution() : ink);
        }

        private void ring(Box box, double round, PathTarget target) {
            boolean chosen = emphasis.selects(target) || emphasis.links(target);
            if (chosen || emphasis.hovers(target)) {
                Path ring = round(box.grown(chosen ? 4 : 3), round + 4);
                gc.setForeground(chosen ? palette.accent() : palette.muted());
                gc.setLineWidth(chosen ? 3 : 1);
                gc.setLineStyle(emphasis.links(target) ? SWT.LINE_DASH : SWT.LINE_SOLID);
                gc.drawPath(ring);
                gc.setLineStyle(SWT.LINE_SOLID);
                ring.dispose();
            }
        }

        void joint(PathPicture.Joint joint) {
            if (!joint.box().with(joint.collar()).grown(8).overlaps(seen) || !readable && !joint.bank()) {
                return;
            }
            PathTarget target = new PathTarget.Joint(joint.passage());
            boolean chosen = emphasis.selects(target);
            if (!readable) {
                gc.setBackground(joint.cells().stream().anyMatch(cell -> cell.failed().isPresent() || cell.reverse()) ? palette.caution() : palette.muted());
                gc.fillRoundRectangle((int) joint.collar().x(), (int) joint.collar().y(), (int) joint.collar().width(), (int) joint.collar().height(), 8, 8);
                return;
            }
            Path path = areas.computeIfAbsent(joint, key -> round(joint.collar(), joint.bank() ? 8 : 4.5));
            gc.setBackground(palette.surface());
            gc.fillPath(path);
            gc.setLineWidth(chosen ? 3 : 1);
            gc.setForeground(chosen ? palette.accent() : emphasis.hovers(target) ? palette.text() : palette.muted());
            gc.drawPath(path);
            joint.cells().forEach(cell -> cell(joint, cell));
            if (!joint.lines().isEmpty()) {
                block(joint.lines(), new Spot(joint.box().middle().x(), joint.lines().getFirst().box().y()), joint.box().width() + LayeredPlacement.BETWEEN, line -> switch (line.tone()) {
                    case CAUTION -> palette.caution();
                    case QUIET -> picture.stale() ? palette.stale() : palette.muted();
                    case PLAIN -> chosen ? palette.accent() : palette.text();
                });
            }
        }

        /**
         * Draws lines somewhat larger than the picture where it is small, about an anchor: margins between labels are wide enough for
         * that.
         */
        private void block(List<PathPicture.Line> lines, Spot anchor, double room, Function<PathPicture.Line, Color> colour) {
            if (!readable || enlarged == 1) {
                lines.forEach(line -> text(line, colour.apply(line)));
                return;
            }
            if (brief) {
                List<PathPicture.Line> two = new ArrayList<>(List.of(lines.getFirst()));
                lines.stream().filter(line -> line.tone() == PathPicture.Tone.CAUTION).findFirst().or(() -> lines.stream().skip(1).findFirst())
                        .filter(line -> line != lines.getFirst()).ifPresent(two::add);
                large(two, anchor, room, colour);
                return;
            }
            Transform transform = new Transform(device);
            gc.getTransform(transform);
            Transform larger = new Transform(device);
            gc.getTransform(larger);
            larger.translate((float) anchor.x(), (float) anchor.y());
            larger.scale((float) enlarged, (float) enlarged);
            larger.translate((float) -anchor.x(), (float) -anchor.y());
            gc.setTransform(larger);
            lines.forEach(line -> text(line, colour.apply(line)));
            gc.setTransform(transform);
            larger.dispose();
            transform.dispose();
        }

        /** A name and what matters most, large, cut to their room: below their anchor, in the middle of a bay about it. */
        private void large(List<PathPicture.Line> lines, Spot anchor, double room, Function<PathPicture.Line, Color> colour) {
            double widest = lines.stream().mapToDouble(line -> extent(line.text(), line.face()).x).max().orElse(1);
            double factor = Math.clamp(room / Math.max(1, widest), 1, enlarged);
            boolean about = anchor.y() > lines.getFirst().box().y() + 1;
            Transform before = new Transform(device);
            gc.getTransform(before);
            Transform larger = new Transform(device);
            gc.getTransform(larger);
            larger.translate((float) anchor.x(), (float) anchor.y());
            larger.scale((float) factor, (float) factor);
            gc.setTransform(larger);
            int y = about ? -lines.stream().mapToInt(line -> extent(line.text(), line.face()).y).sum() / 2 : 0;
            for (PathPicture.Line line : lines) {
                String cut = measure().fit(line.text(), line.face(), room / factor);
                Point extent = extent(cut, line.face());
                gc.setFont(line.face() == Measure.Face.NAME ? name : text);
                gc.setForeground(colour.apply(line));
                gc.drawText(cut, -extent.x / 2, y, SWT.DRAW_TRANSPARENT);
                y += extent.y;
            }
            gc.setTransform(before);
            larger.dispose();
            before.dispose();
        }

        private void cell(PathPicture.Joint joint, PathPicture.Cell cell) {
            Box box = cell.box();
            boolean bad = cell.failed().isPresent() || cell.reverse();
            Path path = round(box, 4);
            Color colour = bad ? palette.caution() : palette.muted();
            boolean removed = cell.failed().filter(FailedMover.State.REMOVED::equals).isPresent();
            if (!removed) {
                gc.setBackground(mix(colour, palette.surface(), bad ? 0.75 : 0.8));
                gc.fillPath(path);
            }
            gc.setForeground(colour);
            gc.setLineWidth(1);
            gc.setLineStyle(removed ? SWT.LINE_DASH : SWT.LINE_SOLID);
            gc.drawPath(path);
            gc.setLineStyle(SWT.LINE_SOLID);
            path.dispose();
            Path sign = sign(cell);
            gc.setForeground(bad ? palette.caution() : palette.text());
            gc.setLineWidth(2);
            gc.drawPath(sign);
            sign.dispose();
            PathTarget target = new PathTarget.Position(joint.passage(), cell.position());
            if (emphasis.selects(target) || emphasis.hovers(target)) {
                ring(box.grown(-2), 4, target);
            }
        }

        /** A head where it blows, a cross where it stands, a ring where the air turns it, nothing where there is none. */
        private Path sign(PathPicture.Cell cell) {
            Path path = new Path(device);
            float x = (float) cell.box().middle().x();
            float y = (float) cell.box().middle().y();
            float r = 4;
            if (cell.failed().isEmpty()) {
                float way = cell.along() * (cell.reverse() ? -1 : 1);
                path.moveTo(x - way * r / 2, y - r);
                path.lineTo(x + way * r / 2, y);
                path.lineTo(x - way * r / 2, y + r);
            } else {
                switch (cell.failed().get()) {
                    case LOCKED -> {
                        path.moveTo(x - r, y - r);
                        path.lineTo(x + r, y + r);
                        path.moveTo(x - r, y + r);
                        path.lineTo(x + r, y - r);
                    }
                    case FREEWHEELING -> path.addArc(x - r, y - r, 2 * r, 2 * r, 0, 360);
                    case REMOVED -> path.moveTo(x, y);
                }
            }
            return path;
        }

        private void text(PathPicture.Line line, Color colour) {
            if (!readable || !line.box().overlaps(seen)) {
                return;
            }
            gc.setAlpha(255);
            gc.setFont(line.face() == Measure.Face.NAME ? name : text);
            gc.setForeground(colour);
            gc.drawText(line.text(), (int) Math.round(line.box().x()), (int) Math.round(line.box().y()), SWT.DRAW_TRANSPARENT);
        }

        private boolean seen(PathPicture.Half half) {
            for (Curve curve : half.spine()) {
                double left = Math.min(Math.min(curve.start().x(), curve.end().x()), Math.min(curve.first().x(), curve.second().x()));
                double right = Math.max(Math.max(curve.start().x(), curve.end().x()), Math.max(curve.first().x(), curve.second().x()));
                double top = Math.min(curve.start().y(), curve.end().y()) - half.width();
                double bottom = Math.max(curve.start().y(), curve.end().y()) + half.width();
                if (new Box(left, top, right - left, bottom - top).grown(1).overlaps(seen)) {
                    return true;
                }
            }
            return false;
        }
    }

    /** The colour in which text can be read on another: black or white, whichever has more contrast, so never less than 4.5:1. */
    private static Color ink(Color ground) {
        double luminance = luminance(ground.getRGB());
        // (L + 0.05) over 0.05 is the contrast to black, 1.05 over (L + 0.05) that to white: WCAG 2.2
        return (luminance + 0.05) / 0.05 >= 1.05 / (luminance + 0.05) ? new Color(0, 0, 0) : new Color(255, 255, 255);
    }

    /** Contrast of two colours, 1 to 21. */
    private static double ratio(Color one, Color other) {
        double a = luminance(one.getRGB());
        double b = luminance(other.getRGB());
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(RGB rgb) {
        return 0.2126 * linear(rgb.red) + 0.7152 * linear(rgb.green) + 0.0722 * linear(rgb.blue);
    }

    private static double linear(int part) {
        double share = part / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
    }

    private static Color mix(Color colour, Color other, double share) {
        return new Color((int) Math.round(colour.getRed() * (1 - share) + other.getRed() * share),
                (int) Math.round(colour.getGreen() * (1 - share) + other.getGreen() * share),
                (int) Math.round(colour.getBlue() * (1 - share) + other.getBlue() * share));
    }

    private Path round(Box box, double radius) {
        double r = Math.min(radius, Math.min(box.width(), box.height()) / 2);
        float k = (float) (r * 0.5523);
        float x = (float) box.x();
        float y = (float) box.y();
        float right = (float) box.right();
        float bottom = (float) box.bottom();
        float f = (float) r;
        Path path = new Path(device);
        path.moveTo(x + f, y);
        path.lineTo(right - f, y);
        path.cubicTo(right - f + k, y, right, y + f - k, right, y + f);
        path.lineTo(right, bottom - f);
        path.cubicTo(right, bottom - f + k, right - f + k, bottom, right - f, bottom);
        path.lineTo(x + f, bottom);
        path.cubicTo(x + f - k, bottom, x, bottom - f + k, x, bottom - f);
        path.lineTo(x, y + f);
        path.cubicTo(x, y + f - k, x + f - k, y, x + f, y);
        path.close();
        return path;
    }

    /** Half a ribbon as an area: its spine moved up, and back moved down; where it turns back, moved to its sides. */
    private Path outline(PathPicture.Half half) {
        Path path = new Path(device);
        float reach = (float) (half.width() / 2);
        Spot start = half.spine().getFirst().start();
        path.moveTo((float) start.x(), (float) start.y() - reach);
        boolean onward = half.width() >= THIN && half.spine().stream().allMatch(Curve::onward);
        half.spine().forEach(curve -> side(path, curve, -reach, onward));
        Spot end = half.spine().getLast().end();
        path.lineTo((float) end.x(), (float) end.y() + reach);
        half.spine().reversed().forEach(curve -> side(path, curve.back(), onward ? reach : -reach, onward));
        path.close();
        return path;
    }

    /** Its two long edges alone, so that it stays open where it meets a bay. */
    private Path edges(PathPicture.Half half) {
        Path path = new Path(device);
        boolean onward = half.width() >= THIN && half.spine().stream().allMatch(Curve::onward);
        for (float reach : new float[] {(float) (-half.width() / 2), (float) (half.width() / 2)}) {
            Spot start = half.spine().getFirst().start();
            path.moveTo((float) start.x(), (float) start.y() + reach);
            half.spine().forEach(curve -> side(path, curve, reach, onward));
        }
        return path;
    }

    private static void side(Path path, Curve curve, float by, boolean onward) {
        if (onward) {
            path.cubicTo((float) curve.first().x(), (float) curve.first().y() + by, (float) curve.second().x(),
                    (float) curve.second().y() + by, (float) curve.end().x(), (float) curve.end().y() + by);
            return;
        }
        for (int i = 0; i <= SEGMENTS; i++) {
            Spot spot = curve.at((double) i / SEGMENTS);
            Spot direction = curve.direction((double) i / SEGMENTS);
            path.lineTo((float) (spot.x() - direction.y() * by), (float) (spot.y() + direction.x() * by));
        }
    }
}
