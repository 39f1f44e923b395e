package tramontane.selection.desktop.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import tramontane.analysis.Amount;
import tramontane.analysis.Better;
import tramontane.analysis.Table;
import tramontane.catalogue.Catalogue;
import tramontane.catalogue.CatalogueField;
import tramontane.physics.units.UnitSystem;

/**
 * Candidates side by side: what they come to and what their data sheets say; what differs first, and of
 * that what one of them is best in.
 *
 * @param heads one per candidate
 * @param lines what is compared
 */
record Comparison(List<String> heads, List<Line> lines) {

    static final int LEAST = 2;
    static final int MOST = 6;
    static final Comparison NONE = new Comparison(List.of(), List.of());

    /** Facts of a data sheet that have a better way whatever the design. */
    private static final Map<String, Better> BETTER = Map.of("price", Better.LOWER, "mass", Better.LOWER, "bestEfficiency", Better.HIGHER);
    private static final Set<String> SAID_ALREADY = Set.of("id", "maker");

    Comparison {
        heads = List.copyOf(heads);
        lines = List.copyOf(lines);
    }

    /**
     * One thing that is compared.
     *
     * @param label   what
     * @param cells   one per candidate
     * @param best    which of them are best, by their place; none where all are alike or neither way is better
     * @param differs whether they read differently
     * @param fact    whether it is from the data sheet
     */
    record Line(String label, List<Table.Cell> cells, Set<Integer> best, boolean differs, boolean fact) {
        Line {
            cells = List.copyOf(cells);
            best = Set.copyOf(best);
        }

        /** What is read of one candidate; the best is marked by a word. */
        String text(int candidate, UnitSystem units) {
            String text = Row.text(cells.get(candidate), units);
            return best.contains(candidate) ? text + "  best" : text;
        }
    }

    /**
     * Sets rows side by side.
     *
     * @param rows      two to six; others are left out
     * @param columns   the columns of their table
     * @param catalogue what their data sheets say
     * @param units     in which they are read: what reads alike does not differ
     */
    static Comparison of(List<Row> rows, List<Column> columns, Optional<Catalogue> catalogue, UnitSystem units) {
        if (rows.size() < LEAST) {
            return NONE;
        }
        List<Row> some = rows.subList(0, Math.min(MOST, rows.size()));
        List<Line> lines = new ArrayList<>();
        for (Column column : columns) {
            if (!column.id().equals(Listing.PART)) {
                line(column.label(), some.stream().map(row -> row.cell(column.id())).toList(), column.better(), false, units).ifPresent(lines::add);
            }
        }
        catalogue.ifPresent(parts -> {
            for (CatalogueField field : parts.fields()) {
                if (!SAID_ALREADY.contains(field.path())) {
                    line(field.label(), some.stream().map(row -> cell(parts, row.key().part(), field)).toList(), BETTER.getOrDefault(field.path(), Better.NEITHER), true, units)
                            .ifPresent(lines::add);
                }
            }
        });
        List<Line> ordered = lines.stream().sorted(Comparator.comparing((Line line) -> !line.differs()).thenComparing(line -> line.best().isEmpty())).toList();
        return new Comparison(heads(some), ordered);
    }

    /** The parts; with how they are arranged where one part is there twice. */
    private static List<String> heads(List<Row> rows) {
        return rows.stream().map(row -> rows.stream().filter(other -> other.key().part().equals(row.key().part())).count() > 1 ? row.key().words()
                : row.key().part()).toList();
    }

    private static Table.Cell cell(Catalogue parts, String id, CatalogueField field) {
        return parts.index(id).stream().mapToObj(index -> parts.cell(index, field)).findFirst().orElse(new Table.Empty());
    }

    private static Optional<Line> line(String label, List<Table.Cell> cells, Better better, boolean fact, UnitSystem units) {
        if (cells.stream().allMatch(Table.Empty.class::isInstance)) {
            return Optional.empty();
        }
        List<String> texts = cells.stream().map(cell -> Row.text(cell, units)).toList();
        boolean differs = new LinkedHashSet<>(texts).size() > 1;
        return Optional.of(new Line(label, cells, differs ? best(cells, texts, better) : Set.of(), differs, fact));
    }

    /** Those with the best value, and those that read the same. */
    private static Set<Integer> best(List<Table.Cell> cells, List<String> texts, Better better) {
        if (better == Better.NEITHER || cells.stream().filter(Amount.class::isInstance).count() < LEAST
                || cells.stream().filter(Amount.class::isInstance).map(cell -> ((Amount) cell).quantity()).distinct().count() > 1) {
            return Set.of();
        }
        int least = -1;
        for (int i = 0; i < cells.size(); i++) {
            if (cells.get(i) instanceof Amount amount && (least < 0 || Trade.badness(better, amount.si()) < Trade.badness(better, ((Amount) cells.get(least)).si()))) {
                least = i;
            }
        }
        Set<Integer> best = new TreeSet<>();
        for (int i = 0; i < cells.size(); i++) {
            if (texts.get(i).equals(texts.get(least))) {
                best.add(i);
            }
        }
        return best;
    }
}
