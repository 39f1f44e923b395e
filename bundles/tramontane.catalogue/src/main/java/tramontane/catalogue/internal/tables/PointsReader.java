package tramontane.catalogue.internal.tables;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tramontane.catalogue.internal.tables.Numbers.LinedText;
import tramontane.catalogue.internal.tables.Numbers.Written;
import tramontane.model.AirMover;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.Units;

/** Reads points as they are pasted from a data sheet or a spreadsheet: flow, pressure and perhaps power in each line. */
public final class PointsReader {

    private static final Map<String, QuantityKind> KINDS = Map.of("flow", QuantityKind.FLOW, "pressure", QuantityKind.PRESSURE,
            "power", QuantityKind.POWER);

    /** No line of three numbers is longer. */
    private static final int LONGEST_LINE = 1000;

    private static final Pattern IN_BRACKETS = Pattern.compile("[\\[(]([^\\[\\]()]*)[\\])]");

    private final String name;
    private final Values settings;
    private final List<Problem> problems = new ArrayList<>();
    private final Set<String> unitless = new HashSet<>();

    private PointsReader(String name, Values settings) {
        this.name = name;
        this.settings = settings;
    }

    /** What was read: a part with one curve, without errors, or nothing. */
    public record Read(Optional<AirMover> part, List<Problem> problems) {
        public Read {
            problems = List.copyOf(problems);
        }
    }

    /** What separates the cells of all lines. */
    private enum Separator {
        /** Semicolons or tabs, so that a comma is a decimal one and a cell may have a unit of its own. */
        STRONG("\\s*;\\s*|[ \\x{a0}]*\\t\\s*"),
        /** Spaces, perhaps with a comma before them. */
        SPACE(",?[\\s\\x{a0}]+"),
        /** Commas alone. */
        COMMA(",");

        private final String pattern;

        Separator(String pattern) {
            this.pattern = pattern;
        }

        List<String> cells(String line) {
            // a mark at the end of a line separates nothing
            return List.of(line.strip().replaceFirst("\\s*[;,]$", "").split(pattern, -1));
        }
    }

    /** What a heading says: the order of the columns and their units. */
    private record Heading(List<String> axes, Map<String, String> units) {
    }

    /**
     * Reads points.
     *
     * @param name     where the text comes from, for messages
     * @param text     the text
     * @param settings values of {@link Settings#POINTS}
     */
    public static Read read(String name, String text, Values settings) {
        PointsReader reader = new PointsReader(name, settings);
        Optional<AirMover> part = reader.part(text);
        boolean isWrong = reader.problems.stream().anyMatch(Problem::isError);
        return new Read(isWrong ? Optional.empty() : part, reader.problems);
    }

