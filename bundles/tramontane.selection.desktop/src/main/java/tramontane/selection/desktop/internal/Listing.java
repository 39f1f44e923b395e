package tramontane.selection.desktop.internal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import tramontane.analysis.Amount;
import tramontane.analysis.Better;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Sentence;
import tramontane.analysis.Table;
import tramontane.catalogue.Catalogue;
import tramontane.model.Design;
import tramontane.model.Requirement;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.selection.Candidate;
import tramontane.selection.Criterion;
import tramontane.selection.Merit;
import tramontane.selection.Passed;
import tramontane.selection.Rejected;
import tramontane.selection.Selection;
import tramontane.selection.Spare;
import tramontane.selection.Task;

/**
 * The table of candidates.
 *
 * @param columns its columns
 * @param rows    those that are shown, in order
 * @param all     how many there would be if nothing were looked for
 * @param problem what is wrong with what is looked for
 * @param stale   whether the design has changed since in something that matters for it
 */
record Listing(List<Column> columns, List<Row> rows, int all, Optional<String> problem, boolean stale) {

    static final String RANK = "rank";
    static final String PART = "part";
    static final String MAKER = "maker";
    static final String ARRANGEMENT = "arrangement";
    static final String SETTING = "setting";
    static final String SPEED = "speed";
    static final String MERIT = "merit";
    static final String TIGHTEST = "tightest";
    static final String SPARE = "spare";
    static final String FRONT = "front";
    static final String REASON = "reason";

    static final Order BY_RANK = new Order(RANK, false);
    static final Listing EMPTY = new Listing(List.of(), List.of(), 0, Optional.empty(), false);

    /** The figure that the criterion "power" is already. */
    private static final String POWER_FIGURE = "airflow.bank.power";
    private static final String BANK_FIGURES = "airflow.bank.";

    Listing {
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
    }

