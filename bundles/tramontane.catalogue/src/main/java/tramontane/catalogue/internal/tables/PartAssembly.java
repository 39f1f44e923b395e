package tramontane.catalogue.internal.tables;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import tramontane.analysis.Sections;
import tramontane.catalogue.internal.tables.PartRow.Cell;
import tramontane.model.AirMover;
import tramontane.model.FormReader;
import tramontane.model.Noun;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.Values;

/**
 * Makes parts of rows: all rows of one id are one part. Points of one curve may stand in one cell or one below the other; a row
 * that states another speed, or anything else of a curve, begins another curve; what it does not state is as in the row before.
 */
final class PartAssembly {

    private static final String CURVES = "curves";

    private final String name;
    private final Fields fields;
    private final List<Cell> constants;
    private final List<Problem> problems;
    /** What parts lack, by place, with the parts that lack it: one sentence for all of them. */
    private final Map<String, List<String>> missing = new LinkedHashMap<>();
    /** Whether something of the part at hand was left out as wrong, so that what is missing is no wonder. */
    private boolean isBad;

    PartAssembly(String name, Fields fields, List<Cell> constants, List<Problem> problems) {
        this.name = name;
        this.fields = fields;
        this.constants = constants;
        this.problems = problems;
    }

    /** Members of an object that is being put together; a list is an object whose members are numbers. */
    private static final class Branch {
        private final Map<String, Branch> branches = new LinkedHashMap<>();
        private final Map<String, TreeMap<Integer, Branch>> lists = new LinkedHashMap<>();
        private final Map<String, Value> leaves = new LinkedHashMap<>();
        private final List<String> order = new ArrayList<>();

        /** Whether the value found its place: not where a value stands already above or below it. */
        boolean put(List<FieldPath.Step> steps, Value value) {
            FieldPath.Step step = steps.getFirst();
            if (!order.contains(step.name())) {
                order.add(step.name());
            }
            if (steps.size() == 1) {
                return !branches.containsKey(step.name()) && !lists.containsKey(step.name()) && leaves.put(step.name(), value) == null;
            }
            if (leaves.containsKey(step.name())) {
                return false;
            }
            Branch next = step.index() >= 0
                    ? lists.computeIfAbsent(step.name(), each -> new TreeMap<>()).computeIfAbsent(step.index(), each -> new Branch())
                    : branches.computeIfAbsent(step.name(), each -> new Branch());
            return next.put(steps.subList(1, steps.size()), value);
        }

        Value.Tree tree() {
            LinkedHashMap<String, Value> members = new LinkedHashMap<>();
            for (String each : order) {
                members.put(each, leaves.containsKey(each) ? leaves.get(each) : branches.containsKey(each) ? branches.get(each).tree()
                        : new Value.Items(lists.get(each).values().stream().map(element -> (Value) element.tree()).toList()));
            }
            return new Value.Tree(members);
        }
    }

    /** One curve while its rows are collected: its settings, and points. */
    private static final class Gathered {
        private final Map<String, Cell> settings;
        private final List<Curves.Points> rows = new ArrayList<>();

        Gathered(Map<String, Cell> settings) {
            this.settings = settings;
        }

        Map<String, Value> values() {
            Map<String, Value> values = new LinkedHashMap<>();
            settings.forEach((place, cell) -> values.put(place, cell.value()));
            return values;
        }
    }

    /** The parts in the order of their first rows. */
    List<AirMover> parts(List<PartRow> rows) {
        Map<String, List<PartRow>> byId = new LinkedHashMap<>();
        rows.forEach(row -> byId.computeIfAbsent(row.id(), each -> new ArrayList<>()).add(row));
        List<AirMover> parts = new ArrayList<>();
        byId.forEach((id, of) -> parts.add(part(id, of)));
        missing.forEach((what, ids) -> problems.add(Problem.caution(name, what.equals(CURVES)
                ? (ids.size() == 1 ? "part " + TableReader.some(ids) + " has no curve; it is" : ids.size() + " parts have no curve: "
                        + TableReader.some(ids) + "; they are") + " kept, but cannot be judged"
                : (ids.size() == 1 ? "part " + TableReader.some(ids) : ids.size() + " parts, " + TableReader.some(ids)) + ": " + what)));
        return parts;
    }