    private Optional<AirMover> part(String text) {
        List<LinedText> lines = new ArrayList<>();
        String[] all = text.split("\\R", -1);
        for (int i = 0; i < all.length; i++) {
            if (all[i].strip().length() > LONGEST_LINE) {
                problems.add(Problem.error(TableText.line(name, i + 1), "has " + all[i].strip().length()
                        + " characters; expected two or three numbers"));
                return Optional.empty();
            }
            if (!all[i].isBlank() && !all[i].strip().startsWith("#")) {
                lines.add(new LinedText(i + 1, all[i].strip()));
            }
        }
        boolean hasHeading = !lines.isEmpty() && !Numbers.begins(lines.getFirst().text());
        List<LinedText> points = hasHeading ? lines.subList(1, lines.size()) : lines;
        if (points.isEmpty()) {
            problems.add(Problem.error(name, (hasHeading ? "has a heading and no points" : "is empty")
                    + "; expected a flow and a pressure in each line"));
            return Optional.empty();
        }
        Separator separator = separator(points);
        Heading heading = hasHeading ? heading(lines.getFirst()) : new Heading(Curves.AXES, Map.of());
        Map<String, String> units = units(heading);
        Numbers numbers = Numbers.of(points.stream().flatMap(line -> separator.cells(line.text()).stream()
                .map(cell -> new LinedText(line.line(), cell))).toList(), settings.text("decimal"), separator == Separator.COMMA ? ',' : ' ');
        List<Curves.Points> read = new ArrayList<>();
        if (problems.stream().anyMatch(Problem::isError)) {
            return Optional.empty();
        }
        int size = points.stream().mapToInt(line -> separator.cells(line.text()).size()).filter(cells -> cells == 2 || cells == 3)
                .findFirst().orElse(2);
        for (LinedText line : points) {
            point(line, separator.cells(line.text()), size, heading.axes(), units, numbers).ifPresent(read::add);
        }
        if (problems.stream().anyMatch(Problem::isError)) {
            return Optional.empty();
        }
        Value.Tree curve = Value.Tree.EMPTY;
        for (String each : Settings.CONDITIONS) {
            curve = settings.ifQuantity(each).isPresent() ? curve.with(each, settings.ifQuantity(each).get().written()) : curve;
        }
        Value.Tree part = Value.Tree.EMPTY.with("id", new Value.Text(settings.text("part")));
        part = settings.text("maker").isBlank() ? part : part.with("maker", new Value.Text(settings.text("maker")));
        Value.Tree axes = Curves.tree(read, problems);
        if (problems.stream().anyMatch(Problem::isError)) {
            return Optional.empty();
        }
        List<Problem> found = new ArrayList<>();
        AirMover mover = AirMover.from(FormReader.read(AirMover.FORM, part.with("curves",
                new Value.Items(List.of(curve.with(axes)))), "", found));
        found.forEach(problem -> problems.add(new Problem(problem.severity(), name + ", " + problem.place().replace("curves[0].", ""), problem.message(),
                problem.isMissing())));
        return Optional.of(mover);
    }

    private static Separator separator(List<LinedText> points) {
        return points.stream().anyMatch(line -> line.text().indexOf(';') >= 0)
                || points.stream().allMatch(line -> line.text().indexOf('\t') >= 0) ? Separator.STRONG
                : points.stream().anyMatch(line -> line.text().matches(".*[\\s\\x{a0}].*")) ? Separator.SPACE : Separator.COMMA;
    }

    private Optional<Curves.Points> point(LinedText line, List<String> cells, int size, List<String> axes, Map<String, String> units,
            Numbers numbers) {
        String place = TableText.line(name, line.line());
        if (cells.size() < 2 || cells.size() > 3) {
            problems.add(Problem.error(place, FormReader.describe(new Value.Text(line.text())) + " has " + cells.size()
                    + (cells.size() == 1 ? " number" : " numbers") + "; expected two or three: flow, pressure and perhaps power"));
            return Optional.empty();
        }
        if (cells.size() != size) {
            problems.add(Problem.error(place, FormReader.describe(new Value.Text(line.text())) + " has " + cells.size()
                    + " numbers; expected " + size + ", as in other lines"));
            return Optional.empty();
        }
        Map<String, Written> read = new LinkedHashMap<>();
        boolean sound = true;
        for (int i = 0; i < cells.size(); i++) {
            String axis = axes.get(i);
            try {
                Written written = numbers.list(cells.get(i), KINDS.get(axis), units.getOrDefault(axis, ""));
                if (written.size() > 1) {
                    throw new BadCell(FormReader.describe(new Value.Text(cells.get(i))) + " is more than one number; expected one "
                            + axis + " between separators");
                }
                read.put(axis, written);
            } catch (BadCell e) {
                if (!e.isUnitMissing() || unitless.add(axis)) { // once is enough for a whole column
                    problems.add(Problem.error(place + ", " + axis, e.getMessage()));
                }
                sound = false;
            }
        }
        UnaryOperator<String> at = axis -> place + ", " + axis;
        return sound ? Optional.of(new Curves.Points(at, line.line(), read)) : Optional.empty();
    }

