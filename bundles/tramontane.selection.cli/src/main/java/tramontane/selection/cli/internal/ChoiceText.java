package tramontane.selection.cli.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import tramontane.analysis.Amount;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.Sentence;
import tramontane.analysis.Severity;
import tramontane.analysis.Table;
import tramontane.analysis.Verdict;
import tramontane.cli.terminal.FindingLines;
import tramontane.cli.terminal.Messages;
import tramontane.cli.terminal.Numbers;
import tramontane.cli.terminal.TextTable;
import tramontane.cli.terminal.Wrapping;
import tramontane.model.Datasheet;
import tramontane.model.Requirement;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.selection.Candidate;
import tramontane.selection.Criterion;
import tramontane.selection.Merit;
import tramontane.selection.Need;
import tramontane.selection.Rejected;
import tramontane.selection.Selection;
import tramontane.selection.Spare;

/** A choice for people: how many of what, what is asked, the best, why, what fails, what to do next. */
final class ChoiceText {

    /** The line that a choice ends with. */
    static final String SAFETY = "Mains voltage, moving blades, and cooling that somebody's safety depends on: local codes and licensed practice "
            + "come before this list.";

    private static final int MOST_REASONS = 8;

    private final Choice choice;
    private final Selection selection;
    private final UnitSystem units;
    private final int width;
    private final UnaryOperator<String> shown;
    private final List<String> lines = new ArrayList<>();

    private ChoiceText(Choice choice, UnitSystem units, int width, UnaryOperator<String> shown) {
        this.choice = choice;
        this.selection = choice.selection();
        this.units = units;
        this.width = width;
        this.shown = shown;
    }

    /**
     * The whole text.
     *
     * @param choice   what was chosen out of what
     * @param compared tables of candidates side by side
     * @param all      whether everything that fails is listed
     * @param cautions about the design, a sentence each
     * @param units    how quantities are shown
     * @param width    columns that a line may have
     * @param shown    how the reader's terminal spells a text
     * @return lines, each ended
     */
    static String of(Choice choice, List<Table> compared, boolean all, List<String> cautions, UnitSystem units, int width,
            UnaryOperator<String> shown) {
        ChoiceText text = new ChoiceText(choice, units, width, shown);
        text.say(title(choice));
        text.counts();
        text.needs();
        text.ranked();
        compared.forEach(table -> text.table(table, keys(table)));
        text.why();
        text.misses();
        text.reasons();
        if (all) {
            text.rejected();
        }
        text.findings(cautions);
        text.next();
        StringBuilder out = new StringBuilder();
        text.lines.forEach(line -> out.append(shown.apply(line).stripTrailing()).append('\n'));
        return out.toString();
    }

    /** What a row is about stands in the first columns that are no numbers: one, or two with the condition. */
    private static int keys(Table table) {
        return Math.clamp(table.columns().stream().takeWhile(column -> !column.numeric()).count(), 1, 2);
    }

    private static String title(Choice choice) {
        String name = choice.task().design().name();
        return (name.isEmpty() ? choice.file() : name + (choice.file().isEmpty() ? "" : " (" + choice.file() + ")")) + ", bank " + choice.task().bank();
    }

    private void say(String sentence) {
        lines.addAll(Wrapping.lines(sentence, width));
    }

    private void heading(String title) {
        lines.add("");
        lines.add(title);
    }

    private void table(Table table, int keys) {
        lines.add("");
        lines.addAll(TextTable.lines(table, keys, width, units, shown));
    }

    private void counts() {
        Selection.Counts counts = selection.counts();
        lines.add("");
        say(Messages.count(choice.catalogue(), "part") + " in the catalogue; " + counts.parts() + (counts.parts() == 1 ? " passes the filter" : " pass the filter")
                + (choice.ended() ? "" : counts.parts() == 1 ? " and is still to be had" : " and are still to be had")
                + (!choice.task().space().isBounded() ? "." : "; " + counts.fitting() + (counts.fitting() == 1 ? " fits the room." : " fit the room.")));
        if (counts.arranged() > 0) {
            say(Messages.count(counts.arranged(), "arrangement") + ": " + counts.may() + " may do by the reduced design, " + counts.exact()
                    + (counts.exact() == 1 ? " was" : " were") + " solved exactly, " + counts.meeting() + (counts.meeting() == 1 ? " meets" : " meet")
                    + " " + counts.met() + (selection.passed().isEmpty() ? "." : "; " + selection.passed().size()
                    + (selection.passed().size() == 1 ? " comes" : " come") + " behind those listed whatever exact solving says."));
        }
    }

