package tramontane.thermal;

import java.util.List;

/**
 * The temperature budgets of all heat sources in all conditions.
 *
 * @param rows one for each source and condition, of several cases the worst
 */
public record Budget(List<Row> rows) {

    public Budget {
        rows = List.copyOf(rows);
    }

    /**
     * The budget of one source in one case.
     *
     * @param source    its id
     * @param condition the case
     * @param worst     whether no other source and case is nearer to its limit
     */
    public record Row(String source, String condition, boolean worst) {
    }
}
