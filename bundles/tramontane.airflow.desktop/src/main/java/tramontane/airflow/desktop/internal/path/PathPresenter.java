package tramontane.airflow.desktop.internal.path;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import tramontane.analysis.Cases;
import tramontane.analysis.Figure;
import tramontane.analysis.OperatingPoint;
import tramontane.model.AirMover;
import tramontane.model.Bay;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.Passage;
import tramontane.model.Value;
import tramontane.model.edit.Edit;
import tramontane.model.edit.Edits;
import tramontane.model.edit.Subject;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/**
 * What the editor of the air path does, without widgets: keeps its state, finds what is under a point, goes from one thing to the next,
 * and turns what the user wants into edits of the design.
 *
 * <p>Layouts are made by whoever holds it, off the UI thread: {@link #wanted} says of what, {@link #placed} takes what came out. Until
 * then the last picture stays.
 */
final class PathPresenter {

    private static final int MOST_LISTED = 20;

    private static final int ALL_DIGITS = 7;
    private static final double REACH = 5;

    private final Measure measure;
    private final Supplier<Edits> edits;
    private PathState state = PathState.NOTHING;
    private Design design = Design.EMPTY;
    private AirValues values = AirValues.NONE;
    private UnitSystem units = UnitSystem.METRIC;
    private PathGraph graph = PathGraph.of(Design.EMPTY, Measure.COMMON);
    private Optional<PathGraph> laidOut = Optional.empty();
    private Placement placement = Placement.NONE;

    /** Where to go by keyboard. */
    enum Way {
        /** Along the flow. */
        ALONG,
        /** Against it. */
        BACK,
        /** To what lies above. */
        UP,
        /** To what lies below. */
        DOWN
    }

    /**
     * Makes one.
     *
     * @param measure how large text is
     * @param edits   edits with the forms that are loaded now
     */
    PathPresenter(Measure measure, Supplier<Edits> edits) {
        this.measure = measure;
        this.edits = edits;
    }

    /** What is shown. */
    PathState state() {
        return state;
    }

    /** Takes a design and the air in it. */
    void show(Design changed, AirValues air, UnitSystem shown) {
        if (!changed.airPath().equals(design.airPath()) || laidOut.isEmpty()) {
            graph = PathGraph.of(changed, measure);
        }
        design = changed;
        values = air;
        units = shown;
        draw();
    }

    /** What colours say from now on. */
    void colourBy(ColourBy by) {
        state = state.coloured(by);
        draw();
    }

    /** The graph for which there is no layout yet; empty where what is shown is up to date. */
    Optional<PathGraph> wanted() {
        PathGraph free = graph.unpinned();
        return laidOut.filter(free::equals).isPresent() ? Optional.empty() : Optional.of(free);
    }

    /** Takes a layout; one that comes too late is dropped. */
    void placed(PathGraph of, Placement free) {
        if (wanted().filter(of::equals).isPresent()) {
            laidOut = Optional.of(of);
            placement = free;
            draw();
        }
    }

    private void draw() {
        if (wanted().isEmpty()) {
            state = state.drawn(design, values, units, PathPicture.of(design, graph, placement.pinned(graph), values, state.by(), units, measure));
            state = state.selecting(state.selected().filter(this::exists)).linking(state.linking().filter(this::exists));
        }
    }

    private boolean exists(PathTarget target) {
        return box(target).isPresent();
    }

    /** Selects; nothing where empty. */
    void select(Optional<PathTarget> target) {
        state = state.selecting(target.filter(this::exists));
    }

    /** Follows what the window has selected; what has no place in the picture leaves nothing selected here. */
    void follow(Optional<Subject> subject) {
        Optional<PathTarget> target = subject.flatMap(each -> PathTarget.of(each, state.design()));
        boolean same = state.selected().flatMap(each -> each.subject(state.design())).equals(subject) && state.selected().isPresent();
        if (!same) {
            select(target);
        }
    }

