package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.function.ToDoubleFunction;
import tramontane.analysis.OperatingPoint;
import tramontane.model.AirMover;
import tramontane.model.Design;
import tramontane.model.Quantity;
import tramontane.physics.RootSearch;
import tramontane.thermal.Drive;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalState;

/**
 * The settings of some control laws' banks in one case at which all temperatures just hold, and of these the ones that spare most.
 *
 * <p>With one law that is the lowest setting: margins rise with speed, and so do power and noise. With several it is looked for on a
 * grid of all laws but the last, made finer around the best place, the last each time as low as the others let it.
 */
final class LeastSettings {

    /** Setting to which an answer is found; it is given on the side that holds. */
    private static final double FOUND = 1e-3;
    /** Settings around a guess between which the answer is expected. */
    private static final double GUESSED = 0.02;
    private static final int[] GRID = {1, 1, 9, 6};
    private static final int[] REFINED = {0, 0, 3, 2};
    private static final int AROUND = 5;

    private final Design design;
    private final ThermalModel model;
    private final List<ThermalModel.Acting> laws;
    private final double[] lowest;
    private final ToDoubleFunction<ThermalState> cost;
    private final Extra extra;
    private final BooleanSupplier stop;
    private final Map<List<Double>, Tried> tried = new HashMap<>();
    private Optional<ThermalState> near;

    /** Margins that a thermal state alone does not tell, such as those of requirements. */
    @FunctionalInterface
    interface Extra {
        /**
         * The least margin, K; infinite where nothing else is asked.
         *
         * @param settings one for each law
         * @param state    the state there
         */
        double margin(double[] settings, ThermalState state);
    }

    /**
     * An answer.
     *
     * @param settings one for each law
     * @param state    the state there; empty where even full speed has none
     * @param margin   the least margin there less the reserve, K; below zero where full speed is not enough
     */
    record Found(double[] settings, Optional<ThermalState> state, double margin) {
    }

    private record Tried(double margin, Optional<ThermalState> state) {
    }

    LeastSettings(Design design, ThermalModel model, List<ThermalModel.Acting> laws, double[] lowest, String aim, Extra extra,
            Optional<ThermalState> near, BooleanSupplier stop) {
        this.design = design;
        this.model = model;
        this.laws = laws;
        this.lowest = lowest;
        this.extra = extra;
        this.near = near;
        this.stop = stop;
        cost = aim.equals("noise") ? this::noise : this::power;
    }

    /**
     * The answer.
     *
     * @param reserve that margins are to leave, K
     * @param guess   of the setting of the last law
     */
    Found find(double reserve, OptionalDouble guess) {
        double[] full = new double[laws.size()];
        Arrays.fill(full, 1);
        if (!(margin(full) >= reserve)) {
            Tried there = tried(full);
            return new Found(full, there.state(), margin(full) - reserve);
        }
        if (laws.size() >= GRID.length) { // too many to look among: all alike
            double least = along(full, Arrays.stream(lowest).max().orElse(0), reserve, true, OptionalDouble.empty());
            double[] all = new double[laws.size()];
            Arrays.fill(all, least);
            for (int i = 0; i < all.length; i++) {
                all[i] = Math.max(all[i], lowest[i]);
            }
            return found(all, reserve);
        }
        double[] low = lowest.clone();
        double[] high = full.clone();
        double[] best = full;
        double bestCost = Double.POSITIVE_INFINITY;
        int places = GRID[laws.size()];
        for (int round = 0; round <= REFINED[laws.size()]; round++) {
            for (double[] place : grid(low, high, places)) {
                if (stop.getAsBoolean()) {
                    return found(best, reserve);
                }
                place[place.length - 1] = 1;
                if (!(margin(place) >= reserve)) {
                    continue;
                }
                place[place.length - 1] = along(place, lowest[place.length - 1], reserve, false, guess);
                double price = tried(place).state().map(cost::applyAsDouble).orElse(Double.POSITIVE_INFINITY);
                if (price < bestCost * (1 - 1e-9)) {
                    bestCost = price;
                    best = place;
                }
            }
            for (int i = 0; i + 1 < low.length; i++) {
                double step = (high[i] - low[i]) / Math.max(1, places - 1);
                low[i] = Math.max(lowest[i], best[i] - step);
                high[i] = Math.min(1, best[i] + step);
            }
            places = AROUND;
        }
        return found(best, reserve);
    }

    private Found found(double[] settings, double reserve) {
        Tried there = tried(settings);
        return new Found(settings, there.state(), there.margin() - reserve);
    }

    /** All places of a grid in all laws but the last. */
    private static List<double[]> grid(double[] low, double[] high, int places) {
        List<double[]> all = new ArrayList<>();
        all.add(new double[low.length]);
        for (int law = 0; law + 1 < low.length; law++) {
            List<double[]> next = new ArrayList<>();
            for (double[] place : all) {
                for (int i = 0; i < places; i++) {
                    double[] more = place.clone();
                    more[law] = low[law] + (high[law] - low[law]) * i / Math.max(1, places - 1);
                    next.add(more);
                }
            }
            all = next;
        }
        return all;
    }