    /**
     * The table of a choice.
     *
     * @param choosing  how the choice stands
     * @param design    the design as it is now
     * @param catalogue what parts say
     * @param order     how rows are sorted
     * @param find      what is looked for, words or a filter
     * @param leftOut   whether what was left out is shown, too
     * @param units     in which reasons are said
     */
    static Listing of(Choosing choosing, Design design, Optional<Catalogue> catalogue, Order order, String find, boolean leftOut, UnitSystem units) {
        if (choosing.task().isEmpty()) {
            return EMPTY;
        }
        List<Candidate> ranked = ranked(choosing);
        List<Candidate> beside = choosing.selection().map(Selection::front).orElse(List.of()).stream()
                .filter(candidate -> ranked.stream().noneMatch(other -> Key.of(other).equals(Key.of(candidate)))).toList();
        List<Candidate> candidates = new ArrayList<>(ranked);
        candidates.addAll(beside);
        String bank = choosing.task().get().bank();
        List<Criterion> criteria = criteria(choosing, candidates);
        Map<String, Set<String>> required = required(candidates);
        Map<String, FigureKind> figures = figures(candidates, bank, criteria, required);
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < candidates.size(); i++) {
            Optional<Integer> rank = i < ranked.size() ? Optional.of(i + 1) : Optional.empty();
            rows.add(row(candidates.get(i), rank, ranked.isEmpty() ? Optional.empty() : Optional.of(ranked.getFirst()), criteria, figures, bank, required));
        }
        if (leftOut) {
            Set<Key> known = new HashSet<>();
            rows.forEach(row -> known.add(row.key()));
            choosing.selection().ifPresent(selection -> {
                // what lacks least is looked at for what would have to change, so that says more
                selection.nearest().stream().filter(each -> known.add(Key.of(each))).forEach(each -> rows.add(row(each, catalogue, units)));
                selection.passed().stream().filter(each -> known.add(Key.of(each))).forEach(each -> rows.add(row(each, catalogue)));
                selection.rejected().stream().filter(each -> known.add(Key.of(each))).forEach(each -> rows.add(row(each, catalogue, units)));
            });
        }
        List<Column> columns = columns(candidates, criteria, figures, required, leftOut);
        Finder finder = Finder.of(find, catalogue);
        Order by = columns.stream().anyMatch(column -> column.id().equals(order.column())) ? order : BY_RANK;
        List<Row> shown = by.sorted(rows.stream().filter(row -> finder.passes().test(row.key().part(), row.words())).toList(),
                row -> row.cell(by.column()));
        Design chosenFor = choosing.task().get().design();
        boolean stale = chosenFor != design && !Putting.apart(chosenFor, bank).equals(Putting.apart(design, bank));
        return new Listing(columns, shown, rows.size(), finder.problem(), stale);
    }

    /** Those that are in the list so far, best first. */
    static List<Candidate> ranked(Choosing choosing) {
        if (choosing.selection().isPresent()) {
            return choosing.selection().get().ranked();
        }
        int listed = choosing.task().map(Task::listed).orElse(0);
        return choosing.found().subList(0, Math.min(listed, choosing.found().size()));
    }

    Optional<Row> row(Key key) {
        return rows.stream().filter(row -> row.key().equals(key)).findFirst();
    }

    /** The criteria that are known of any: those of the answer, and before there is one those that go by their own names. */
    static List<Criterion> criteria(Choosing choosing, List<Candidate> candidates) {
        List<Criterion> all = choosing.selection().map(Selection::criteria).filter(list -> !list.isEmpty()).orElse(PLAIN);
        return all.stream().filter(criterion -> candidates.stream().anyMatch(candidate -> candidate.values().containsKey(criterion.id()))).toList();
    }

    private static final List<Criterion> PLAIN = List.of(new Criterion(Criterion.POWER, "power", QuantityKind.POWER, Better.LOWER),
            new Criterion(Criterion.NOISE, "noise", QuantityKind.LEVEL, Better.LOWER), new Criterion(Criterion.LIFE, "life", QuantityKind.TIME, Better.HIGHER),
            new Criterion(Criterion.COST, "price", QuantityKind.NUMBER, Better.LOWER), new Criterion(Criterion.SIZE, "size", QuantityKind.VOLUME, Better.LOWER),
            new Criterion(Criterion.MASS, "mass", QuantityKind.MASS, Better.LOWER));

    /** Figures that were computed of candidates, have a better way, and are no criterion already. */
    private static Map<String, FigureKind> figures(List<Candidate> candidates, String bank, List<Criterion> criteria, Map<String, Set<String>> required) {
        Map<String, FigureKind> kinds = new LinkedHashMap<>();
        candidates.forEach(candidate -> candidate.evaluation().map(Evaluation::figures).orElse(List.of()).stream()
                .filter(figure -> counts(figure, bank, required) && figure.kind().better() != Better.NEITHER).forEach(figure -> kinds.putIfAbsent(figure.kind().id(), figure.kind())));
        criteria.forEach(criterion -> kinds.remove(switch (criterion.id()) {
            case Criterion.POWER -> POWER_FIGURE;
            case Criterion.NOISE -> Criterion.NOISE_FIGURE;
            case Criterion.LIFE -> Criterion.LIFE_FIGURE;
            default -> criterion.id();
        }));
        return kinds;
    }

    /**
     * Whether a figure says something of a candidate: at the places that requirements name, else of the bank, or of the design as a
     * whole. The least flow of all passages, of which one is a gap, says nothing.
     */
    private static boolean counts(Figure figure, String bank, Map<String, Set<String>> required) {
        Set<String> places = required.get(figure.kind().id());
        return places != null ? places.contains(Requirement.WORST) || places.contains(figure.place())
                : figure.place().equals(bank) || figure.place().isEmpty();
    }

    /** Where figures are required, by id. */
    private static Map<String, Set<String>> required(List<Candidate> candidates) {
        Map<String, Set<String>> places = new LinkedHashMap<>();
        candidates.forEach(candidate -> candidate.verdicts().forEach(verdict -> places.computeIfAbsent(verdict.requirement().figure(), id -> new LinkedHashSet<>())
                .add(verdict.requirement().place())));
        return places;
    }

    private static Row row(Candidate candidate, Optional<Integer> rank, Optional<Candidate> first, List<Criterion> criteria,
            Map<String, FigureKind> figures, String bank, Map<String, Set<String>> required) {
        Map<String, Table.Cell> cells = new LinkedHashMap<>();
        rank.ifPresent(place -> cells.put(RANK, new Amount(place, QuantityKind.COUNT)));
        cells.put(PART, new Table.Words(candidate.part().id()));
        words(cells, MAKER, candidate.part().maker());
        cells.put(ARRANGEMENT, new Table.Words(candidate.arrangement().words()));
        cells.put(SETTING, candidate.adjustable() ? new Amount(candidate.setting(), QuantityKind.FRACTION) : new Table.Words("fixed"));
        cells.put(SPEED, new Amount(candidate.speed(), QuantityKind.ROTATIONAL_SPEED));
        OptionalLong merit = first.isPresent() ? Merit.of(first.get(), candidate) : OptionalLong.empty();
        merit.ifPresent(number -> cells.put(MERIT, new Amount(number, QuantityKind.COUNT)));
        criteria.forEach(criterion -> amount(candidate.values().get(criterion.id()), criterion.quantity())
                .ifPresent(amount -> cells.put(criterion.id(), amount)));
        Map<String, Double> worst = new HashMap<>();
        candidate.evaluation().map(Evaluation::figures).orElse(List.of()).stream().filter(figure -> counts(figure, bank, required)).forEach(figure ->
                worst.merge(figure.kind().id(), figure.value(), figure.kind().better() == Better.HIGHER ? Math::min : Math::max));
        figures.forEach((id, kind) -> amount(worst.get(id), kind.quantity()).ifPresent(amount -> cells.put(id, amount)));
        candidate.tightest().ifPresent(verdict -> {
            cells.put(TIGHTEST, new Table.Words(Spare.about(verdict)));
            cells.put(SPARE, Spare.of(verdict));
        });
        words(cells, FRONT, candidate.front() ? "Pareto set" : "");
        return new Row(Key.of(candidate), rank, Optional.of(candidate), Optional.empty(), Optional.empty(), cells);
    }

    private static Row row(Rejected rejected, Optional<Catalogue> catalogue, UnitSystem units) {
        Map<String, Table.Cell> cells = leftOut(Key.of(rejected), catalogue);
        words(cells, REASON, Sentence.of(rejected.reason(), rejected.remedy().isEmpty() ? "" : "; ", rejected.remedy()).in(units));
        return new Row(Key.of(rejected), Optional.empty(), Optional.empty(), Optional.of(rejected), Optional.empty(), cells);
    }

    private static Row row(Passed passed, Optional<Catalogue> catalogue) {
        Map<String, Table.Cell> cells = leftOut(Key.of(passed), catalogue);
        words(cells, REASON, "may do; comes behind all that are listed");
        return new Row(Key.of(passed), Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(passed), cells);
    }

    private static Map<String, Table.Cell> leftOut(Key key, Optional<Catalogue> catalogue) {
        Map<String, Table.Cell> cells = new LinkedHashMap<>();
        cells.put(PART, new Table.Words(key.part()));
        catalogue.ifPresent(parts -> parts.index(key.part()).ifPresent(index -> parts.text(index, "maker").ifPresent(maker -> words(cells, MAKER, maker))));
        key.arrangement().ifPresent(arrangement -> cells.put(ARRANGEMENT, new Table.Words(arrangement.words())));
        return cells;
    }

    private static void words(Map<String, Table.Cell> cells, String column, String text) {
        if (!text.isEmpty()) {
            cells.put(column, new Table.Words(text));
        }
    }

    private static Optional<Amount> amount(Double value, QuantityKind kind) {
        return value == null || !Double.isFinite(value) ? Optional.empty() : Optional.of(new Amount(value, kind));
    }

    private static List<Column> columns(List<Candidate> candidates, List<Criterion> criteria, Map<String, FigureKind> figures, Map<String, Set<String>> required,
            boolean leftOut) {
        List<Column> columns = new ArrayList<>(List.of(
                Column.amounts(RANK, "rank", QuantityKind.COUNT, Better.NEITHER, "Place by the weights; nothing for what is not in the list."),
                Column.words(PART, "part", "The part's id."),
                Column.words(ARRANGEMENT, "arrangement", "How many movers, and how they stand."),
                new Column(SETTING, "setting", true, Optional.of(QuantityKind.FRACTION), Better.NEITHER, "The lowest speed setting with which every requirement holds in every condition."),
                Column.amounts(SPEED, "speed", QuantityKind.ROTATIONAL_SPEED, Better.NEITHER, "The largest speed of its movers in any case."),
                Column.amounts(MERIT, "merit", QuantityKind.COUNT, Better.NEITHER, Merit.MEANING),
                Column.words(FRONT, "trade-off", "Pareto set: no other is as good in everything and better in something."),
                Column.words(MAKER, "maker", "Who makes it.")));
        if (leftOut) {
            columns.add(3, Column.words(REASON, "left out because", "Why it is not in the list."));
        }
        String currency = candidates.stream().filter(candidate -> candidate.values().containsKey(Criterion.COST))
                .flatMap(candidate -> candidate.part().datasheet().currency().stream()).findFirst().map(code -> " [" + code + "]").orElse("");
        criteria.forEach(criterion -> columns.add(Column.amounts(criterion.id(), criterion.label() + (criterion.id().equals(Criterion.COST) ? currency : ""),
                criterion.quantity(), criterion.better(), help(criterion))));
        figures.values().stream().filter(kind -> required.containsKey(kind.id())).map(kind -> column(kind, required.get(kind.id()))).forEach(columns::add);
        columns.add(Column.words(TIGHTEST, "tightest requirement", "The requirement that holds with the least to spare."));
        columns.add(new Column(SPARE, "to spare", true, spare(candidates), Better.HIGHER, "What the tightest requirement has to spare; of a temperature in K, else over its limit."));
        figures.values().stream().filter(kind -> !required.containsKey(kind.id())).map(kind -> column(kind, Set.of())).forEach(columns::add);
        return columns;
    }

    private static Column column(FigureKind kind, Set<String> places) {
        String where = String.join(", ", places);
        return Column.amounts(kind.id(), kind.label() + (places.size() == 1 && !places.contains(Requirement.WORST) && !where.isEmpty() ? ", " + where : ""), kind.quantity(),
                kind.better(), kind.help() + " The worst of all conditions" + (places.isEmpty() ? "." : ", and of all places that are required."));
    }

    /** What margins measure, where all measure the same. */
    private static Optional<QuantityKind> spare(List<Candidate> candidates) {
        List<QuantityKind> kinds = candidates.stream().flatMap(candidate -> candidate.tightest().stream()).map(verdict -> Spare.of(verdict).quantity()).distinct().toList();
        return kinds.size() == 1 ? Optional.of(kinds.getFirst()) : Optional.empty();
    }

    private static String help(Criterion criterion) {
        return switch (criterion.id()) {
            case Criterion.POWER -> "Electrical input of the bank, its largest in any case.";
            case Criterion.COST -> "Price of all movers of the bank.";
            case Criterion.SIZE -> "Volume of the frames of all movers of the bank.";
            case Criterion.MASS -> "Mass of all movers of the bank.";
            default -> criterion.label() + (criterion.about().isEmpty() ? ", the worst of all places and conditions." : ": " + criterion.about() + ".");
        };
    }
}