    private void needs() {
        if (selection.needs().isEmpty()) {
            return;
        }
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (Need need : selection.needs()) {
            Table.Cell flow = need.flow().isEmpty() ? new Table.Words("no flow is enough")
                    : need.flow().getAsDouble() > 0 ? amount(need.flow().getAsDouble(), QuantityKind.FLOW) : new Table.Words("any");
            rows.add(List.of(new Table.Words(need.condition()), new Table.Words(need.requirement().isEmpty() ? "nothing asks for a flow"
                    : need.requirement().in(units) + need.nearest().filter(figure -> need.flow().isEmpty()).map(this::nearest).orElse("")), flow,
                    need.pressure().isPresent() && need.flow().orElse(0) > 0 ? amount(need.pressure().getAsDouble(), QuantityKind.PRESSURE)
                            : new Table.Empty()));
        }
        table(new Table("What the rest of the design asks of the bank", List.of(new Table.Column("condition", false),
                new Table.Column("decided by", false), new Table.Column("flow", true), new Table.Column("pressure", true)), rows), 1);
    }

    private String nearest(Figure figure) {
        return "; with the most air that was looked at " + Numbers.text(figure.value(), figure.kind().quantity(), units);
    }

    private void ranked() {
        if (selection.ranked().isEmpty()) {
            lines.add("");
            say("None meets everything.");
            return;
        }
        List<Criterion> criteria = selection.criteria().stream()
                .filter(criterion -> selection.ranked().stream().anyMatch(candidate -> candidate.values().containsKey(criterion.id()))).toList();
        List<Table.Column> columns = new ArrayList<>(List.of(new Table.Column("rank", false), new Table.Column("part", false),
                new Table.Column("arrangement", false), new Table.Column("speed setting", true), new Table.Column("speed", true),
                new Table.Column("merit", true)));
        criteria.forEach(criterion -> columns.add(new Table.Column(choice.label(criterion), true)));
        boolean sameTightest = selection.ranked().stream().map(ChoiceText::tightest).distinct().count() == 1;
        if (!sameTightest) {
            columns.add(new Table.Column("tightest requirement", false));
        }
        Candidate first = selection.ranked().getFirst();
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (int i = 0; i < selection.ranked().size(); i++) {
            Candidate candidate = selection.ranked().get(i);
            OptionalLong merit = Merit.of(first, candidate);
            List<Table.Cell> row = new ArrayList<>(List.of(new Table.Words((i + 1) + (candidate.front() ? " *" : "")),
                    new Table.Words(candidate.part().id()), new Table.Words(candidate.arrangement().words()),
                    candidate.adjustable() ? amount(candidate.setting(), QuantityKind.FRACTION) : new Table.Words("fixed"),
                    amount(candidate.speed(), QuantityKind.ROTATIONAL_SPEED),
                    merit.isPresent() ? new Table.Words(Long.toString(merit.getAsLong())) : new Table.Empty()));
            criteria.forEach(criterion -> row.add(candidate.values().containsKey(criterion.id())
                    ? amount(candidate.values().get(criterion.id()), criterion.quantity()) : new Table.Empty()));
            if (!sameTightest) {
                row.add(new Table.Words(tightest(candidate) + candidate.tightest().map(verdict -> ", " + Words.spare(verdict, units)).orElse("")));
            }
            rows.add(row);
        }
        table(new Table("The best, by the weights", columns, rows), 2);
        legend(sameTightest);
    }

    private static String tightest(Candidate candidate) {
        return candidate.tightest().map(Spare::about).orElse("nothing is required");
    }

