package tramontane.selection.cli.internal;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.model.Problem;
import tramontane.selection.Candidate;
import tramontane.selection.Criterion;
import tramontane.selection.Selection;
import tramontane.selection.Task;

/**
 * What was chosen out of what.
 *
 * @param file      the design's file as the user named it; empty where the duty stood on the command line
 * @param task      what was asked
 * @param selection the answer
 * @param catalogue how many parts the catalogue has
 * @param ended     whether parts that are not to be had any more count as well
 * @param inPlace   whether the design's file may be written over
 * @param problems  cautions about the design
 * @param labels    what people call figures, by id
 */
record Choice(String file, Task task, Selection selection, int catalogue, boolean ended, boolean inPlace, List<Problem> problems,
        Map<String, String> labels) {

    Choice {
        problems = List.copyOf(problems);
        labels = Map.copyOf(labels);
    }

    double weight(Criterion criterion) {
        return task.weights().getOrDefault(criterion.id(), 0.0);
    }

    /** What prices are in; empty where no candidate states one that counts. */
    Optional<String> currency() {
        return selection.ranked().stream().filter(candidate -> candidate.values().containsKey(Criterion.COST)).findFirst()
                .flatMap(Choice::currency);
    }

    static Optional<String> currency(Candidate candidate) {
        return candidate.part().datasheet().currency();
    }

    /** What people read above a column. */
    String label(Criterion criterion) {
        return criterion.label() + (criterion.id().equals(Criterion.COST) ? currency().map(each -> " " + each).orElse("") : "");
    }
}