    /** What is selected, for the whole window. */
    Optional<Subject> subject() {
        return state.selected().flatMap(target -> target.subject(state.design()));
    }

    // -- what is where --

    /** The place of something in the picture. */
    Optional<Box> box(PathTarget target) {
        return state.picture().flatMap(picture -> switch (target) {
            case PathTarget.Outside(boolean left) -> Optional.of(left ? picture.source().box() : picture.sink().box());
            case PathTarget.Chamber(String id) -> picture.bays().stream().filter(bay -> bay.id().equals(id)).map(PathPicture.BayShape::box).findFirst();
            case PathTarget.Joint(int passage) -> passage < picture.joints().size()
                    ? Optional.of(picture.joints().get(passage).box()) : Optional.empty();
            case PathTarget.Position(int passage, int position) -> passage < picture.joints().size() ? picture.joints().get(passage).cells().stream()
                    .filter(cell -> cell.position() == position).map(PathPicture.Cell::box).findFirst() : Optional.empty();
        });
    }

    /** What is under a point. */
    Optional<PathTarget> hit(Spot spot) {
        if (state.picture().isEmpty()) {
            return Optional.empty();
        }
        PathPicture picture = state.picture().get();
        for (PathPicture.Joint joint : picture.joints().reversed()) {
            for (PathPicture.Cell cell : joint.cells()) {
                if (cell.box().grown(1).contains(spot)) {
                    return Optional.of(new PathTarget.Position(joint.passage(), cell.position()));
                }
            }
            if (joint.collar().grown(3).contains(spot) || joint.lines().stream().anyMatch(line -> line.box().contains(spot))) {
                return Optional.of(new PathTarget.Joint(joint.passage()));
            }
        }
        for (PathPicture.BayShape bay : picture.bays().reversed()) {
            if (bay.box().contains(spot)) {
                return Optional.of(new PathTarget.Chamber(bay.id()));
            }
        }
        Optional<PathPicture.Ribbon> nearest = picture.ribbons().stream()
                .filter(ribbon -> ribbon.distance(spot, Math.max(REACH, ribbon.width() / 2)) < Double.POSITIVE_INFINITY)
                .min(Comparator.comparingDouble(ribbon -> ribbon.distance(spot, Math.max(REACH, ribbon.width() / 2))));
        if (nearest.isPresent()) {
            return Optional.of(new PathTarget.Joint(nearest.get().passage()));
        }
        return picture.source().box().contains(spot) ? Optional.of(PathTarget.SOURCE)
                : picture.sink().box().contains(spot) ? Optional.of(PathTarget.SINK) : Optional.empty();
    }

    /** The bay or side of outside under a point, to which a passage may be drawn. */
    Optional<PathTarget> end(Spot spot) {
        return hit(spot).filter(target -> target instanceof PathTarget.Chamber || target instanceof PathTarget.Outside);
    }

    /** Where one gets to by keyboard from what is selected; outside at the left where nothing is. */
    Optional<PathTarget> next(Way way) {
        if (state.picture().isEmpty()) {
            return Optional.empty();
        }
        PathTarget from = state.selected().orElse(PathTarget.SINK);
        if (state.selected().isEmpty()) {
            return Optional.of(PathTarget.SOURCE);
        }
        PathTarget at = from instanceof PathTarget.Position(int passage, int position) ? new PathTarget.Joint(passage) : from;
        boolean free = state.linking().isPresent();
        List<PathTarget> candidates = switch (way) {
            // what is to be joined is not joined yet, so then one goes to what stands that way
            case ALONG, BACK -> free ? beyond(at, way == Way.ALONG) : joined(at, way == Way.ALONG);
            case UP, DOWN -> beside(at);
        };
        Optional<Box> here = box(at);
        if (here.isEmpty()) {
            return Optional.empty();
        }
        Spot middle = here.get().middle();
        return candidates.stream().filter(target -> switch (way) {
            case ALONG, BACK -> true;
            case UP -> middle(target).y() < middle.y() - 1;
            case DOWN -> middle(target).y() > middle.y() + 1;
        }).min(Comparator.comparingDouble(target -> {
            Spot there = middle(target);
            return free ? there.distance(middle) : way == Way.ALONG || way == Way.BACK ? Math.abs(there.y() - middle.y()) : Math.abs(there.y() - middle.y()) + 3 * Math.abs(there.x() - middle.x());
        }));
    }

