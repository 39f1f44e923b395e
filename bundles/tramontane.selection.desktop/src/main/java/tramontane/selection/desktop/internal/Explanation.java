package tramontane.selection.desktop.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tramontane.analysis.Amount;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Judgement;
import tramontane.analysis.Sentence;
import tramontane.analysis.Severity;
import tramontane.analysis.Table;
import tramontane.analysis.Verdict;
import tramontane.catalogue.Plausibility;
import tramontane.model.Datasheet;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.physics.units.QuantityKind;
import tramontane.selection.Candidate;
import tramontane.selection.Criterion;
import tramontane.selection.Merit;
import tramontane.selection.Passed;
import tramontane.selection.Rejected;
import tramontane.selection.Selection;
import tramontane.selection.Spare;
import tramontane.selection.Task;

/**
 * Why a candidate stands where it stands, what limits it, and what is met with how much to spare.
 *
 * @param title    which one
 * @param sections what there is to say
 */
record Explanation(String title, List<Section> sections) {

    static final Explanation NONE = new Explanation("", List.of());

    private static final int MOST_BETTER = 3;

    Explanation {
        sections = List.copyOf(sections);
    }

    /**
     * Of a row of a choice.
     *
     * @param row      the row
     * @param choosing the choice it belongs to
     */
    static Explanation of(Row row, Choosing choosing) {
        String title = row.key().words() + row.rank().map(rank -> ", rank " + rank).orElse("");
        return new Explanation(title, row.candidate().map(candidate -> candidate(row, candidate, choosing))
                .or(() -> row.rejected().map(Explanation::rejected)).or(() -> row.passed().map(Explanation::passed)).orElse(List.of()));
    }

    private static List<Section> rejected(Rejected rejected) {
        List<Sentence> why = new ArrayList<>(List.of(rejected.reason()));
        if (!rejected.remedy().isEmpty()) {
            why.add(rejected.remedy());
        } else if (rejected.speed().isPresent() && rejected.speed().getAsDouble() > 1) {
            why.add(Sentence.of("by the reduced design it would do at ", new Amount(rejected.speed().getAsDouble(), QuantityKind.FRACTION), " of its full speed"));
        }
        why.add(Sentence.of(rejected.arrangement().isEmpty() ? "No arrangement of it was looked at." : rejected.exactly() ? "It was judged exactly." : "The reduced design turns it down for certain; it was not solved exactly."));
        return List.of(Section.of("Why it is left out", why));
    }

    private static List<Section> passed(Passed passed) {
        return List.of(Section.of("Why it is not in the list", List.of(Sentence.of("By the reduced design it may do, from ",
                new Amount(passed.setting(), QuantityKind.FRACTION), " of its speed on; at its best it still comes behind all that are listed, so it was not solved exactly."))));
    }

    private static List<Section> candidate(Row row, Candidate candidate, Choosing choosing) {
        List<Section> sections = new ArrayList<>();
        List<Candidate> ranked = Listing.ranked(choosing);
        Task task = choosing.task().orElseThrow();
        ranked.stream().findFirst().ifPresent(first -> sections.add(place(row, candidate, first, choosing, task)));
        sections.add(limits(candidate));
        required(candidate).ifPresent(sections::add);
        if (row.rank().filter(rank -> rank == 1).isPresent()) {
            choosing.selection().map(Selection::why).filter(why -> !why.isEmpty()).ifPresent(why -> sections.add(Section.of("Why it wins", why)));
        }
        part(candidate).ifPresent(sections::add);
        return sections;
    }

