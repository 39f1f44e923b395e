package tramontane.airflow.desktop.internal.path;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.analysis.OperatingPoint;
import tramontane.model.Bay;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.Passage;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/** Makes a {@link PathPicture}. */
final class PathSketch {

    /** No ribbon is thinner, or it could not be seen. */
    static final double THINNEST = 1.5;
    /** A ribbon whose flow is not known. */
    static final double UNKNOWN = 3;
    private static final double COLLAR = 9;
    private static final double BEYOND = 7;
    private static final double HATCH = 9;
    private static final double PAD = 12;
    private static final int DIGITS = 3;

    private final PathGraph graph;
    private final Placement placement;
    private final AirValues values;
    private final UnitSystem units;
    private final Measure measure;
    private final List<Passage> passages;
    private final Optional<Scale> scale;
    private final ColourBy by;
    private final double[] widths;
    private final Map<String, PathGraph.Node> nodes = new LinkedHashMap<>();
    private final List<Way> ways = new ArrayList<>();
    private final Map<Integer, Lane> lanes = new HashMap<>();
    private final Map<String, Double> ends = new HashMap<>();

    /** Where a passage runs: asked for often, so looked up once. */
    private record Way(String start, String joints, String end, boolean backward, List<Spot> before, Optional<List<Spot>> after) {
    }

    /** Where a passage has its place among joints. */
    private record Lane(Box box, Spot middle, double thickness) {
    }

    PathSketch(Design design, PathGraph graph, Placement placement, AirValues values, ColourBy by, UnitSystem units, Measure measure) {
        this.graph = graph;
        this.placement = placement;
        this.values = values;
        this.units = units;
        this.measure = measure;
        this.by = by;
        passages = design.airPath().passages();
        graph.nodes().forEach(node -> nodes.put(node.key(), node));
        Map<String, PathGraph.Edge> edges = new HashMap<>();
        graph.edges().forEach(edge -> edges.put(edge.key(), edge));
        for (Passage passage : passages) {
            String joints = PathGraph.jointsKey(passage);
            PathGraph.Edge first = edges.get(PathGraph.startKey(passage) + "\n" + joints);
            ways.add(new Way(PathGraph.startKey(passage), joints, PathGraph.endKey(passage), first.backward(), placement.bends().get(first.key()),
                    Optional.ofNullable(edges.get(joints + "\n" + PathGraph.endKey(passage))).map(second -> placement.bends().get(second.key()))));
        }
        List<Double> shown = new ArrayList<>();
        graph.nodes().stream().filter(node -> !node.id().isEmpty() || node.role() != PathGraph.Role.JOINTS)
                .forEach(node -> by.value(values, node.id()).ifPresent(shown::add));
        scale = Scale.over(shown, by, units);
        widths = widths();
    }

    /**
     * How wide each ribbon is: {@link PathGraph#FULL} for all the air that passes the side of a bay at which most does, so that what
     * comes into a bay is as wide as what leaves it.
     */
    private double[] widths() {
        double[] wide = new double[passages.size()];
        Map<String, Double> sides = new HashMap<>();
        for (int i = 0; i < wide.length; i++) {
            Passage passage = passages.get(i);
            wide[i] = Optional.ofNullable(values.passages().get(passage.id())).map(air -> Math.abs(air.massFlow()))
                    .filter(Double::isFinite).orElse(Double.NaN);
            if (!Double.isNaN(wide[i])) {
                Way way = ways.get(i);
                sides.merge((way.backward() ? "left " : "right ") + way.start(), wide[i], Double::sum);
                sides.merge((way.backward() ? "right " : "left ") + way.end(), wide[i], Double::sum);
            }
        }
        double most = sides.values().stream().mapToDouble(each -> each).max().orElse(0);
        for (int i = 0; i < wide.length; i++) {
            wide[i] = Double.isNaN(wide[i]) ? UNKNOWN : most > 0 ? Math.max(THINNEST, wide[i] / most * PathGraph.FULL) : THINNEST;
        }
        return wide;
    }

