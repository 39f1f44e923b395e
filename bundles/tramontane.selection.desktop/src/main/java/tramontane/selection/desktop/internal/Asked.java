package tramontane.selection.desktop.internal;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tramontane.catalogue.Catalogue;
import tramontane.catalogue.PartFilter;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.Units;
import tramontane.selection.Criterion;
import tramontane.selection.Task;
import tramontane.selection.Wish;
import tramontane.selection.WishSection;

/**
 * What is asked of a choice, as it is typed.
 *
 * @param bank    the bank that a part is chosen for
 * @param texts   what stands in the fields, by their names; empty ones may be missing
 * @param ended   whether parts count that are not to be had any more
 * @param certain whether all must hold at the edge of the bounds, too
 */
record Asked(String bank, Map<String, String> texts, boolean ended, boolean certain) {

    static final String WHERE = "where";
    static final String WIDTH = "openingWidth";
    static final String HEIGHT = "openingHeight";
    static final String DEPTH = "openingDepth";
    static final String SIDE_BY_SIDE = "sideBySide";
    static final String IN_SERIES = "inSeries";
    static final String MOVERS = "movers";
    static final String LOWEST = "lowestSpeed";
    static final String LISTED = "listed";

    static final Asked NOTHING = new Asked("", Map.of(), false, false);

    private static final String WEIGHT = "weight ";
    private static final String NOT_ENDED = "not status = ended";
    private static final int MOST = 100;
    private static final int MOST_LISTED = 1000;
    private static final int LISTED_AS_A_RULE = 20;
    private static final int MISSES = 5;

    Asked {
        texts = Collections.unmodifiableMap(new LinkedHashMap<>(texts));
    }

    /** The field of a criterion's weight. */
    static String weight(String criterion) {
        return WEIGHT + criterion;
    }

    /** What a design says of one of its banks. */
    static Asked of(Design design, String bank) {
        Wish wish = WishSection.of(design, bank);
        Map<String, String> texts = new LinkedHashMap<>();
        wish.width().ifPresent(quantity -> texts.put(WIDTH, written(quantity, "m")));
        wish.height().ifPresent(quantity -> texts.put(HEIGHT, written(quantity, "m")));
        wish.depth().ifPresent(quantity -> texts.put(DEPTH, written(quantity, "m")));
        wish.columns().ifPresent(number -> texts.put(SIDE_BY_SIDE, number.toString()));
        wish.series().ifPresent(number -> texts.put(IN_SERIES, number.toString()));
        wish.movers().ifPresent(number -> texts.put(MOVERS, number.toString()));
        wish.lowest().filter(quantity -> quantity.si() != Task.LOWEST).ifPresent(quantity -> texts.put(LOWEST, written(quantity, "")));
        wish.where().ifPresent(where -> texts.put(WHERE, where));
        wish.weighed().forEach((criterion, weight) -> texts.put(weight(criterion), number(weight)));
        return new Asked(bank, texts, false, false);
    }

    private static String written(Quantity quantity, String unit) {
        return quantity.written() instanceof Value.Text(String text) ? text : number(quantity.si()) + (unit.isEmpty() ? "" : " " + unit);
    }

    static String number(double value) {
        return value == Math.rint(value) && Math.abs(value) < 1e9 ? Long.toString((long) value) : Double.toString(value);
    }

    String text(String field) {
        return texts.getOrDefault(field, "");
    }

    /** The same with another text in a field. */
    Asked with(String field, String text) {
        Map<String, String> changed = new LinkedHashMap<>(texts);
        changed.put(field, text);
        return new Asked(bank, changed, ended, certain);
    }

    /** The same without a field. */
    Asked without(String field) {
        Map<String, String> changed = new LinkedHashMap<>(texts);
        changed.remove(field);
        return new Asked(bank, changed, ended, certain);
    }

    Asked ended(boolean changed) {
        return new Asked(bank, texts, changed, certain);
    }

    Asked certain(boolean changed) {
        return new Asked(bank, texts, ended, changed);
    }

    /** The criteria that have a field, in the order in which they came. */
    List<String> weighed() {
        return texts.keySet().stream().filter(field -> field.startsWith(WEIGHT)).map(field -> field.substring(WEIGHT.length())).toList();
    }

    /**
     * What was read.
     *
     * @param task     the task; empty where something is wrong
     * @param problems what is wrong, by field, each a sentence for beside it
     * @param parts    how many parts pass the filter
     */
    record Read(Optional<Task> task, Map<String, String> problems, int parts) {
        Read {
            problems = Collections.unmodifiableMap(new LinkedHashMap<>(problems));
        }
    }

