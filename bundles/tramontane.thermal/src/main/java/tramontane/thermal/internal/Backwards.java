package tramontane.thermal.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import tramontane.analysis.OperatingPoint;
import tramontane.model.Bay;
import tramontane.model.HeatSource;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.physics.RootSearch;
import tramontane.thermal.Drive;
import tramontane.thermal.Loop;
import tramontane.thermal.PartState;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalState;

/**
 * The flow at which the part that is worst just meets its limit, and the speed of the banks that gives it.
 *
 * @param worst    the part that is worst there
 * @param flow     flow from outside, m³/s at the density outside
 * @param estimate the same by heat / (density × specific heat × (limit - outside)), m³/s
 * @param speeds   speed of each bank, rad/s
 * @param factor   speed over the one that it is stated or controlled to
 * @param state    the state there
 */
record Backwards(PartState worst, double flow, double estimate, Map<String, Double> speeds, double factor, ThermalState state) {

    /** Slowest and fastest speed that is tried, over the one that it works at. */
    static final double SLOWEST = 0.02;
    static final double FASTEST = 8;
    /** Margin at which a limit counts as just met, K. */
    private static final double JUST_MET = 1e-6;
    /** Ratio of speeds that counts as none. */
    private static final double NARROW = 1e-12;

    /** How the search ended without an answer. */
    enum End {
        /** No part has a limit and a temperature, or no bank runs. */
        NOTHING_TO_FIND,
        /** Even at the highest speed a limit is not met. */
        TOO_HOT,
        /** Even at the lowest speed all limits are met. */
        ALWAYS_MET,
        /** There is no answer at some speed. */
        LOST
    }

    /** An answer, or why there is none. */
    record Found(Optional<Backwards> answer, End end) {
        private static Found none(End end) {
            return new Found(Optional.empty(), end);
        }
    }

    /** Looks for it from a state. */
    static Found from(ThermalModel model, ThermalState state, BooleanSupplier stop) {
        boolean runs = state.point().banks().stream().anyMatch(bank -> bank.speed() > 0);
        boolean untold = state.parts().stream().anyMatch(part -> part.fault().isPresent() && limit(model, part.source()).isPresent());
        if (!runs || untold || margin(model, state).isEmpty()) {
            return Found.none(End.NOTHING_TO_FIND);
        }
        Found found = search(model, state, false, stop);
        // a state that has stalled may hold the search where air from rest would not stay
        return found.end() == End.TOO_HOT || found.end() == End.LOST ? search(model, state, true, stop) : found;
    }

    private static Found search(ThermalModel model, ThermalState state, boolean fromRest, BooleanSupplier stop) {
        double now = margin(model, state).getAsDouble();
        // margins rise with speed; bracketed in the logarithm, along which they are nearly straight
        double low = now >= 0 ? SLOWEST : 1;
        double high = now >= 0 ? 1 : FASTEST;
        ThermalState near = state;
        double atLow = now;
        double atHigh = now;
        double step = now >= 0 ? 0.5 : 2;
        double bound = 1;
        boolean met = false;
        while (!met && bound > SLOWEST && bound < FASTEST) {
            double next = Math.max(SLOWEST, Math.min(FASTEST, bound * step));
            Optional<ThermalState> there = at(model, state, next, fromRest ? Optional.empty() : Optional.of(near), stop);
            OptionalDouble margin = there.isEmpty() ? OptionalDouble.empty() : margin(model, there.get());
            if (margin.isEmpty()) {
                return Found.none(End.LOST);
            }
            near = there.get();
            met = now >= 0 ? margin.getAsDouble() < 0 : margin.getAsDouble() >= 0;
            if (now >= 0) {
                high = met ? bound : next;
                atHigh = met ? atHigh : margin.getAsDouble();
                low = next;
                atLow = margin.getAsDouble();
            } else {
                low = met ? bound : next;
                atLow = met ? atLow : margin.getAsDouble();
                high = next;
                atHigh = margin.getAsDouble();
            }
            bound = next;
        }
        if (!met) {
            return Found.none(now >= 0 ? End.ALWAYS_MET : End.TOO_HOT);
        }
        return narrow(model, state, fromRest ? Optional.empty() : Optional.of(near), low, high, atLow, atHigh, stop);
    }

