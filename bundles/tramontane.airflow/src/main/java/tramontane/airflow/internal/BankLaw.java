package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.analysis.FlowLaw;

/**
 * The flow law of a bank: columns side by side, each of one or more movers behind one another.
 *
 * <p>Movers behind one another add their pressures at equal flow, each behind another by a part of what it gives alone; columns
 * side by side add their flows at equal pressure. A mover that does not run is a resistance in its column, and so is the flap
 * of a column that has one. Like columns share the flow evenly; unlike ones share it as their
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
    private final Build build;

    /**
     * What all columns have in common.
     *
     * @param series how many movers stand behind one another
     * @param stage  pressure of a mover behind another over what it gives alone
     * @param flap   the flap of each column
     */
    record Build(int series, double stage, Optional<FlapLaw> flap) {
    }

    /** Movers behind one another: how many run, and the resistances of those that do not. */
    private record Column(int running, List<LocalLoss> standing) {
    }

    private BankLaw(Optional<MoverCharacteristic> mover, int[] groupOf, List<Column> columns, Map<Integer, LocalLoss> standing,
            Build build) {
        this.mover = mover;
        this.build = build;
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
     * The law of an ideal bank without flaps.
     *
     * @param mover    what a running mover gives; empty where none runs
     * @param columns  how many columns stand side by side
     * @param series   how many movers stand behind one another
     * @param standing the resistances of the movers that do not run, by position from 1
     */
    static BankLaw of(Optional<MoverCharacteristic> mover, int columns, int series, Map<Integer, LocalLoss> standing) {
        return of(mover, columns, standing, new Build(series, 1, Optional.empty()));
    }

    /**
     * The law of a bank.
     *
     * @param mover    what a running mover gives; empty where none runs
     * @param columns  how many columns stand side by side
     * @param standing the resistances of the movers that do not run, by position from 1
     * @param build    what all columns have in common
     */
    static BankLaw of(Optional<MoverCharacteristic> mover, int columns, Map<Integer, LocalLoss> standing, Build build) {
        int series = build.series();
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
        return new BankLaw(mover, groupOf, List.copyOf(groups.keySet()), standing, build);
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
     * A bank in parts side by side, each with a unique answer at every flow.
     *
     * @param laws        the parts
     * @param partOf      part of each column
     * @param placeInPart place of each column within its part
     * @param like        the same number for parts that may change places; one for each part
     */
    public record Parts(List<BankLaw> laws, int[] partOf, int[] placeInPart, int[] like) {
    }

    /**
     * The bank in parts: the columns of each curve that does not fall all the way, and all others together.
     *
     * @param apart whether each column of such a curve is a part of its own, so that they need not share evenly
     */
    public Parts parts(boolean apart) {
        int[] partOf = new int[groupOf.length];
        int[] placeInPart = new int[groupOf.length];
        int[] first = new int[group.length];
        Arrays.fill(first, -1);
        List<Integer> like = new ArrayList<>();
        boolean others = false;
        for (int c = 0; c < groupOf.length; c++) {
            int g = groupOf[c];
            boolean own = !increasing() && group[g].running() > 0 && (apart || !defined());
            others |= !own;
            if (!own) {
                partOf[c] = -1;
            } else if (apart || first[g] < 0) {
                first[g] = like.size();
                partOf[c] = like.size();
                like.add(g);
            } else {
                partOf[c] = first[g];
            }
        }
        int[] width = new int[like.size() + (others ? 1 : 0)];
        for (int c = 0; c < groupOf.length; c++) {
            partOf[c] = partOf[c] < 0 ? like.size() : partOf[c];
            placeInPart[c] = width[partOf[c]]++;
        }
        List<BankLaw> laws = new ArrayList<>();
        for (int p = 0; p < width.length; p++) {
            laws.add(part(p, partOf, width[p]));
        }
        if (others) {
            like.add(group.length);
        }
        return new Parts(List.copyOf(laws), partOf, placeInPart, like.stream().mapToInt(Integer::intValue).toArray());
    }

    private BankLaw part(int p, int[] partOf, int columnsInPart) {
        Map<Integer, Integer> groups = new LinkedHashMap<>();
        int[] groupInPart = new int[columnsInPart];
        int next = 0;
        for (int c = 0; c < groupOf.length; c++) {
            if (partOf[c] == p) {
                groupInPart[next++] = groups.computeIfAbsent(groupOf[c], key -> groups.size());
            }
        }
        List<Column> inPart = groups.keySet().stream().map(columns::get).toList();
        boolean runs = inPart.stream().anyMatch(column -> column.running() > 0);
        return new BankLaw(runs ? mover : Optional.empty(), groupInPart, inPart, Map.of(), build);
    }

    /** The resistance of the mover at a position that does not run. */
    public Optional<LocalLoss> standing(int position) {
        return Optional.ofNullable(standing.get(position));
    }

    /** What the running mover at a position gives over what it would give alone: less where another runs in front of it. */
    public double stage(int position) {
        for (int before = position - (position - 1) % build.series(); before < position; before++) {
            if (!standing.containsKey(before)) {
                return build.stage();
            }
        }
        return 1;
    }

    /** The flap of each column. */
    Optional<FlapLaw> flap() {
        return build.flap();
    }

    /** Number of columns. */
    public int width() {
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

    /**
     * Electrical input of all running movers at a flow of the bank.
     *
     * @param flow      flow through the bank, m³/s
     * @param density   kg/m³
     * @param viscosity Pa s
     * @return W; empty where it is not stated; nothing where none runs
     */
    OptionalDouble power(double flow, double density, double viscosity) {
        double even = flow / groupOf.length;
        Drop drop = new Drop();
        double shared = group.length == 1 ? 0 : share(flow, density, viscosity, drop);
        double power = 0;
        for (int g = 0; g < group.length; g++) {
            if (group[g].running() > 0) {
                OptionalDouble each = mover.get().power(group.length == 1 ? even : invert(g, shared, even, density, viscosity, drop), density);
                if (each.isEmpty()) {
                    return each;
                }
                power += count[g] * group[g].running() * each.getAsDouble();
            }
        }
        return OptionalDouble.of(power);
    }

    private void column(int g, double flow, double density, double viscosity, Drop drop) {
        double pressure = 0;
        double slope = 0;
        if (group[g].running() > 0) {
            mover.get().at(flow, density, viscosity, drop);
            double stages = 1 + (group[g].running() - 1) * build.stage();
            pressure = stages * drop.pressure();
            slope = stages * drop.slope();
        }
        List<LocalLoss> losses = group[g].standing();
        for (int i = 0; i < losses.size(); i++) {
            losses.get(i).at(flow, density, viscosity, drop);
            pressure += drop.pressure();
            slope += drop.slope();
        }
        if (build.flap().isPresent()) {
            build.flap().get().at(flow, density, viscosity, drop);
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