    private void legend(boolean sameTightest) {
        lines.add("");
        if (sameTightest) {
            List<String> spare = selection.ranked().stream().flatMap(candidate -> candidate.tightest().stream())
                    .map(verdict -> Words.spare(verdict, units)).distinct().toList();
            say("Tightest requirement of all: " + tightest(selection.ranked().getFirst())
                    + (spare.size() == 1 ? ", " + spare.getFirst() : spare.isEmpty() ? "" : ", " + spare.getFirst() + " with the first") + ".");
        }
        List<Criterion> weighed = selection.criteria().stream().filter(criterion -> choice.weight(criterion) > 0).toList();
        if (selection.ranked().stream().anyMatch(Candidate::adjustable)) {
            say(choice.task().certain() ? "Each runs at the lowest setting with which all holds at the edge of the bounds, too."
                    : "Each runs at the lowest setting that is enough by the figures as they are stated; --certain counts tolerances, too.");
        }
        say(Merit.MEANING + (weighed.isEmpty() ? " No criterion has a weight."
                : weighed.size() == 1 ? " Ranked by " + weighed.getFirst().label() + " alone." : " Weights: "
                + weighed.stream().map(criterion -> criterion.label() + " " + weight(choice.weight(criterion))).collect(Collectors.joining(", ")) + "."));
        List<String> untold = choice.task().weights().entrySet().stream().filter(entry -> entry.getValue() > 0).map(entry -> entry.getKey())
                .filter(id -> selection.criteria().stream().noneMatch(criterion -> criterion.id().equals(id))).sorted().toList();
        if (!untold.isEmpty()) {
            say("Nothing loaded tells " + String.join(" or ", untold) + ", so " + (untold.size() == 1 ? "it does" : "they do") + " not count.");
        }
        if (selection.ranked().stream().anyMatch(Candidate::front)) {
            say("* None is as good in everything and better in something: the Pareto set, " + selection.front().size() + " in all.");
        }
        if (selection.ranked().stream().anyMatch(candidate -> candidate.unknown() > 0)) {
            say("Where a cell is empty, the part does not say, or prices it in another currency; it comes behind those that do.");
        }
        if (selection.ranked().stream().anyMatch(candidate -> !candidate.adjustable())) {
            say("A fixed speed is one that follows no setting.");
        }
        List<String> last = IntStream.rangeClosed(1, selection.ranked().size()).filter(rank -> selection.ranked().get(rank - 1).part().datasheet().status()
                .filter(Datasheet.LAST_ORDER::equals).isPresent()).mapToObj(Integer::toString).toList();
        if (!last.isEmpty()) {
            say("Can be ordered for the last time only: rank " + String.join(", ", last) + ". --where 'not status = \"last order\"' leaves such parts out.");
        }
        List<Criterion> told = selection.criteria().stream().filter(criterion -> !criterion.about().isEmpty()
                && selection.ranked().stream().anyMatch(candidate -> candidate.values().containsKey(criterion.id()))).toList();
        if (!told.isEmpty()) {
            say(told.stream().map(criterion -> criterion.label() + ": " + criterion.about()).collect(Collectors.joining("; ")) + ".");
        }
        unjudged();
    }

    /** Which requirements could not be judged, of which candidates, and why. */
    private void unjudged() {
        record Gap(String about, String reason) {
        }
        Map<Gap, Set<String>> conditions = new LinkedHashMap<>();
        Map<Gap, Set<Integer>> ranks = new LinkedHashMap<>();
        for (int i = 0; i < selection.ranked().size(); i++) {
            for (Verdict verdict : selection.ranked().get(i).verdicts()) {
                if (verdict.severity() == Severity.NOT_JUDGED) {
                    Requirement requirement = verdict.requirement();
                    Gap gap = new Gap(choice.labels().getOrDefault(requirement.figure(), requirement.figure())
                            + (requirement.place().isEmpty() || requirement.place().equals(Requirement.WORST) ? "" : " at " + requirement.place()), verdict.reason());
                    Set<String> where = conditions.computeIfAbsent(gap, key -> new LinkedHashSet<>());
                    if (!verdict.condition().isEmpty()) {
                        where.add(verdict.condition());
                    }
                    ranks.computeIfAbsent(gap, key -> new LinkedHashSet<>()).add(i + 1);
                }
            }
        }
        conditions.forEach((gap, where) -> say("Not judged of " + (ranks.get(gap).size() == selection.ranked().size() ? "any listed here" : "rank "
                + ranks.get(gap).stream().map(rank -> Integer.toString(rank)).collect(Collectors.joining(", "))) + ": " + gap.about()
                + (where.isEmpty() ? "" : " in " + String.join(", ", where)) + (gap.reason().isEmpty() ? "" : "; " + gap.reason()) + "."));
    }