    private static Found narrow(ThermalModel model, ThermalState state, Optional<ThermalState> start, double from, double to, double atFrom,
            double atTo, BooleanSupplier stop) {
        List<ThermalState> last = new ArrayList<>();
        RootSearch root = RootSearch.between(exponent -> {
            Optional<ThermalState> there = at(model, state, Math.exp(exponent), start.isPresent() && !last.isEmpty()
                    ? Optional.of(last.getLast()) : start, stop);
            there.ifPresent(last::add);
            return there.isEmpty() ? Double.NaN : margin(model, there.get()).orElse(Double.NaN);
        }, Math.log(from), Math.log(to), atFrom, atTo, NARROW, JUST_MET);
        if (Double.isNaN(root.value())) {
            return Found.none(End.LOST);
        }
        Optional<ThermalState> there = last.isEmpty() ? at(model, state, Math.exp(root.at()), start, stop) : Optional.of(last.getLast());
        return there.map(found -> new Found(Optional.of(answer(model, found, Math.exp(root.at()))), End.NOTHING_TO_FIND))
                .orElseGet(() -> Found.none(End.LOST));
    }

    private static Optional<ThermalState> at(ThermalModel model, ThermalState state, double factor, Optional<ThermalState> near,
            BooleanSupplier stop) {
        Loop loop = model.at(state.drive().faster(factor), near, stop);
        return loop.state().filter(there -> there.balance().unbounded().isEmpty());
    }

    private static Backwards answer(ThermalModel model, ThermalState there, double factor) {
        PartState worst = worst(model, there).orElseThrow();
        double limit = limit(model, worst.source()).getAsDouble();
        Map<String, Double> speeds = new LinkedHashMap<>();
        there.point().banks().forEach(bank -> speeds.put(bank.bank(), bank.speed()));
        double outside = model.condition().temperature();
        double density = model.path().outside().density();
        double sources = model.parts().list().stream().mapToDouble(Parts.Part::heat).sum();
        return new Backwards(worst, intake(model, there.point()) / density,
                sources / (density * model.path().outside().specificHeat() * (limit - outside)), speeds, factor, there);
    }

    /** The limit of a source, K. */
    static OptionalDouble limit(ThermalModel model, String source) {
        return model.parts().list().stream().map(Parts.Part::source).filter(each -> each.id().equals(source))
                .map(HeatSource::limit).flatMap(Optional::stream).mapToDouble(Quantity::si).findFirst();
    }

    /** The part with the least margin. */
    static Optional<PartState> worst(ThermalModel model, ThermalState state) {
        return state.parts().stream().filter(part -> part.junction().isPresent() && limit(model, part.source()).isPresent())
                .min(Comparator.comparingDouble(part -> limit(model, part.source()).getAsDouble() - part.junction().getAsDouble()));
    }

    /** The least margin of all parts that have a limit, K. */
    static OptionalDouble margin(ThermalModel model, ThermalState state) {
        return worst(model, state).map(part -> OptionalDouble.of(
                limit(model, part.source()).getAsDouble() - part.junction().getAsDouble())).orElse(OptionalDouble.empty());
    }

    /** Mass flow of all air that comes in from outside, kg/s; what a bank blows back in does not count. */
    static double intake(ThermalModel model, OperatingPoint point) {
        double sum = 0;
        for (OperatingPoint.PassageFlow flow : point.passages()) {
            Passage passage = model.path().passage(flow.passage());
            if (passage.from().equals(Bay.OUTSIDE) && passage.to().equals(Bay.OUTSIDE)) {
                sum += Math.abs(flow.massFlow());
            } else if (passage.from().equals(Bay.OUTSIDE)) {
                sum += Math.max(0, flow.massFlow());
            } else if (passage.to().equals(Bay.OUTSIDE) && !passage.isBank()) {
                sum += Math.max(0, -flow.massFlow());
            }
        }
        return sum;
    }
}
