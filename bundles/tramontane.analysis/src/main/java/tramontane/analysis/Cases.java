package tramontane.analysis;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.Passage;
import tramontane.model.Value;

/**
 * The single cases that the conditions of a design stand for: "any one" failed mover is every position in turn.
 *
 * @param conditions the ids of the conditions that were asked for, in the order of the design
 * @param list       the cases, in the order of the conditions
 * @param findings   conditions that could not be turned into cases, and why
 */
public record Cases(List<String> conditions, List<Engine.Case> list, List<Finding> findings) {

    /** How many cases one condition may stand for; one that stands for more is not computed at all. */
    public static final int MOST = 1000;

    /** How many combinations are looked at before a condition counts as standing for too many. */
    private static final int MOST_TRIES = 100_000;

    public Cases {
        conditions = List.copyOf(conditions);
        list = List.copyOf(list);
        findings = List.copyOf(findings);
    }

    /**
     * The cases of a design.
     *
     * @param design     the design
     * @param conditions ids of the conditions wanted; all where empty
     */
    public static Cases of(Design design, Set<String> conditions) {
        return of(design, conditions, false);
    }

    /**
     * The cases of a design, of those that differ only in which of the like columns of a bank has failed the first alone: it
     * stands for all of them in everything but its name.
     *
     * @param design     the design
     * @param conditions ids of the conditions wanted; all where empty
     */
    public static Cases unlike(Design design, Set<String> conditions) {
        return of(design, conditions, true);
    }

    private static Cases of(Design design, Set<String> conditions, boolean unlike) {
        List<Condition> wanted = design.workingConditions().stream()
                .filter(condition -> conditions.isEmpty() || conditions.contains(condition.id())).toList();
        List<Engine.Case> cases = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        for (Condition condition : wanted) {
            expand(design, condition, unlike, cases, findings);
        }
        return new Cases(wanted.stream().map(Condition::id).toList(), cases, findings);
    }

    /** The cases of one condition. */
    public List<Engine.Case> of(String condition) {
        return list.stream().filter(each -> each.declared().equals(condition)).toList();
    }

    /**
     * How many positions a bank has: movers side by side across and along times movers in series. What cannot be read counts
     * as one.
     */
    public static int positions(Passage bank) {
        long count = 1;
        for (String field : List.of("across", "along", "series")) {
            count = Math.min(Integer.MAX_VALUE, count * bank.parameters().get(field).map(Cases::whole).orElse(1));
        }
        return (int) count;
    }

    private static int whole(Value value) {
        return value instanceof Value.Num num && num.number() >= 1 && num.number() <= Integer.MAX_VALUE
                && num.number() == Math.rint(num.number()) ? (int) num.number() : 1;
    }

    /** The movers that an entry may mean, as far as the design has them. */
    private static List<FailedMover> options(Design design, FailedMover entry) {
        List<FailedMover> options = new ArrayList<>();
        for (Passage bank : design.airPath().banks()) {
            if (entry.bank().isPresent() && !entry.bank().get().equals(bank.id())) {
                continue;
            }
            int positions = positions(bank);
            int first = entry.position().orElse(1);
            // one more than the limit is enough to know that there are too many
            int last = Math.min(positions, entry.position().orElse(MOST + 1));
            for (int position = first; position <= last; position++) {
                options.add(new FailedMover(Optional.of(bank.id()), Optional.of(position), entry.state()));
            }
        }
        return options;
    }

