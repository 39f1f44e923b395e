package tramontane.model.file;

import java.util.AbstractList;
import java.util.ArrayList;
import java.util.List;
import tramontane.model.Problem;

/** Problems up to a limit: a file of a million mistakes shall not fill the memory with sentences. */
final class ProblemList extends AbstractList<Problem> {

    private final int most;
    private final List<Problem> kept = new ArrayList<>();
    private long dropped;
    private boolean errorDropped;

    ProblemList(int most) {
        this.most = most;
    }

    @Override
    public boolean add(Problem problem) {
        if (kept.size() < most) {
            return kept.add(problem);
        }
        dropped++;
        errorDropped |= problem.isError();
        return false;
    }

    @Override
    public Problem get(int index) {
        return kept.get(index);
    }

    @Override
    public int size() {
        return kept.size();
    }

    /** The problems, and how many more there were. */
    List<Problem> all() {
        List<Problem> all = new ArrayList<>(kept);
        if (dropped > 0) {
            String more = "and " + dropped + " more problems, which are not listed";
            all.add(errorDropped ? Problem.error("", more) : Problem.caution("", more));
        }
        return List.copyOf(all);
    }
}