    PathPicture picture() {
        graph.nodes().stream().filter(node -> node.role() == PathGraph.Role.JOINTS).forEach(this::lanes);
        graph.nodes().stream().filter(node -> node.role() == PathGraph.Role.BAY || node.role() == PathGraph.Role.MISSING)
                .forEach(this::stack);
        List<PathPicture.Ribbon> ribbons = new ArrayList<>();
        List<PathPicture.Joint> joints = new ArrayList<>();
        for (int i = 0; i < passages.size(); i++) {
            PathPicture.Ribbon ribbon = ribbon(i);
            ribbons.add(ribbon);
            joints.add(joint(i, ribbon));
        }
        List<PathPicture.BayShape> bays = graph.nodes().stream()
                .filter(node -> node.role() == PathGraph.Role.BAY || node.role() == PathGraph.Role.MISSING).map(this::bay).toList();
        Box bounds = placement.boxes().values().stream().reduce(Box::with).orElse(Box.EMPTY);
        for (PathPicture.Ribbon ribbon : ribbons) {
            for (PathPicture.Half half : ribbon.halves()) {
                for (Curve curve : half.spine()) {
                    for (Spot spot : List.of(curve.at(0), curve.at(0.25), curve.at(0.5), curve.at(0.75), curve.at(1))) {
                        bounds = bounds.with(Box.around(spot, 1, ribbon.width()));
                    }
                }
            }
        }
        Box source = placement.boxes().get(PathGraph.SOURCE);
        Box sink = placement.boxes().get(PathGraph.SINK);
        // what outside is called stands above the bars, clear of the highest ribbon
        double head = measure.height(Measure.Face.NAME) + measure.height(Measure.Face.TEXT) + 2 * PAD;
        Box inner = bounds.grown(PAD);
        Box all = new Box(inner.x(), inner.y() - head, inner.width(), inner.height() + head);
        return new PathPicture(all, bar(source, all), bar(sink, all), bays, ribbons, joints,
                scale.filter(each -> values.solved()).map(Scale::legend), values.caseId(), values.solved(), values.stale());
    }

    // -- where things are --

    private double lane(int i) {
        double ribbon = Math.max(widths[i], COLLAR);
        return passages.get(i).isBank() ? Math.max(ribbon, BankGrid.of(passages.get(i)).height() + 2 * PathGraph.RIBBON_GAP) : ribbon;
    }

    private void lanes(PathGraph.Node node) {
        Box box = placement.boxes().get(node.key());
        double total = 0;
        for (int i : node.passages()) {
            total += lane(i) + PathGraph.belowRibbon(passages.get(i), measure);
        }
        double last = PathGraph.belowRibbon(passages.get(node.passages().getLast()), measure);
        double top = box.y() + node.entry() - (total - last) / 2;
        for (int i : node.passages()) {
            double height = lane(i) + PathGraph.belowRibbon(passages.get(i), measure);
            lanes.put(i, new Lane(new Box(box.x(), top, box.width(), height - PathGraph.LANE_GAP),
                    new Spot(box.x() + box.width() / 2, top + lane(i) / 2), lane(i)));
            top += height;
        }
    }

    private static String endName(int passage, boolean start) {
        return passage + (start ? " starts" : " ends");
    }

    /** An end of a ribbon at a bay, with the height that it comes from. */
    private record End(int passage, boolean start, double towards) {
    }

    /** Stacks the ribbons at each side of a bay in the order in which they come in, so that they do not cross there. */
    private void stack(PathGraph.Node node) {
        List<End> left = new ArrayList<>();
        List<End> right = new ArrayList<>();
        for (int i = 0; i < passages.size(); i++) {
            Way way = ways.get(i);
            if (way.start().equals(node.key())) {
                (way.backward() ? left : right).add(new End(i, true, towards(i, true)));
            }
            if (way.end().equals(node.key()) && way.after().isPresent()) {
                (way.backward() ? right : left).add(new End(i, false, towards(i, false)));
            }
        }
        double middle = placement.boxes().get(node.key()).middle().y();
        for (List<End> side : List.of(left, right)) {
            side.sort(Comparator.comparingDouble(End::towards).thenComparingInt(End::passage));
            double total = side.stream().mapToDouble(end -> widths[end.passage()]).sum() + PathGraph.RIBBON_GAP * Math.max(0, side.size() - 1);
            double y = middle - total / 2;
            for (End end : side) {
                ends.put(endName(end.passage(), end.start()), y + widths[end.passage()] / 2);
                y += widths[end.passage()] + PathGraph.RIBBON_GAP;
            }
        }
    }

    private double towards(int passage, boolean start) {
        List<Spot> bends = bends(passage, start);
        double lane = lanes.get(passage).middle().y();
        // among passages that turn at the same place the lane decides, so a trace of it is added
        return bends.isEmpty() ? lane : (start ? bends.getFirst() : bends.getLast()).y() + lane * 1e-6;
    }

    private List<Spot> bends(int passage, boolean start) {
        return start ? ways.get(passage).before() : ways.get(passage).after().orElse(List.of());
    }