    /** Its place: what each criterion does to its merit, and who is better in everything. */
    private static Section place(Row row, Candidate candidate, Candidate first, Choosing choosing, Task task) {
        boolean isFirst = Key.of(candidate).equals(Key.of(first));
        List<Sentence> said = new ArrayList<>();
        OptionalLong merit = Merit.of(first, candidate);
        said.add(Sentence.of(isFirst ? "It comes first by the weights." : row.rank().map(rank -> "It is number " + rank + " by the weights")
                .orElse("It is not in the list by the weights") + (merit.isPresent() ? ", with merit " + merit.getAsLong() + " where the first, " + first.words() + ", has 100." : ".")));
        if (choosing.isRunning()) {
            said.add(Sentence.of("The choice is still running, so this may change."));
        }
        if (candidate.unknown() > first.unknown()) {
            said.add(Sentence.of("Less is known of it than of the first: it comes behind all of which " + candidate.unknown() + " more "
                    + (candidate.unknown() == 1 ? "criterion is" : "criteria are") + " known."));
        }
        List<Criterion> criteria = choosing.selection().map(Selection::criteria).filter(list -> !list.isEmpty())
                .orElseGet(() -> Listing.criteria(choosing, List.of(candidate, first)));
        said.addAll(trade(candidate, criteria, choosing));
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (Criterion criterion : criteria) {
            Double mine = candidate.values().get(criterion.id());
            Double others = first.values().get(criterion.id());
            double weight = weight(task, criterion);
            Table.Cell merits = mine == null || others == null || weight == 0 ? new Table.Empty()
                    : amount(meritAlone(task.weights(), criteria, criterion, mine, others), QuantityKind.NUMBER);
            rows.add(List.of(new Table.Words(criterion.label()), new Table.Words(Asked.number(weight)), amount(mine, criterion.quantity()),
                    amount(others, criterion.quantity()), compared(criterion, mine, others), merits));
        }
        return new Section("Why it stands there", said, Optional.of(new Table("By what counts", List.of(new Table.Column("criterion", false),
                new Table.Column("weight", true), new Table.Column("this", true), new Table.Column("first", true), new Table.Column("against", true),
                new Table.Column("merit alone", true)), rows)));
    }

    private static double weight(Task task, Criterion criterion) {
        return task.weights().getOrDefault(criterion.id(), 0.0);
    }

    private static Table.Cell compared(Criterion criterion, Double mine, Double others) {
        if (mine == null || others == null) {
            return new Table.Empty();
        }
        QuantityKind kind = criterion.quantity();
        boolean byDifference = kind.equals(QuantityKind.LEVEL) || kind.equals(QuantityKind.TEMPERATURE) || kind.equals(QuantityKind.TEMPERATURE_DIFFERENCE);
        if (byDifference) {
            return amount(mine - others, kind.equals(QuantityKind.TEMPERATURE) ? QuantityKind.TEMPERATURE_DIFFERENCE : kind);
        }
        return others > 0 ? amount(mine / others, QuantityKind.FRACTION) : new Table.Empty();
    }

    private static List<Sentence> trade(Candidate candidate, List<Criterion> criteria, Choosing choosing) {
        if (candidate.front()) {
            return List.of(Sentence.of("No other is as good in everything and better in something: it is in the Pareto set."));
        }
        if (choosing.selection().filter(selection -> !selection.cancelled()).isEmpty()) {
            return List.of();
        }
        List<String> better = Stream.concat(choosing.selection().get().front().stream(), Listing.ranked(choosing).stream())
                .filter(other -> Trade.dominates(criteria, other.values(), candidate.values())).map(Candidate::words).distinct().toList();
        return better.isEmpty() ? List.of() : List.of(Sentence.of(String.join("; ", better.subList(0, Math.min(MOST_BETTER, better.size())))
                + (better.size() > MOST_BETTER ? " and " + (better.size() - MOST_BETTER) + " more" : "") + (better.size() == 1 ? " is" : " are")
                + " as good in every criterion and better in one."));
    }

    private static Section limits(Candidate candidate) {
        List<Sentence> said = new ArrayList<>();
        candidate.tightest().ifPresentOrElse(verdict -> said.add(Sentence.of(capital(Spare.about(verdict)), " is ", value(verdict), " where ", limit(verdict),
                " is required: ", Spare.words(verdict), ".")), () -> said.add(Sentence.of("Nothing is required of it that has a figure.")));
        said.add(candidate.adjustable() ? Sentence.of("It runs at ", new Amount(candidate.setting(), QuantityKind.FRACTION),
                candidate.setting() >= 1 ? " of its speed: there is nothing left." : " of its speed, the lowest setting with which all holds; slower, this requirement fails first.")
                : Sentence.of("Its speed follows no setting."));
        said.add(Sentence.of("Its fastest mover turns at ", new Amount(candidate.speed(), QuantityKind.ROTATIONAL_SPEED), " in the worst case."));
        if (candidate.unjudged() > 0) {
            String which = candidate.verdicts().stream().filter(verdict -> verdict.severity() == Severity.NOT_JUDGED).map(verdict -> verdict.requirement().figure()
                    + (verdict.requirement().place().equals(Requirement.WORST) ? "" : place(verdict.requirement(), Optional.empty()))
                    + (verdict.condition().isEmpty() ? "" : " in " + verdict.condition()) + (verdict.reason().isEmpty() ? "" : " (" + verdict.reason() + ")"))
                    .collect(Collectors.joining("; "));
            said.add(Sentence.of(candidate.unjudged() + (candidate.unjudged() == 1 ? " requirement" : " requirements") + " could not be judged"
                    + (which.isEmpty() ? "" : ": " + which) + "."));
        }
        return Section.of("What limits it", said);
    }