    private Map<String, String> units(Heading heading) {
        Map<String, String> units = new LinkedHashMap<>();
        for (String axis : Curves.AXES) {
            String set = settings.ifText(axis + "Unit").map(String::strip).filter(unit -> !unit.isEmpty()).orElse("");
            String headed = heading.units().getOrDefault(axis, "");
            if (!set.isEmpty() && !headed.isEmpty() && !same(set, headed, KINDS.get(axis))) {
                problems.add(Problem.error("settings, " + axis + "Unit", "is " + set + ", but the heading says " + headed
                        + "; expected one of the two only"));
            }
            String unit = !headed.isEmpty() ? headed : !set.isEmpty() ? set : settings.text(axis + "Unit");
            if (unit.isEmpty()) {
                continue;
            }
            try {
                Numbers.unit(unit, KINDS.get(axis));
                units.put(axis, unit);
            } catch (BadCell e) {
                problems.add(Problem.error("settings, " + axis + "Unit", e.getMessage()));
            }
        }
        return units;
    }

    private static boolean same(String one, String other, QuantityKind kind) {
        try {
            return Units.parse("1 " + one, kind) == Units.parse("1 " + other, kind);
        } catch (UnitException e) {
            return false;
        }
    }

    private Heading heading(LinedText line) {
        List<String> cells = cellsOf(line.text());
        List<String> axes = new ArrayList<>();
        Map<String, String> units = new LinkedHashMap<>();
        for (String cell : cells) {
            Optional<String> unit = unitIn(cell);
            Optional<String> axis = unit.flatMap(PointsReader::axisOf)
                    .or(() -> Curves.AXES.stream().filter(each -> cell.toLowerCase(Locale.ROOT).contains(each)).findFirst());
            if (axis.isPresent() && !axes.contains(axis.get())) {
                axes.add(axis.get());
                if (unit.isPresent()) {
                    headed(line.line(), axis.get(), unit.get(), units);
                }
            } else if (cells.size() > 1 && IN_BRACKETS.matcher(cell).find()) {
                problems.add(Problem.error(TableText.line(name, line.line()), FormReader.describe(new Value.Text(cell))
                        + " has no unit of a flow, a pressure or a power that is known and not given twice; expected such as flow [m³/h]"));
            }
        }
        if (axes.size() < 2) {
            // who names one column only, or none, keeps to the usual order
            axes.clear();
        }
        Curves.AXES.stream().filter(axis -> !axes.contains(axis)).forEach(axes::add);
        return new Heading(axes, units);
    }

    private void headed(int line, String axis, String unit, Map<String, String> units) {
        try {
            Numbers.unit(unit, KINDS.get(axis));
            units.put(axis, unit);
        } catch (BadCell e) {
            problems.add(Problem.error(TableText.line(name, line) + ", " + axis, e.getMessage()));
        }
    }

    private static List<String> cellsOf(String heading) {
        if (heading.indexOf(';') >= 0 || heading.indexOf('\t') >= 0) {
            return List.of(heading.split("[;\\t]"));
        }
        if (IN_BRACKETS.matcher(heading).find()) {
            return List.of(heading.split("(?<=[\\])])"));
        }
        return heading.indexOf(',') >= 0 ? List.of(heading.split(",")) : words(heading.split("[\\s\\x{a0}]+"));
    }

    /** Words up to a unit are the heading of one column: "flow m³/h", "static pressure mm H2O". */
    private static List<String> words(String[] words) {
        List<String> cells = new ArrayList<>();
        List<String> open = new ArrayList<>();
        for (String word : words) {
            open.add(word);
            String cell = String.join(" ", open);
            if (unitIn(cell).isPresent()) {
                cells.add(cell);
                open.clear();
            }
        }
        cells.addAll(open);
        return cells;
    }

    /** The unit in a cell of a heading: in brackets, else the words at its end that are one. */
    private static Optional<String> unitIn(String cell) {
        Matcher found = IN_BRACKETS.matcher(cell);
        if (found.find()) {
            return Optional.of(found.group(1).strip());
        }
        String[] words = cell.strip().split("\\s+");
        for (int from = 0; from < words.length; from++) {
            String end = String.join(" ", Arrays.asList(words).subList(from, words.length));
            if (axisOf(end).isPresent()) {
                return Optional.of(end);
            }
        }
        return Optional.empty();
    }

    private static Optional<String> axisOf(String unit) {
        return Curves.AXES.stream().filter(axis -> {
            try {
                Numbers.unit(unit, KINDS.get(axis));
                return true;
            } catch (BadCell e) {
                return false;
            }
        }).findFirst();
    }

}