    /** How far a passage lies from the middle of those with which it shares its way. */
    private double beside(int passage) {
        List<Integer> together = nodes.get(ways.get(passage).joints()).passages();
        double total = -PathGraph.RIBBON_GAP;
        double before = 0;
        for (int other : together) {
            if (other == passage) {
                before = total + PathGraph.RIBBON_GAP + widths[other] / 2;
            }
            total += PathGraph.RIBBON_GAP + widths[other];
        }
        return before - total / 2;
    }

    // -- what is drawn --

    private PathPicture.Ribbon ribbon(int i) {
        Passage passage = passages.get(i);
        Optional<AirValues.PassageAir> air = Optional.ofNullable(values.passages().get(passage.id()));
        boolean reverse = air.map(AirValues.PassageAir::reverse).orElse(false);
        Way way = ways.get(i);
        int along = way.backward() ? -1 : 1;
        Lane lane = lanes.get(i);
        Box joints = placement.boxes().get(way.joints());
        double entry = along > 0 ? joints.x() : joints.right();
        double exit = along > 0 ? joints.right() : joints.x();
        Spot middle = lane.middle();
        List<Spot> before = new ArrayList<>();
        bends(i, true).forEach(bend -> before.add(bend.plus(0, beside(i))));
        before.add(new Spot(entry, middle.y()));
        before.add(middle);
        before.addFirst(end(i, true, along, before.getFirst().y()));
        List<PathPicture.Half> halves = new ArrayList<>();
        OptionalDouble from = tint(passage.from());
        OptionalDouble to = tint(passage.to());
        boolean step = by == ColourBy.PRESSURE;
        boolean back = !step && reverse && !passage.from().equals(Bay.OUTSIDE);
        boolean kept = !step && reverse && passage.from().equals(Bay.OUTSIDE);
        halves.add(new PathPicture.Half(curves(before, along), widths[i], kept ? to : from, back || kept ? to : from));
        if (way.after().isPresent()) {
            List<Spot> after = new ArrayList<>();
            after.add(middle);
            after.add(new Spot(exit, middle.y()));
            bends(i, false).forEach(bend -> after.add(bend.plus(0, beside(i))));
            after.add(end(i, false, along, after.getLast().y()));
            // air that goes out keeps its temperature until it is outside; elsewhere it goes over to the mixture that it becomes part of
            boolean out = !step && !reverse && passage.to().equals(Bay.OUTSIDE);
            halves.add(new PathPicture.Half(curves(after, along), widths[i], step || reverse ? to : from, out ? from : to));
        }
        List<PathPicture.Stroke> hatches = reverse ? hatches(halves, widths[i]) : List.of();
        return new PathPicture.Ribbon(i, widths[i], air.isPresent(), reverse, halves,
                air.isPresent() && air.get().massFlow() != 0 ? marks(halves, reverse, widths[i], passage.isBank() ? 0.34 : 0.45) : List.of(), hatches);
    }

    private OptionalDouble tint(String bay) {
        return values.solved() ? scale.map(each -> each.tint(by.value(values, bay))).orElse(OptionalDouble.empty()) : OptionalDouble.empty();
    }

    private Spot end(int passage, boolean start, int along, double level) {
        String key = start ? ways.get(passage).start() : ways.get(passage).end();
        Box box = placement.boxes().get(key);
        boolean outside = key.equals(PathGraph.SOURCE) || key.equals(PathGraph.SINK);
        double y = outside ? level : ends.getOrDefault(endName(passage, start), box.middle().y());
        return new Spot(start == along > 0 ? box.right() : box.x(), y);
    }

    private static List<Curve> curves(List<Spot> spots, int along) {
        List<Curve> curves = new ArrayList<>();
        for (int k = 1; k < spots.size(); k++) {
            if (spots.get(k).distance(spots.get(k - 1)) > 1e-6) {
                curves.add(Curve.level(spots.get(k - 1), spots.get(k), along));
            }
        }
        return curves;
    }

