package tramontane.catalogue.internal.tables;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import tramontane.catalogue.internal.tables.Numbers.Written;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Value;

/** Puts points together to a curve. */
final class Curves {

    /** What has one number at each point, in the order of the file. */
    static final List<String> AXES = List.of("flow", "pressure", "power");

    private Curves() {
    }

    /**
     * Points from one row.
     *
     * @param place where one of {@link #AXES} stands, for messages
     * @param line  the line they stand in
     * @param axes  numbers by axis, all of one length
     */
    record Points(UnaryOperator<String> place, int line, Map<String, Written> axes) {
        Points {
            axes = new LinkedHashMap<>(axes);
        }

        int size() {
            return axes.values().stream().mapToInt(Written::size).max().orElse(0);
        }
    }

    private record Point(Points row, int number) {

        double flow() {
            return row.axes().get("flow").si()[number];
        }

        String shown() {
            return row.axes().get("flow").at(number);
        }
    }

    /**
     * The members of a curve.
     *
     * @param rows     points in the order of the table; each row has a flow and a pressure
     * @param problems receives flows that do not rise and a power that is not everywhere
     */
    static Value.Tree tree(List<Points> rows, List<Problem> problems) {
        List<Point> points = new ArrayList<>();
        rows.forEach(row -> {
            for (int i = 0; i < row.size(); i++) {
                points.add(new Point(row, i));
            }
        });
        Optional<Points> with = rows.stream().filter(row -> row.axes().containsKey("power")).findFirst();
        rows.stream().filter(row -> with.isPresent() && !row.axes().containsKey("power")).findFirst().ifPresent(without ->
                problems.add(Problem.error(without.place().apply("power"), "is empty; expected a power at every point of the curve, as in line "
                        + with.get().line() + ", or at none")));
        if (points.size() == 1) {
            problems.add(Problem.error(points.getFirst().row().place().apply("flow"), FormReader.describe(new Value.Text(
                    points.getFirst().shown())) + " is the only point of its curve; expected at least two"));
        }
        boolean falls = points.size() > 1;
        for (int i = 1; i < points.size(); i++) {
            falls &= points.get(i).flow() < points.get(i - 1).flow();
        }
        if (falls) {
            problems.add(Problem.caution(points.getFirst().row().place().apply("flow"),
                    "the flows fall from " + points.getFirst().shown() + " to " + points.getLast().shown()
                            + "; the curve was turned round"));
        }
        for (int i = 1; i < points.size() && !falls; i++) {
            Point point = points.get(i);
            Point before = points.get(i - 1);
            if (point.flow() <= before.flow()) {
                problems.add(Problem.error(point.row().place().apply("flow"), FormReader.describe(new Value.Text(point.shown()))
                        + (point.flow() == before.flow() ? " repeats the flow before it" : " is not above the flow before it, "
                                + before.shown()) + "; expected each flow larger than the one before, or all of them falling"));
            }
        }
        List<Point> rising = falls ? points.reversed() : points;
        Value.Tree curve = Value.Tree.EMPTY;
        for (String axis : AXES) {
            if (rows.stream().allMatch(row -> row.axes().containsKey(axis)) && !rows.isEmpty()) {
                curve = curve.with(axis, axis(axis, rising));
            }
        }
        return curve;
    }

    /** One text of numbers where all have one unit, else a list. */
    private static Value axis(String axis, List<Point> points) {
        List<String> numbers = new ArrayList<>();
        List<Value> values = new ArrayList<>();
        String unit = points.getFirst().row().axes().get(axis).unit();
        boolean same = true;
        for (Point point : points) {
            Written written = point.row().axes().get(axis);
            same &= written.unit().equals(unit);
            numbers.add(written.numbers().get(point.number()));
            values.add(new Value.Text(written.at(point.number())));
        }
        return same ? new Value.Text(String.join(" ", numbers) + " " + unit) : new Value.Items(values);
    }
}