    private Spot middle(PathTarget target) {
        return box(target).orElse(Box.EMPTY).middle();
    }

    private List<PathTarget> joined(PathTarget target, boolean along) {
        List<Passage> passages = state.design().airPath().passages();
        if (target instanceof PathTarget.Joint(int passage)) {
            Passage each = passages.get(passage);
            return List.of(end(along ? each.to() : each.from(), !along));
        }
        List<PathTarget> found = new ArrayList<>();
        for (int i = 0; i < passages.size(); i++) {
            if (end(along ? passages.get(i).from() : passages.get(i).to(), along).equals(target)) {
                found.add(new PathTarget.Joint(i));
            }
        }
        return found;
    }

    private List<PathTarget> beyond(PathTarget target, boolean along) {
        double x = middle(target).x();
        List<PathTarget> ends = new ArrayList<>(beside(new PathTarget.Chamber("")));
        ends.add(along ? PathTarget.SINK : PathTarget.SOURCE);
        return ends.stream().filter(each -> along ? middle(each).x() > x + 1 : middle(each).x() < x - 1).toList();
    }

    private static PathTarget end(String bay, boolean source) {
        return bay.equals(Bay.OUTSIDE) ? source ? PathTarget.SOURCE : PathTarget.SINK : new PathTarget.Chamber(bay);
    }

    private List<PathTarget> beside(PathTarget target) {
        PathPicture picture = state.picture().orElseThrow();
        if (target instanceof PathTarget.Joint) {
            return picture.joints().stream().<PathTarget>map(joint -> new PathTarget.Joint(joint.passage())).toList();
        }
        return picture.bays().stream().<PathTarget>map(bay -> new PathTarget.Chamber(bay.id())).toList();
    }

    // -- what is said --

    /** What hovering over something tells: all digits, bounds, states. */
    String hover(PathTarget target) {
        List<String> lines = new ArrayList<>();
        switch (target) {
            case PathTarget.Outside outside -> {
                lines.add(Bay.OUTSIDE);
                bay(Bay.OUTSIDE, lines);
            }
            case PathTarget.Chamber(String id) -> {
                lines.add("bay " + id);
                bay(id, lines);
            }
            case PathTarget.Joint(int passage) -> passage(passage, lines);
            case PathTarget.Position(int passage, int position) -> position(passage, position, lines);
        }
        if (state.values().stale()) {
            lines.add("values of the design before the last change");
        }
        return String.join("\n", lines);
    }

    /** The same for who hears it, in one line. */
    String spoken(PathTarget target) {
        return hover(target).replace("\n", ", ");
    }

    private void bay(String id, List<String> lines) {
        AirValues.BayAir air = state.values().bays().get(id);
        if (air != null) {
            lines.add(value("temperature", air.temperature(), QuantityKind.TEMPERATURE, air.temperatureSaid()));
            if (!id.equals(Bay.OUTSIDE)) {
                lines.add(value("pressure above outside", air.pressure(), QuantityKind.PRESSURE, air.pressureSaid()));
            }
        } else if (!id.equals(Bay.OUTSIDE) && state.picture().stream().flatMap(picture -> picture.bays().stream())
                .anyMatch(bay -> bay.id().equals(id) && bay.missing())) {
            lines.add("passages name it, but the design has no such bay");
        }
    }