    /** One head per half, where it runs level beside its joint, that much of the way from its edge to the joint. */
    private static List<PathPicture.Mark> marks(List<PathPicture.Half> halves, boolean reverse, double width, double before) {
        List<PathPicture.Mark> marks = new ArrayList<>();
        for (PathPicture.Half half : halves) {
            Optional<Curve> longest = half.spine().stream().max(Comparator.<Curve>comparingInt(curve -> Math.abs(curve.end().y() - curve.start().y()) < 1 ? 1 : 0)
                    .thenComparingDouble(Curve::length));
            longest.ifPresent(curve -> {
                boolean towards = half == halves.getFirst() && curve == half.spine().getLast();
                boolean from = half != halves.getFirst() && curve == half.spine().getFirst();
                double at = towards ? before : from ? 1 - before : 0.5;
                Spot direction = curve.direction(at);
                marks.add(new PathPicture.Mark(curve.at(at), reverse ? new Spot(-direction.x(), -direction.y()) : direction,
                        Math.clamp(width * 0.4, 5, 12)));
            });
        }
        return marks;
    }

    private static List<PathPicture.Stroke> hatches(List<PathPicture.Half> halves, double width) {
        List<PathPicture.Stroke> hatches = new ArrayList<>();
        double reach = Math.max(4, width / 2 - 1);
        for (PathPicture.Half half : halves) {
            double ahead = HATCH / 2;
            for (Curve curve : half.spine()) {
                double length = curve.length();
                for (; ahead < length; ahead += HATCH) {
                    Spot spot = curve.at(ahead / length);
                    double lean = Math.min(4, reach);
                    hatches.add(new PathPicture.Stroke(spot.plus(-lean, reach), spot.plus(lean, -reach)));
                }
                ahead -= length;
            }
        }
        return hatches;
    }

    private PathPicture.Joint joint(int i, PathPicture.Ribbon ribbon) {
        Passage passage = passages.get(i);
        Lane lane = lanes.get(i);
        Box collar;
        List<PathPicture.Cell> cells = new ArrayList<>();
        if (passage.isBank()) {
            BankGrid grid = BankGrid.of(passage);
            collar = Box.around(lane.middle(), grid.width() + 2 * PathGraph.RIBBON_GAP,
                    Math.max(grid.height() + 2 * PathGraph.RIBBON_GAP, ribbon.width() + BEYOND));
            boolean one = tramontane.analysis.Cases.positions(passage) != grid.positions();
            for (int position = 1; position <= grid.positions(); position++) {
                cells.add(cell(i, position, one, grid, lane.middle()));
            }
        } else {
            collar = Box.around(lane.middle(), COLLAR, ribbon.width() + 2 * BEYOND);
        }
        List<PathPicture.Line> lines = new ArrayList<>();
        double y = lane.middle().y() + Math.max(lane.thickness() / 2, collar.height() / 2 - 1) + 1;
        y = Math.max(y, lane.middle().y() + lane.thickness() / 2 + PathGraph.LABEL_GAP);
        y = line(lines, passage.id().isEmpty() ? "no name" : passage.id(), Measure.Face.NAME, PathPicture.Tone.PLAIN, lane.box(), y);
        Optional<AirValues.PassageAir> air = Optional.ofNullable(values.passages().get(passage.id()));
        List<String> cautions = passage.isBank() ? movers(passage, cells) : List.of();
        int room = PathGraph.lines(passage) - cautions.size();
        if (air.isEmpty()) {
            y = line(lines, passage.kind(), Measure.Face.TEXT, PathPicture.Tone.QUIET, lane.box(), y);
        } else {
            if (air.get().reverse() && room > 1) {
                y = line(lines, "reverse", Measure.Face.TEXT, PathPicture.Tone.CAUTION, lane.box(), y);
                room--;
            }
            y = line(lines, Units.format(Math.abs(air.get().flow()), QuantityKind.FLOW, units, DIGITS), Measure.Face.TEXT, PathPicture.Tone.QUIET,
                    lane.box(), y);
            if (room > 1) {
                y = line(lines, minus(Units.format(air.get().drop(), QuantityKind.PRESSURE, units, DIGITS)), Measure.Face.TEXT,
                        PathPicture.Tone.QUIET, lane.box(), y);
            }
        }
        for (String text : cautions) {
            y = line(lines, text, Measure.Face.TEXT, PathPicture.Tone.CAUTION, lane.box(), y);
        }
        return new PathPicture.Joint(i, lane.box(), collar, passage.isBank(), cells, lines);
    }

    private PathPicture.Cell cell(int i, int position, boolean one, BankGrid grid, Spot middle) {
        Passage passage = passages.get(i);
        Map<Integer, FailedMover.State> failed = values.failed().getOrDefault(passage.id(), Map.of());
        Optional<FailedMover.State> state = one ? failed.values().stream().findFirst() : Optional.ofNullable(failed.get(position));
        Optional<OperatingPoint.BankPoint> point = Optional.ofNullable(values.banks().get(passage.id()));
        boolean reverse = !one && point.stream().flatMap(bank -> bank.movers().stream())
                .anyMatch(mover -> mover.position() == position && mover.flow() < 0);
        return new PathPicture.Cell(one ? 0 : position, grid.cell(position, middle), state, reverse, ways.get(i).backward() ? -1 : 1);
    }