    private AirMover part(String id, List<PartRow> rows) {
        isBad = rows.stream().anyMatch(row -> !row.bad().isEmpty());
        Map<String, Cell> single = new LinkedHashMap<>();
        Map<Integer, List<Gathered>> curves = new TreeMap<>();
        Map<Integer, Map<String, Cell>> current = new TreeMap<>();
        for (PartRow row : rows) {
            Map<Integer, List<Cell>> ofCurves = new TreeMap<>();
            for (Cell cell : row.cells()) {
                if (cell.path().first().name().equals(CURVES) && cell.path().first().index() >= 0) {
                    ofCurves.computeIfAbsent(cell.path().first().index(), each -> new ArrayList<>()).add(cell);
                } else {
                    single(id, cell, single);
                }
            }
            ofCurves.forEach((index, cells) -> curve(index, cells, row, curves.computeIfAbsent(index, each -> new ArrayList<>()),
                    current.computeIfAbsent(index, each -> new LinkedHashMap<>())));
        }
        for (Cell constant : constants) {
            if (!constant.path().first().name().equals(CURVES)) {
                single.putIfAbsent(constant.path().key(), constant);
            }
        }
        Map<String, String> places = new LinkedHashMap<>();
        Branch part = new Branch();
        single.values().forEach(cell -> put(part, cell.path(), cell, places));
        int number = 0;
        for (List<Gathered> each : curves.values()) {
            for (Gathered curve : each) {
                int position = number++;
                curve.settings.values().forEach(cell -> put(part, at(cell.path(), position), cell, places));
                if (!curve.rows.isEmpty()) {
                    curve(curve, position, part, places);
                }
            }
        }
        return read(id, part.tree(), rows.getFirst().line(), places);
    }

    private void curve(Gathered curve, int position, Branch part, Map<String, String> places) {
        List<Problem> found = new ArrayList<>();
        Value.Tree tree = Curves.tree(curve.rows, found);
        problems.addAll(found);
        if (found.stream().anyMatch(Problem::isError)) {
            isBad = true;
            return;
        }
        tree.members().forEach((axis, value) -> {
            FieldPath path = new FieldPath(List.of(new FieldPath.Step(CURVES, position, false), FieldPath.Step.of(axis)));
            places.put(path.place(), curve.rows.getFirst().place().apply(axis));
            part.put(path.steps(), value);
        });
    }

    private static FieldPath at(FieldPath path, int position) {
        List<FieldPath.Step> steps = new ArrayList<>(path.steps());
        steps.set(0, steps.getFirst().at(position));
        return new FieldPath(steps);
    }

    private void put(Branch part, FieldPath path, Cell cell, Map<String, String> places) {
        places.put(path.place(), cell.place());
        if (!part.put(path.steps(), cell.value())) {
            isBad = true;
            problems.add(Problem.error(cell.place(), "another column stands for the whole or a part of " + path.shown()
                    + "; expected one of the two only"));
        }
    }

    private void single(String id, Cell cell, Map<String, Cell> single) {
        Cell before = single.putIfAbsent(cell.path().key(), cell);
        if (before != null && !before.value().equals(cell.value())) {
            problems.add(Problem.error(cell.place(), FormReader.describe(cell.value()) + " is not "
                    + FormReader.describe(before.value()) + ", as in " + line(before.place()) + "; expected the same in all rows of part "
                    + FormReader.describe(new Value.Text(id))));
        }
    }

    private String line(String place) {
        String rest = place.startsWith(name + ", ") ? place.substring(name.length() + 2) : place;
        return rest.contains(",") ? rest.substring(0, rest.indexOf(',')) : rest;
    }