    private void passage(int number, List<String> lines) {
        Passage passage = state.design().airPath().passages().get(number);
        lines.add(passage.id() + ", " + passage.kind() + " from " + passage.from() + " to " + passage.to());
        AirValues.PassageAir air = state.values().passages().get(passage.id());
        if (air == null) {
            lines.add("flow not known");
            return;
        }
        if (air.reverse()) {
            lines.add("reverse: air goes from " + passage.to() + " to " + passage.from());
        }
        lines.add(value("flow", air.flow(), QuantityKind.FLOW, air.flowSaid()));
        lines.add(value("drop", air.drop(), QuantityKind.PRESSURE, air.dropSaid()));
        air.velocity().ifPresent(velocity -> lines.add(value("velocity", velocity, QuantityKind.VELOCITY, Optional.empty())));
        Optional.ofNullable(state.values().banks().get(passage.id())).ifPresent(bank -> {
            lines.add(value("speed", bank.speed(), QuantityKind.ROTATIONAL_SPEED, Optional.empty()));
            bank.power().ifPresent(power -> lines.add(value("electrical power", power, QuantityKind.POWER, Optional.empty())));
            if (!bank.stable()) {
                lines.add("unstable duty point");
            }
        });
    }

    private void position(int number, int position, List<String> lines) {
        Passage passage = state.design().airPath().passages().get(number);
        if (position == 0) {
            passage(number, lines);
            return;
        }
        Optional<FailedMover.State> failed = Optional.ofNullable(state.values().failed().get(passage.id())).map(by -> by.get(position));
        Optional<OperatingPoint.MoverPoint> mover = Optional.ofNullable(state.values().banks().get(passage.id())).stream()
                .flatMap(bank -> bank.movers().stream()).filter(each -> each.position() == position).findFirst();
        lines.add(passage.id() + " no. " + position + failed.map(each -> ", " + each.word()).orElse(mover.filter(OperatingPoint.MoverPoint::running)
                .map(each -> ", running").orElse("")));
        mover.ifPresent(each -> {
            if (each.flow() < 0) {
                lines.add("air goes backwards through it");
            }
            lines.add(value("flow", each.flow(), QuantityKind.FLOW, Optional.empty()));
            lines.add(value("static pressure", each.pressure(), QuantityKind.PRESSURE, Optional.empty()));
            lines.add(value("speed", each.speed(), QuantityKind.ROTATIONAL_SPEED, Optional.empty()));
            each.power().ifPresent(power -> lines.add(value("electrical power", power, QuantityKind.POWER, Optional.empty())));
        });
    }

    private String value(String name, double si, QuantityKind kind, Optional<Figure> said) {
        String text = name + " " + number(si, kind);
        if (said.isPresent() && (said.get().lower().isPresent() || said.get().upper().isPresent())) {
            text += ", between " + (said.get().lower().isPresent() ? number(said.get().lower().getAsDouble(), kind) : "unknown") + " and "
                    + (said.get().upper().isPresent() ? number(said.get().upper().getAsDouble(), kind) : "unknown");
        }
        return text;
    }

    private String number(double si, QuantityKind kind) {
        return Double.isFinite(si) ? PathSketch.minus(Units.format(si, kind, state.units(), ALL_DIGITS)) : "not known";
    }

    // -- what is edited: the newest design, of which the picture may not be drawn yet --

    /** Adds a bay behind the one selected. */
    Edit addBay() {
        return edits.get().add(design, Subject.Kind.BAY, Value.Tree.EMPTY, subject().filter(each -> each.kind() == Subject.Kind.BAY && !each.isOutside()));
    }

    /**
     * Joins two bays.
     *
     * @param from where the passage starts; either side of outside is outside
     * @param to   where it ends
     * @param kind the name of the passage kind; a bank takes the first part of the design
     */
    Edit connect(PathTarget from, PathTarget to, String kind) {
        Optional<String> start = bayId(from);
        Optional<String> end = bayId(to);
        if (start.isEmpty() || end.isEmpty()) {
            return Edit.refused("add passage", "a passage starts and ends at a bay or outside");
        }
        Value.Tree tree = Value.Tree.EMPTY.with("kind", new Value.Text(kind)).with("from", new Value.Text(start.get())).with("to", new Value.Text(end.get()));
        Optional<AirMover> part = design.airMovers().stream().findFirst();
        if (kind.equals(Passage.BANK) && part.isPresent()) {
            tree = tree.with("mover", new Value.Text(part.get().id()));
        }
        return edits.get().add(design, Subject.Kind.PASSAGE, tree, Optional.empty());
    }