    /** What should be known of a bank's movers, in no more than two short lines. */
    private List<String> movers(Passage passage, List<PathPicture.Cell> cells) {
        int positions = tramontane.analysis.Cases.positions(passage);
        List<String> said = new ArrayList<>();
        for (FailedMover.State state : FailedMover.State.values()) {
            List<PathPicture.Cell> such = cells.stream().filter(cell -> cell.failed().filter(state::equals).isPresent()).toList();
            if (such.size() == 1 && such.getFirst().position() > 0 && positions > 1) {
                said.add("no. " + such.getFirst().position() + " " + state.word());
            } else if (!such.isEmpty()) {
                said.add(such.getFirst().position() == 0 ? "some " + state.word() : such.size() == positions ? state.word() : such.size() + " " + state.word());
            }
        }
        boolean all = values.passages().containsKey(passage.id()) && values.passages().get(passage.id()).reverse();
        boolean back = !all && cells.stream().anyMatch(PathPicture.Cell::reverse);
        List<String> lines = new ArrayList<>();
        if (!said.isEmpty()) {
            lines.add(said.size() > 1 && (back || all) ? said.size() + " kinds of failure" : said.getFirst());
        }
        if (said.size() > 1 && !back && !all) {
            lines.add(String.join(", ", said.subList(1, said.size())));
        }
        if (back) {
            lines.add("air comes back");
        }
        return lines;
    }

    private PathPicture.BayShape bay(PathGraph.Node node) {
        Box box = placement.boxes().get(node.key());
        List<String> said = new ArrayList<>();
        if (node.role() == PathGraph.Role.MISSING) {
            said.add("not in the design");
        } else {
            said.addAll(state(node.id()));
        }
        double height = measure.height(Measure.Face.NAME) + said.size() * measure.height(Measure.Face.TEXT);
        List<PathPicture.Line> lines = new ArrayList<>();
        Box room = box.grown(-6);
        double y = line(lines, node.id().isEmpty() ? "no name" : node.id(), Measure.Face.NAME, PathPicture.Tone.PLAIN, room,
                box.middle().y() - height / 2);
        for (String text : said) {
            y = line(lines, text, Measure.Face.TEXT, node.role() == PathGraph.Role.MISSING ? PathPicture.Tone.CAUTION : PathPicture.Tone.PLAIN,
                    room, y);
        }
        return new PathPicture.BayShape(node.id(), box, tint(node.id()), node.role() == PathGraph.Role.MISSING, node.pin().isPresent(), lines);
    }

    private List<String> state(String bay) {
        AirValues.BayAir air = values.bays().get(bay);
        if (air == null || !values.solved()) {
            return List.of();
        }
        String temperature = Double.isFinite(air.temperature()) ? minus(Units.format(air.temperature(), QuantityKind.TEMPERATURE, units, DIGITS))
                : "still air";
        return bay.equals(Bay.OUTSIDE) ? List.of(temperature)
                : List.of(temperature, minus(Units.format(air.pressure(), QuantityKind.PRESSURE, units, DIGITS)));
    }

    private PathPicture.Bar bar(Box box, Box all) {
        Box tall = new Box(box.x(), all.y(), box.width(), all.height());
        List<PathPicture.Line> lines = new ArrayList<>();
        double y = line(lines, Bay.OUTSIDE, Measure.Face.NAME, PathPicture.Tone.PLAIN, tall, tall.y() + PAD);
        for (String text : state(Bay.OUTSIDE)) {
            y = line(lines, text, Measure.Face.TEXT, PathPicture.Tone.PLAIN, tall, y);
        }
        return new PathPicture.Bar(tall, tint(Bay.OUTSIDE), lines);
    }

    private double line(List<PathPicture.Line> lines, String text, Measure.Face face, PathPicture.Tone tone, Box room, double y) {
        String fitted = measure.fit(text, face, room.width());
        double width = Math.min(measure.width(fitted, face), room.width());
        lines.add(new PathPicture.Line(fitted, face, tone, new Box(room.middle().x() - width / 2, y, width, measure.height(face))));
        return y + measure.height(face);
    }

    /** The sign as it is printed. */
    static String minus(String number) {
        return number.startsWith("-") ? "\u2212" + number.substring(1) : number;
    }
}
