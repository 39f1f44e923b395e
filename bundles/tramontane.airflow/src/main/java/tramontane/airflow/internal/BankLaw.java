package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.analysis.FlowLaw;

/**
 * The flow law of a bank: columns side by side, each of one or more movers behind one another.
 *
 * <p>Movers behind one another add their pressures at equal flow; columns side by side add their flows at equal pressure. A
 * mover that does not run is a resistance in its column. Like columns share the flow evenly; unlike ones share it as their
 * curves say, which may mean backwards through one whose mover stands still.
 *
 * <p>Columns are counted across, then along; positions column by column, in a column in the direction of flow.
 */
public final class BankLaw implements FlowLaw {

    private static final int MOST_STEPS = 200;

    private final Optional<MoverCharacteristic> mover;
    /** Which group of like columns each column belongs to. */
    private final int[] groupOf;
    private final List<Column> columns;
    private final Column[] group;
    private final int[] count;
    private final Map<Integer, LocalLoss> standing;

    /** Movers behind one another: how many run, and the resistances of those that do not. */
    private record Column(int running, List<LocalLoss> standing) {
    }

    private BankLaw(Optional<MoverCharacteristic> mover, int[] groupOf, List<Column> columns, Map<Integer, LocalLoss> standing) {
        this.mover = mover;
        this.standing = Map.copyOf(standing);
        this.groupOf = groupOf;
        this.columns = columns;
        group = columns.toArray(Column[]::new);
        count = new int[group.length];
        for (int each : groupOf) {
            count[each]++;
        }
    }

    /**
     * The law of a bank.
     *
     * @param mover    what a running mover gives; empty where none runs
     * @param columns  how many columns stand side by side
     * @param series   how many movers stand behind one another
     * @param standing the resistances of the movers that do not run, by position from 1
     */
    static BankLaw of(Optional<MoverCharacteristic> mover, int columns, int series, Map<Integer, LocalLoss> standing) {
        Map<Column, Integer> groups = new LinkedHashMap<>();
        int[] groupOf = new int[columns];
        for (int c = 0; c < columns; c++) {
            List<LocalLoss> losses = new ArrayList<>();
            for (int position = c * series + 1; position <= (c + 1) * series; position++) {
                LocalLoss loss = standing.get(position);
                if (loss != null) {
                    losses.add(loss);
                } else if (mover.isEmpty()) {
                    throw new IllegalArgumentException("position " + position + " runs, but nothing says how");
                }
            }
            losses.sort(Comparator.comparingDouble(LocalLoss::loss));
            groupOf[c] = groups.computeIfAbsent(new Column(series - losses.size(), List.copyOf(losses)), key -> groups.size());
        }
        return new BankLaw(mover, groupOf, List.copyOf(groups.keySet()), standing);
    }

    @Override
    public boolean increasing() {
        return mover.isEmpty() || mover.get().increasing() || columns.stream().allMatch(column -> column.running() == 0);
    }

    /** Whether it has a unique answer at every flow: unlike columns side by side need curves that fall all the way. */
    public boolean defined() {
        return group.length == 1 || increasing();
    }

    /**
     * A bank in two parts side by side: like columns whose curve does not fall all the way, and the rest, whose laws rise.
     *
     * @param dipping     the like columns
     * @param rest        the rest
     * @param placeInPart place of each column of the bank within its part
     * @param inDipping   whether a column of the bank belongs to the like columns
     */
    public record Split(BankLaw dipping, BankLaw rest, int[] placeInPart, boolean[] inDipping) {

        /** The flow through a column, from the flows through both parts, m³/s. */
        public double columnFlow(int column, double dippingFlow, double restFlow, double density, double viscosity) {
            return inDipping[column] ? dippingFlow / dipping.width()
                    : rest.columnFlow(placeInPart[column], restFlow, density, viscosity);
        }
    }

    /** The two parts; empty where the bank needs none or two would not do. */
    public Optional<Split> split() {
        if (defined()) {
            return Optional.empty();
        }
        int dips = -1;
        for (int g = 0; g < group.length; g++) {
            if (group[g].running() > 0) {
                if (dips >= 0) {
                    return Optional.empty();
                }
                dips = g;
            }
        }
        int[] placeInPart = new int[groupOf.length];
        boolean[] inDipping = new boolean[groupOf.length];
        int[] restGroups = new int[groupOf.length - count[dips]];
        int next = 0;
        for (int c = 0; c < groupOf.length; c++) {
            inDipping[c] = groupOf[c] == dips;
            if (!inDipping[c]) {
                placeInPart[c] = next;
                restGroups[next++] = groupOf[c] < dips ? groupOf[c] : groupOf[c] - 1;
            }
        }
        List<Column> others = new ArrayList<>(columns);
        Column like = others.remove(dips);
        return Optional.of(new Split(new BankLaw(mover, new int[count[dips]], List.of(like), Map.of()),
                new BankLaw(Optional.empty(), restGroups, others, Map.of()), placeInPart, inDipping));
    }