    private static void expand(Design design, Condition condition, boolean unlike, List<Engine.Case> cases, List<Finding> findings) {
        List<FailedMover> entries = condition.failed();
        List<List<FailedMover>> options = entries.stream().map(entry -> options(design, entry)).toList();
        for (int i = 0; i < entries.size(); i++) {
            if (options.get(i).isEmpty()) {
                findings.add(Finding.error("", "condition " + condition.id() + " cannot be computed: the design has no mover "
                        + name(entries.get(i)) + " that could fail").in(condition.id())
                        .remedy("correct bank and position in the failed movers of this condition"));
                return;
            }
        }
        if (entries.stream().allMatch(FailedMover::isConcrete)) {
            cases.add(new Engine.Case(condition.id(), condition));
            return;
        }
        Search search = new Search(design, entries, options, unlike);
        search.from(0, new ArrayList<>(), new int[entries.size()]);
        if (search.tooMany) {
            findings.add(Finding.of(Severity.NOT_JUDGED, "", "condition " + condition.id() + " stands for more than " + MOST
                    + " single cases and is not computed").in(condition.id()).remedy("say which movers fail"));
            return;
        }
        if (search.found.isEmpty()) {
            findings.add(Finding.error("", "condition " + condition.id() + " cannot be computed: it lets more movers fail"
                    + " than there are").in(condition.id()).remedy("take failed movers out of this condition"));
        }
        search.found.values().forEach(failed -> {
            List<String> named = new ArrayList<>();
            for (int i = 0; i < failed.size(); i++) {
                if (!entries.get(i).isConcrete()) {
                    named.add(name(failed.get(i)));
                }
            }
            cases.add(new Engine.Case(condition.id(),
                    condition.with(condition.id() + ": " + String.join(", ", named), failed)));
        });
    }

    private static String name(FailedMover mover) {
        return Stream.of(mover.bank().orElse("of any bank"),
                mover.position().map(String::valueOf).orElse(FailedMover.ANY_ONE), mover.state().word())
                .collect(Collectors.joining(" "));
    }

    /**
     * Every combination of one option per entry in which no mover fails twice; the order of like entries does not count. Where only
     * unlike ones are wanted, of combinations that differ in the column of a bank alone the first stands for all.
     */
    private static final class Search {

        private final List<FailedMover> entries;
        private final List<List<FailedMover>> options;
        private final LinkedHashMap<Set<List<Object>>, List<FailedMover>> found = new LinkedHashMap<>();
        private final Map<String, Integer> series = new HashMap<>();
        private final boolean unlike;
        private int tries;
        private boolean tooMany;

        Search(Design design, List<FailedMover> entries, List<List<FailedMover>> options, boolean unlike) {
            this.unlike = unlike;
            design.airPath().banks().forEach(bank -> series.put(bank.id(), bank.parameters().get("series").map(Cases::whole).orElse(1)));
            this.entries = entries;
            this.options = options;
        }

        void from(int entry, List<FailedMover> chosen, int[] indices) {
            if (entry == entries.size()) {
                found.putIfAbsent(pattern(chosen), List.copyOf(chosen));
                tooMany |= found.size() > MOST;
                return;
            }
            for (int i = first(entry, indices); i < options.get(entry).size() && !tooMany; i++) {
                tooMany = ++tries > MOST_TRIES;
                FailedMover option = options.get(entry).get(i);
                if (chosen.stream().noneMatch(other -> other.bank().equals(option.bank())
                        && other.position().equals(option.position()))) {
                    indices[entry] = i;
                    chosen.add(option);
                    from(entry + 1, chosen, indices);
                    chosen.removeLast();
                }
            }
        }

        /** What has failed, told by columns without their names: of each bank how many have failed in what way. */
        private Set<List<Object>> pattern(List<FailedMover> chosen) {
            if (!unlike) {
                return Set.of(List.of(new HashSet<>(chosen)));
            }
            Map<List<Object>, Set<List<Object>>> columns = new HashMap<>();
            for (FailedMover each : chosen) {
                String bank = each.bank().orElseThrow();
                int place = each.position().orElseThrow() - 1;
                int behind = series.getOrDefault(bank, 1);
                columns.computeIfAbsent(List.of(bank, place / behind), key -> new HashSet<>()).add(List.of(place % behind, each.state()));
            }
            Map<List<Object>, Integer> alike = new HashMap<>();
            columns.forEach((column, failed) -> alike.merge(List.of(column.getFirst(), failed), 1, Integer::sum));
            Set<List<Object>> pattern = new HashSet<>();
            alike.forEach((failed, count) -> pattern.add(List.of(failed, count)));
            return pattern;
        }

        /** Behind the option that the last like entry took. */
        private int first(int entry, int[] indices) {
            for (int before = entry - 1; before >= 0; before--) {
                if (entries.get(before).equals(entries.get(entry))) {
                    return indices[before] + 1;
                }
            }
            return 0;
        }
    }
}
