package tramontane.selection;

import java.util.List;
import org.osgi.annotation.versioning.ProviderType;
import tramontane.analysis.Table;

/**
 * Chooses parts; the one service that callers use.
 *
 * <pre>{@code
 * Selection selection = selector.choose(Task.of(design, "fans", parts, Space.ANY), Watch.NONE);
 * selection.ranked().forEach(candidate -> …);
 * Design with = selection.ranked().getFirst().design();
 * }</pre>
 */
@ProviderType
public interface Selector {

    /**
     * Chooses. Blocks; the answer depends on the task and the loaded bundles only, not on threads or time.
     *
     * @param task  what is to be chosen for what
     * @param watch progress, cancel, candidates as they are found
     */
    Selection choose(Task task, Watch watch);

    /**
     * Candidates side by side: every requirement in every condition, where they work, what they come to by the criteria.
     *
     * @param task       the task that they came from
     * @param candidates listed ones
     * @return tables with one column per candidate
     */
    List<Table> compare(Task task, List<Candidate> candidates);
}