    /** The resistance of the mover at a position that does not run. */
    public Optional<LocalLoss> standing(int position) {
        return Optional.ofNullable(standing.get(position));
    }

    /** Number of columns. */
    int width() {
        return groupOf.length;
    }

    /** What a running mover gives. */
    public Optional<MoverCharacteristic> mover() {
        return mover;
    }

    @Override
    public void at(double flow, double density, double viscosity, Drop drop) {
        if (group.length == 1) {
            column(0, flow / groupOf.length, density, viscosity, drop);
            drop.set(drop.pressure(), drop.slope() / groupOf.length);
            return;
        }
        double shared = share(flow, density, viscosity, drop);
        double conductance = 0;
        for (int g = 0; g < group.length; g++) {
            invert(g, shared, flow / groupOf.length, density, viscosity, drop);
            conductance += count[g] / drop.slope();
        }
        drop.set(shared, 1 / conductance);
    }

    /**
     * The flow through a column.
     *
     * @param column    counted from 0
     * @param flow      flow through the bank, m³/s
     * @param density   kg/m³
     * @param viscosity Pa s
     * @return m³/s
     */
    public double columnFlow(int column, double flow, double density, double viscosity) {
        double even = flow / groupOf.length;
        if (group.length == 1) {
            return even;
        }
        Drop drop = new Drop();
        double shared = share(flow, density, viscosity, drop);
        return invert(groupOf[column], shared, even, density, viscosity, drop);
    }

    private void column(int g, double flow, double density, double viscosity, Drop drop) {
        double pressure = 0;
        double slope = 0;
        if (group[g].running() > 0) {
            mover.get().at(flow, density, viscosity, drop);
            pressure = group[g].running() * drop.pressure();
            slope = group[g].running() * drop.slope();
        }
        List<LocalLoss> losses = group[g].standing();
        for (int i = 0; i < losses.size(); i++) {
            losses.get(i).at(flow, density, viscosity, drop);
            pressure += drop.pressure();
            slope += drop.slope();
        }
        drop.set(pressure, slope);
    }

    /** The drop at which all columns together take a flow; Newton's method between bounds. */
    private double share(double flow, double density, double viscosity, Drop drop) {
        double even = flow / groupOf.length;
        column(0, even, density, viscosity, drop);
        double common = drop.pressure();
        double low = Double.NEGATIVE_INFINITY;
        double high = Double.POSITIVE_INFINITY;
        double error = Double.POSITIVE_INFINITY;
        for (int i = 0; i < MOST_STEPS; i++) {
            double through = 0;
            double size = 0;
            double conductance = 0;
            for (int g = 0; g < group.length; g++) {
                double each = invert(g, common, even, density, viscosity, drop);
                through += count[g] * each;
                size += count[g] * Math.abs(each);
                conductance += count[g] / drop.slope();
            }
            double before = error;
            error = through - flow;
            if (Math.abs(error) <= 1e-15 * size) {
                return common;
            }
            if (error > 0) {
                high = common;
            } else {
                low = common;
            }
            double next = next(common - error / conductance, low, high, Math.abs(error) > Math.abs(before) / 2);
            if (next == common) {
                return common;
            }
            common = next;
        }
        return common;
    }

    /** The flow at which a group's column has a drop; leaves drop and slope there. Newton's method between bounds. */
    private double invert(int g, double wanted, double start, double density, double viscosity, Drop drop) {
        double flow = start;
        double low = Double.NEGATIVE_INFINITY;
        double high = Double.POSITIVE_INFINITY;
        double error = Double.POSITIVE_INFINITY;
        for (int i = 0; i < MOST_STEPS; i++) {
            column(g, flow, density, viscosity, drop);
            double before = error;
            error = drop.pressure() - wanted;
            if (error == 0) {
                return flow;
            }
            if (error > 0) {
                high = flow;
            } else {
                low = flow;
            }
            double next = next(flow - error / drop.slope(), low, high, Math.abs(error) > Math.abs(before) / 2);
            if (Math.abs(next - flow) <= 1e-16 * Math.abs(flow)) {
                return flow;
            }
            flow = next;
        }
        return flow;
    }

    private static double next(double newton, double low, double high, boolean slow) {
        boolean bounded = low > Double.NEGATIVE_INFINITY && high < Double.POSITIVE_INFINITY;
        return bounded && (slow || !(newton >= low && newton <= high)) ? low + (high - low) / 2 : newton;
    }
}