    /** The lowest setting of the last law, or of all, that holds; at full speed it does. */
    private double along(double[] others, double least, double reserve, boolean all, OptionalDouble guess) {
        java.util.function.DoubleUnaryOperator margin = setting -> {
            double[] there = others.clone();
            if (all) {
                Arrays.fill(there, setting);
            } else {
                there[there.length - 1] = setting;
            }
            double found = margin(there) - reserve;
            return Double.isNaN(found) ? Double.NEGATIVE_INFINITY : found;
        };
        double low = least;
        double high = 1;
        double atLow = Double.NaN;
        double atHigh = Double.NaN;
        if (guess.isPresent() && guess.getAsDouble() > least && guess.getAsDouble() < 1) {
            double near = guess.getAsDouble();
            double at = margin.applyAsDouble(near);
            double beside = at >= 0 ? Math.max(least, near - GUESSED) : Math.min(1, near + GUESSED);
            double there = margin.applyAsDouble(beside);
            if (at >= 0) {
                high = there >= 0 ? beside : near;
                atHigh = there >= 0 ? there : at;
                low = there >= 0 ? least : beside;
                atLow = there >= 0 ? Double.NaN : there;
            } else {
                low = there >= 0 ? near : beside;
                atLow = there >= 0 ? at : there;
                high = there >= 0 ? beside : 1;
                atHigh = there >= 0 ? there : Double.NaN;
            }
        }
        atLow = Double.isNaN(atLow) ? margin.applyAsDouble(low) : atLow;
        if (atLow >= 0) {
            return low;
        }
        atHigh = Double.isNaN(atHigh) ? margin.applyAsDouble(high) : atHigh;
        while (atLow < -FAR && high - low > FOUND) { // where nothing turns there is no slope to follow
            double middle = (low + high) / 2;
            double at = margin.applyAsDouble(middle);
            if (at >= 0) {
                high = middle;
                atHigh = at;
            } else {
                low = middle;
                atLow = at;
            }
        }
        if (high - low > FOUND && atHigh > 0) {
            RootSearch root = RootSearch.between(margin, low, high, atLow, atHigh, FOUND, 0);
            high = root.value() >= 0 ? root.at() : Math.min(1, root.at() + FOUND);
        }
        return high;
    }

    /** Margin below which no slope is followed, K. */
    private static final double FAR = 300;

    private double margin(double[] settings) {
        return tried(settings).margin();
    }

    private Tried tried(double[] settings) {
        List<Double> key = Arrays.stream(settings).boxed().toList();
        Tried known = tried.get(key);
        if (known == null) {
            Optional<ThermalState> state = model.at(drive(settings), near, stop).state();
            near = state.isPresent() ? state : near;
            // where nothing with a limit is, only what is asked beside counts
            double margin = state.map(each -> model.margin(each).orElse(Double.POSITIVE_INFINITY)).orElse(Double.NaN);
            known = new Tried(margin >= 0 ? Math.min(margin, extra.margin(settings, state.orElseThrow())) : margin, state);
            tried.put(key, known);
        }
        return known;
    }

    /** The settings of all banks; of several laws on one bank the one counts that asks for most. */
    Drive drive(double[] settings) {
        Map<String, Double> banks = new HashMap<>();
        for (int i = 0; i < settings.length; i++) {
            for (String bank : laws.get(i).banks()) {
                banks.merge(bank, settings[i], Math::max);
            }
        }
        return Drive.STATED.with(banks);
    }

    private double power(ThermalState state) {
        return state.point().banks().stream().mapToDouble(bank -> bank.power().orElseGet(() -> Math.pow(bank.speed(), 3))).sum();
    }

    /**
     * A measure of sound power: D⁷ n⁵ of each mover that runs (fan sound law, LW ~ 70 lg D + 50 lg n: C. Madison, "Fan Engineering",
     * from memory).
     */
    private double noise(ThermalState state) {
        return state.point().banks().stream().mapToDouble(bank -> running(bank) * Math.pow(size(bank.bank()), 7) * Math.pow(bank.speed(), 5)).sum();
    }

    private static long running(OperatingPoint.BankPoint bank) {
        return bank.movers().stream().filter(OperatingPoint.MoverPoint::running).count();
    }

    private double size(String bank) {
        return design.airPath().passages().stream().filter(passage -> passage.id().equals(bank)).findFirst()
                .flatMap(passage -> design.airMover(Banks.mover(passage))).flatMap(mover -> mover.rotorDiameter().or(mover::width).or(mover::height))
                .map(Quantity::si).orElse(1.0);
    }

    /** Whether sizes of all banks are known, so that noise can be weighed between them. */
    static boolean sizesKnown(Design design) {
        return design.airMovers().stream().allMatch(LeastSettings::hasSize);
    }

    private static boolean hasSize(AirMover mover) {
        return mover.rotorDiameter().isPresent() || mover.width().isPresent() || mover.height().isPresent();
    }
}