    private static Optional<String> bayId(PathTarget target) {
        return switch (target) {
            case PathTarget.Outside outside -> Optional.of(Bay.OUTSIDE);
            case PathTarget.Chamber(String id) -> Optional.of(id);
            case PathTarget.Joint joint -> Optional.empty();
            case PathTarget.Position position -> Optional.empty();
        };
    }

    /** Puts the middle of a bay somewhere. */
    Edit move(String bay, Spot middle) {
        return Edit.of("move " + bay, PathEdits.move(design, bay, middle)).selecting(Subject.bay(bay));
    }

    /** Lets the layout place a bay again. */
    Edit release(String bay) {
        return Edit.of("place " + bay + " automatically", PathEdits.release(design, bay));
    }

    /** Lets the layout place every bay. */
    Edit releaseAll() {
        return Edit.of("arrange bays", PathEdits.releaseAll(design));
    }

    /**
     * Lets a mover fail in a condition, or work in it again.
     *
     * @param condition the condition as declared
     * @param at        the position
     * @param how       how it fails; empty for it works
     */
    Edit fail(String condition, PathTarget.Position at, Optional<FailedMover.State> how) {
        String bank = state.design().airPath().passages().get(at.passage()).id();
        String mover = bank + " no. " + at.position();
        return Edit.of(how.map(word -> mover + " " + word.word()).orElse(mover + " works") + " in " + condition,
                PathEdits.fail(state.design(), condition, bank, at.position(), how));
    }

    /** The positions that are meant by what is selected: one, or all of a bank that is not too large for a menu. */
    List<PathTarget.Position> positions() {
        return state.selected().map(target -> switch (target) {
            case PathTarget.Position position when position.position() > 0 -> List.of(position);
            case PathTarget.Joint(int passage) -> positionsOf(passage);
            case PathTarget.Position(int passage, int none) -> positionsOf(passage);
            default -> List.<PathTarget.Position>of();
        }).orElse(List.of());
    }

    private List<PathTarget.Position> positionsOf(int passage) {
        List<Passage> passages = state.design().airPath().passages();
        if (passage >= passages.size() || !passages.get(passage).isBank()) {
            return List.of();
        }
        return IntStream.rangeClosed(1, Math.min(MOST_LISTED, Cases.positions(passages.get(passage))))
                .mapToObj(position -> new PathTarget.Position(passage, position)).toList();
    }

    /** How the mover at a position has failed in the case in front, if it has. */
    Optional<FailedMover.State> failed(PathTarget.Position at) {
        String bank = state.design().airPath().passages().get(at.passage()).id();
        return Optional.ofNullable(state.values().failed().getOrDefault(bank, Map.of()).get(at.position()));
    }

    /** Takes out what is selected. */
    Edit remove() {
        return subject().filter(each -> !each.isOutside()).map(each -> edits.get().remove(design, List.of(each)))
                .orElseGet(() -> Edit.refused("delete", "select a bay or a passage to delete"));
    }

    /** Gives what is selected another name. */
    Edit rename(String name) {
        return subject().filter(each -> !each.isOutside()).map(each -> edits.get().rename(design, each, name))
                .orElseGet(() -> Edit.refused("rename", "select a bay or a passage to rename"));
    }

    /** Begins to draw a passage from a bay; nothing where it cannot start there. */
    void linkFrom(Optional<PathTarget> from) {
        state = state.linking(from.filter(target -> bayId(target).isPresent()));
    }
}