    private static String weight(double weight) {
        return weight == Math.rint(weight) ? Long.toString((long) weight) : Double.toString(weight);
    }

    private static Table.Cell amount(double si, QuantityKind kind) {
        return Double.isFinite(si) ? new Amount(si, kind) : new Table.Empty();
    }

    private void why() {
        if (selection.why().isEmpty()) {
            return;
        }
        heading("Why");
        selection.why().forEach(sentence -> lines.addAll(Wrapping.hanging("  ", sentence(sentence), width)));
    }

    /** A sentence as one stands on a line of its own. */
    private String sentence(Sentence sentence) {
        return sentence.in(units);
    }

    private void misses() {
        if (selection.nearest().isEmpty()) {
            return;
        }
        heading("Nearest misses");
        int number = 0;
        for (Rejected miss : selection.nearest()) {
            number++;
            lines.addAll(Wrapping.hanging("  ", number + ". " + miss.words() + ": " + sentence(miss.reason()), width));
            if (!miss.remedy().isEmpty()) {
                lines.addAll(Wrapping.hanging("    ", sentence(miss.remedy()), width));
            }
        }
    }

    private void reasons() {
        List<Words.Reason> reasons = Words.reasons(selection.rejected(), units);
        if (reasons.isEmpty()) {
            return;
        }
        heading("What fails, and for what");
        List<Words.Reason> told = reasons.size() > MOST_REASONS ? reasons.subList(0, MOST_REASONS - 1) : reasons;
        told.forEach(reason -> lines.addAll(Wrapping.hanging("  ", reason.counted() + ": " + reason.words().in(units), width)));
        if (told.size() < reasons.size()) {
            lines.addAll(Wrapping.hanging("  ", reasons.stream().skip(told.size()).mapToInt(Words.Reason::count).sum() + " more for "
                    + (reasons.size() - told.size()) + " other reasons; --rejected lists each", width));
        }
    }

    private void rejected() {
        if (selection.rejected().isEmpty()) {
            return;
        }
        heading("All that fails");
        selection.rejected().forEach(each -> lines.addAll(Wrapping.hanging("  ", each.words() + ": " + sentence(each.reason()), width)));
    }

    private void findings(List<String> cautions) {
        List<Finding> all = new ArrayList<>(selection.findings());
        cautions.forEach(sentence -> all.add(Finding.caution("", sentence)));
        all.sort(Comparator.comparing(Finding::severity).reversed());
        if (!all.isEmpty()) {
            heading("Findings");
            lines.addAll(FindingLines.of(all, units, width));
        }
    }

    private void next() {
        lines.add("");
        if (!selection.ranked().isEmpty()) {
            List<String> ways = new ArrayList<>(List.of("--put 1 --output FILE writes the design with the first"));
            if (choice.inPlace()) {
                ways.add("--put 1 --in-place writes it into the design itself");
            }
            if (selection.ranked().size() > 1) {
                ways.add("--compare " + IntStream.rangeClosed(1, Math.min(3, selection.ranked().size()))
                        .mapToObj(Integer::toString).collect(Collectors.joining(",")) + " sets candidates side by side");
            }
            say("Next: " + String.join("; ", ways) + ".");
        } else if (!selection.nearest().isEmpty()) {
            say("Next: --put miss:1 --output FILE writes the design with the nearest miss, which does not meet everything.");
        }
        say(SAFETY);
    }
}
