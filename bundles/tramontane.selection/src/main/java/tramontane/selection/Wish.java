package tramontane.selection;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import tramontane.model.Quantity;
import tramontane.model.Value;

/**
 * What a design says of the choice of a bank's movers, in section {@code selection} of the bank.
 *
 * @param width   of the opening that the bank may take up
 * @param height  of the opening
 * @param depth   along the flow
 * @param columns how many movers may stand side by side
 * @param series  how many may stand one behind another
 * @param movers  how many there may be in all
 * @param lowest  lowest speed setting
 * @param where   which parts are looked at, as a catalogue's filter
 * @param weights of criteria, by {@link Criterion#id}; all alike where there is none
 * @param more    what else stands in the section
 */
public record Wish(Optional<Quantity> width, Optional<Quantity> height, Optional<Quantity> depth, Optional<Integer> columns,
        Optional<Integer> series, Optional<Integer> movers, Optional<Quantity> lowest, Optional<String> where, Map<String, Double> weights,
        Value.Tree more) {

    /** No wish. */
    public static final Wish NONE = new Wish(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
            Optional.empty(), Optional.empty(), Optional.empty(), Map.of(), Value.Tree.EMPTY);

    /** As many side by side as are looked at where only the opening says how many fit. */
    private static final int COLUMNS = 6;
    private static final int SERIES = 2;
    private static final int MOVERS = 12;

    public Wish {
        weights = Collections.unmodifiableMap(new LinkedHashMap<>(weights));
    }

    /**
     * The room that is meant: where an opening is given up to six side by side and two in series, twelve in all; where not, up to
     * two of both, four in all.
     */
    public Space space() {
        boolean bounded = width.isPresent() || height.isPresent() || depth.isPresent();
        return new Space(width.map(Quantity::si), height.map(Quantity::si), depth.map(Quantity::si),
                columns.orElse(bounded ? COLUMNS : Space.ANY.columns()), series.orElse(bounded ? SERIES : Space.ANY.series()),
                movers.orElse(columns.isPresent() || series.isPresent() ? Math.multiplyExact(columns.orElse(COLUMNS), series.orElse(SERIES))
                        : bounded ? MOVERS : Space.ANY.movers()));
    }

    /** The weights, or all alike where none is given. */
    public Map<String, Double> weighed() {
        return weights.isEmpty() ? Task.EVEN : weights;
    }

    /** The lowest setting, or {@link Task#LOWEST}. */
    public double lowestSetting() {
        return lowest.map(Quantity::si).orElse(Task.LOWEST);
    }
}