    private void curve(int index, List<Cell> cells, PartRow row, List<Gathered> curves, Map<String, Cell> current) {
        Map<String, Cell> axes = new LinkedHashMap<>();
        for (Cell cell : cells) {
            if (cell.path().steps().size() == 2 && Curves.AXES.contains(cell.path().last().name()) && cell.list().isPresent()) {
                axes.put(cell.path().last().name(), cell);
            } else {
                current.put(cell.path().key(), cell);
            }
        }
        if (index == 0) {
            constants.stream().filter(constant -> constant.path().first().name().equals(CURVES) && constant.path().first().index() >= 0)
                    .forEach(constant -> current.putIfAbsent(constant.path().key(), constant));
        }
        Gathered open = new Gathered(new LinkedHashMap<>(current));
        Gathered curve = curves.stream().filter(each -> each.values().equals(open.values())).findFirst().orElse(null);
        if (curve == null) {
            // settings that were stated above the points belong to these
            if (!curves.isEmpty() && curves.getLast().rows.isEmpty()) {
                curves.removeLast();
            }
            curves.add(open);
            curve = open;
        }
        FieldPath list = new FieldPath(List.of(new FieldPath.Step(CURVES, index, false)));
        if (!axes.isEmpty() && Curves.AXES.stream().noneMatch(axis -> row.bad().contains(list.with(FieldPath.Step.of(axis)).key()))) {
            int before = curve.rows.size();
            points(axes, row, curve);
            isBad |= curve.rows.size() == before;
        }
    }

    private void points(Map<String, Cell> axes, PartRow row, Gathered curve) {
        for (String axis : List.of("flow", "pressure")) {
            if (!axes.containsKey(axis)) {
                Cell other = axes.values().iterator().next();
                problems.add(Problem.error(other.place(), "is " + FormReader.describe(other.value()) + ", a " + other.path().last().name()
                        + " without a " + axis + "; expected both in the row"));
                return;
            }
        }
        int size = axes.get("flow").list().orElseThrow().size();
        for (Cell cell : axes.values()) {
            int own = cell.list().orElseThrow().size();
            if (own != size) {
                problems.add(Problem.error(cell.place(), "has " + own + (own == 1 ? " number" : " numbers") + "; expected " + size
                        + ", as many as flows in the row"));
                return;
            }
        }
        Map<String, Numbers.Written> numbers = new LinkedHashMap<>();
        axes.forEach((axis, cell) -> numbers.put(axis, cell.list().orElseThrow()));
        UnaryOperator<String> place = axis -> axes.containsKey(axis) ? axes.get(axis).place()
                : TableText.line(name, row.line()) + ", " + axis;
        curve.rows.add(new Curves.Points(place, row.line(), numbers));
    }

    private AirMover read(String id, Value.Tree tree, int line, Map<String, String> places) {
        List<Problem> found = new ArrayList<>();
        AirMover part = AirMover.from(FormReader.read(AirMover.FORM, tree, "", found));
        found.addAll(part.datasheet().check(""));
        fields.sections().forEach((section, type) -> part.section(section).ifPresent(written -> {
            String place = Noun.SECTIONS + "." + section;
            try {
                Optional<Values> values = Sections.read(type, written, place, found);
                values.ifPresent(each -> found.addAll(type.check(each, place)));
            } catch (RuntimeException | LinkageError e) { // a stranger's mistake
                found.add(Problem.caution(place, "could not be checked: what knows this section failed"));
            }
        }));
        for (Problem problem : found) {
            if (problem.isMissing() && !problem.place().equals("id")) {
                if (!isBad) {
                    missing.computeIfAbsent(problem.place().equals(CURVES) ? CURVES : problem.place() + " " + problem.message(),
                            each -> new ArrayList<>()).add(id);
                }
            } else {
                problems.add(new Problem(problem.severity(), place(problem.place(), id, line, places), problem.message(), problem.isMissing()));
            }
        }
        return part;
    }

    /** Where in the table a value of a part came from. */
    private String place(String place, String id, int line, Map<String, String> places) {
        String at = place;
        while (!at.isEmpty()) {
            if (places.containsKey(at)) {
                return places.get(at);
            }
            int cut = Math.max(at.lastIndexOf('.'), at.lastIndexOf('['));
            at = cut < 0 ? "" : at.substring(0, cut);
        }
        return TableText.line(name, line) + ", part " + FormReader.describe(new Value.Text(id)) + (place.isEmpty() ? "" : ", " + place);
    }
}