    /**
     * Reads the task, as the command line would read its options.
     *
     * @param design    the design
     * @param catalogue what is chosen from
     * @param told      the criteria and figures that anything loaded tells
     */
    Read read(Design design, Catalogue catalogue, Set<String> told) {
        Map<String, String> problems = new LinkedHashMap<>();
        Wish wish = wish(told, problems);
        if (problems.isEmpty() && !wish.weights().isEmpty() && wish.weights().values().stream().noneMatch(weight -> weight > 0)) {
            problems.put(weight(weighed().getFirst()), "must be above 0, or another weight must, so that there is something to rank by");
        }
        int listed = whole(LISTED, MOST_LISTED, problems).orElse(LISTED_AS_A_RULE);
        Optional<PartFilter> filter = filter(catalogue, problems);
        int[] numbers = filter.map(catalogue::select).orElse(new int[0]);
        if (filter.isPresent() && numbers.length == 0) {
            problems.put(WHERE, catalogue.size() == 0 ? "the catalogue holds no part" : "none of " + catalogue.size() + " parts passes; widen it");
        }
        if (!problems.isEmpty()) {
            return new Read(Optional.empty(), problems, numbers.length);
        }
        return new Read(Optional.of(new Task(design, bank, catalogue.parts(numbers), wish.space(), wish.weights(), wish.lowestSetting(), listed, MISSES, certain, false)),
                problems, numbers.length);
    }

    /**
     * What is wished, as typed, with every weight that has a field.
     *
     * @param told     the criteria and figures that anything loaded tells
     * @param problems receives what is wrong, by field
     */
    Wish wish(Set<String> told, Map<String, String> problems) {
        Optional<Quantity> width = length(WIDTH, problems);
        Optional<Quantity> height = length(HEIGHT, problems);
        Optional<Quantity> depth = length(DEPTH, problems);
        if (width.isPresent() != height.isPresent() && !problems.containsKey(WIDTH) && !problems.containsKey(HEIGHT)) {
            problems.put(width.isPresent() ? HEIGHT : WIDTH, "is missing; give both sides of the opening, or neither");
        }
        Optional<Quantity> lowest = quantity(LOWEST, QuantityKind.FRACTION, problems);
        if (lowest.isPresent() && !(lowest.get().si() > 0 && lowest.get().si() <= 1)) {
            problems.put(LOWEST, "must be above 0 % and at most 100 %");
        }
        Map<String, Double> weights = new LinkedHashMap<>();
        for (String criterion : weighed()) {
            weight(criterion, told, problems).ifPresent(weight -> weights.put(criterion, weight));
        }
        return new Wish(width, height, depth, whole(SIDE_BY_SIDE, MOST, problems), whole(IN_SERIES, MOST, problems), whole(MOVERS, MOST, problems),
                lowest, Optional.of(text(WHERE).strip()).filter(where -> !where.isEmpty()), weights, Value.Tree.EMPTY);
    }

    /** The filter as written; parts that are not to be had any more are left out unless they are asked for. */
    private Optional<PartFilter> filter(Catalogue catalogue, Map<String, String> problems) {
        List<String> all = new ArrayList<>();
        if (!text(WHERE).isBlank()) {
            PartFilter.Read alone = PartFilter.parse(text(WHERE), catalogue);
            if (alone.filter().isEmpty()) {
                problems.put(WHERE, alone.problem().map(Problem::sentence).orElse("this is no filter"));
                return Optional.empty();
            }
            all.add(text(WHERE));
        }
        if (!ended && catalogue.field("status").isPresent()) {
            all.add(NOT_ENDED);
        }
        return PartFilter.parse(all.size() == 1 ? all.getFirst() : all.stream().map(text -> "(" + text + ")").collect(Collectors.joining(" and ")), catalogue)
                .filter();
    }

    private Optional<Double> weight(String criterion, Set<String> told, Map<String, String> problems) {
        String text = text(weight(criterion)).strip();
        try {
            double weight = text.isEmpty() ? 0 : Units.parse(text, QuantityKind.NUMBER);
            if (weight >= 0 && weight < Double.POSITIVE_INFINITY) {
                if (weight > 0 && !told.contains(criterion) && !isPlain(criterion)) {
                    problems.put(weight(criterion), "nothing loaded gives " + criterion);
                    return Optional.empty();
                }
                return Optional.of(weight);
            }
        } catch (UnitException wrong) {
            // said below
        }
        problems.put(weight(criterion), "is a number from 0 on");
        return Optional.empty();
    }

    /** Whether it is one of those that count where nothing is said. */
    static boolean isPlain(String criterion) {
        return Task.EVEN.containsKey(criterion);
    }

    private Optional<Quantity> length(String field, Map<String, String> problems) {
        Optional<Quantity> length = quantity(field, QuantityKind.LENGTH, problems);
        if (length.isPresent() && !(length.get().si() > 0)) {
            problems.put(field, "must be above zero");
        }
        return length;
    }

    private Optional<Quantity> quantity(String field, QuantityKind kind, Map<String, String> problems) {
        String text = text(field).strip();
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(Quantity.of(Units.parse(text, kind), text));
        } catch (UnitException wrong) {
            problems.put(field, wrong.getMessage());
            return Optional.empty();
        }
    }

    private Optional<Integer> whole(String field, int most, Map<String, String> problems) {
        String text = text(field).strip().toLowerCase(Locale.ROOT);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        if (text.length() < 6 && text.chars().allMatch(c -> c >= '0' && c <= '9')) {
            int number = Integer.parseInt(text);
            if (number >= 1 && number <= most) {
                return Optional.of(number);
            }
        }
        problems.put(field, "is a whole number from 1 to " + most);
        return Optional.empty();
    }

    /** What people call a criterion. */
    static String label(String criterion) {
        return criterion.equals(Criterion.COST) ? "price" : criterion;
    }
}