    private static Optional<Section> required(Candidate candidate) {
        if (candidate.evaluation().isEmpty()) {
            return Optional.of(Section.of("What is required", List.of(Sentence.of("Only flow and temperature have been judged so far; the other analyses judge it once it stays in the list."))));
        }
        List<Verdict> verdicts = candidate.verdicts();
        if (verdicts.isEmpty()) {
            return Optional.empty();
        }
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (Verdict verdict : verdicts) {
            Optional<Figure> figure = verdict.figure();
            rows.add(List.of(new Table.Words(figure.map(each -> each.kind().label()).orElse(verdict.requirement().figure())
                            + place(verdict.requirement(), figure)), new Table.Words(verdict.condition()),
                    figure.<Table.Cell>map(each -> new Amount(each.value(), each.kind().quantity())).orElse(new Table.Empty()),
                    figure.<Table.Cell>map(each -> limitCell(verdict.requirement(), each.kind())).orElse(new Table.Empty()),
                    figure.isPresent() ? Spare.of(verdict) : new Table.Words(verdict.reason()), new Table.Words(verdict.severity().word())));
        }
        return Optional.of(Section.of("What is required", new Table("Requirements", List.of(new Table.Column("requirement", false),
                new Table.Column("condition", false), new Table.Column("comes to", true), new Table.Column("limit", true), new Table.Column("to spare", true),
                new Table.Column("verdict", false)), rows)));
    }

    private static String place(Requirement requirement, Optional<Figure> figure) {
        String place = figure.map(Figure::place).orElse(requirement.place());
        return place.isEmpty() ? "" : " at " + place;
    }

    private static Table.Cell limitCell(Requirement requirement, FigureKind kind) {
        Optional<Amount> least = requirement.atLeast().map(limit -> new Amount(Judgement.limit(limit, kind), kind.quantity()));
        Optional<Amount> most = requirement.atMost().map(limit -> new Amount(Judgement.limit(limit, kind), kind.quantity()));
        return least.isPresent() && most.isPresent() ? new Table.Range(least.get(), most.get()) : least.or(() -> most).<Table.Cell>map(each -> each).orElse(new Table.Empty());
    }

    private static Object value(Verdict verdict) {
        Figure figure = verdict.figure().orElseThrow();
        return new Amount(figure.value(), figure.kind().quantity());
    }

    private static Sentence limit(Verdict verdict) {
        FigureKind kind = verdict.figure().orElseThrow().kind();
        Optional<Quantity> least = verdict.requirement().atLeast();
        Optional<Quantity> most = verdict.requirement().atMost();
        Object lower = least.<Object>map(limit -> new Amount(Judgement.limit(limit, kind), kind.quantity())).orElse("");
        Object upper = most.<Object>map(limit -> new Amount(Judgement.limit(limit, kind), kind.quantity())).orElse("");
        return least.isPresent() && most.isPresent() ? Sentence.of(lower, " to ", upper) : least.isPresent() ? Sentence.of("at least ", lower) : Sentence.of("at most ", upper);
    }

    /** What its data sheet gives to think about. */
    private static Optional<Section> part(Candidate candidate) {
        List<Sentence> said = new ArrayList<>();
        candidate.part().datasheet().status().filter(status -> !status.equals(Datasheet.CURRENT)).ifPresent(status -> said.add(Sentence.of(
                status.equals(Datasheet.ENDED) ? "It is not to be had any more." : status.equals(Datasheet.LAST_ORDER) ? "It can be ordered for the last time only." : "Its status is " + status + ".")));
        for (Finding finding : Plausibility.of(candidate.part())) {
            said.add(Sentence.of(finding.severity().word() + ": ", finding.message(), finding.remedy().isEmpty() ? "" : "; ", finding.remedy()));
        }
        return said.isEmpty() ? Optional.empty() : Optional.of(Section.of("What to know of the part", said));
    }

    private static Table.Cell amount(Double value, QuantityKind kind) {
        return value == null || !Double.isFinite(value) ? new Table.Empty() : new Amount(value, kind);
    }

    private static String capital(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    /** The merit of each criterion alone; all of them multiplied, over 100 each, are the merit. */
    static double meritAlone(Map<String, Double> weights, List<Criterion> criteria, Criterion criterion, double mine, double first) {
        double sum = criteria.stream().mapToDouble(each -> weights.getOrDefault(each.id(), 0.0)).sum();
        return 100 * Math.pow(2, weights.getOrDefault(criterion.id(), 0.0) / sum * (criterion.steps(first) - criterion.steps(mine)));
    }
}
