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
import tramontane.thermal.PartState;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalState;

/**
 * The flow at which the part that is worst just meets its limit, and the speed of the banks that gives it. Where no bank runs, all
 * flows that there are, as by buoyancy, are taken in one proportion, as if something moved the air along the same ways.
 *
 * @param worst    the part that is worst there
 * @param flow     flow from outside, m³/s at the density outside
 * @param estimate the same by heat / (density × specific heat × (limit - outside)), m³/s
 * @param speeds   speed of each bank, rad/s; empty where none runs
 * @param factor   speed, or flow where no bank runs, over the one that there is
 * @param state    the state there
 */
record Backwards(PartState worst, double flow, double estimate, Map<String, Double> speeds, double factor, ThermalState state) {

    /** Slowest and fastest speed that is tried, over the one that it works at. */
    static final double SLOWEST = 0.02;
    static final double FASTEST = 8;
    /** Least and most flow that is tried where no bank runs, over the one that there is. */
    private static final double LEAST = 1e-3;
    private static final double MOST = 1e4;
    /** Margin at which a limit counts as just met, K. */
    private static final double JUST_MET = 1e-6;
    /** Ratio of speeds that counts as none. */
    private static final double NARROW = 1e-12;

    /** How the search ended without an answer. */
    enum End {
        /** No part has a limit and a temperature, or no air moves. */
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
        if (untold || margin(model, state).isEmpty() || !runs && !(intake(model, state.point()) > 0)) {
            return Found.none(End.NOTHING_TO_FIND);
        }
        if (!runs) {
            return new Search(model, state, (factor, near) -> Optional.of(model.at(times(state.point(), factor))), LEAST, MOST, false).run();
        }
        Change speed = (factor, near) -> model.at(state.drive().faster(factor), near, stop).state();
        Found found = new Search(model, state, speed, SLOWEST, FASTEST, false).run();
        // a state that has stalled may hold the search where air from rest would not stay
        return found.end() == End.TOO_HOT || found.end() == End.LOST ? new Search(model, state, speed, SLOWEST, FASTEST, true).run() : found;
    }

    /** The first estimate of the flow by the lowest limit, m³/s; empty where no limit lies above outside. */
    static OptionalDouble estimate(ThermalModel model) {
        return model.parts().list().stream().flatMap(part -> part.source().limit().stream()).mapToDouble(Quantity::si).min()
                .stream().map(limit -> estimate(model, limit)).filter(flow -> flow > 0 && Double.isFinite(flow)).findFirst();
    }

    private static double estimate(ThermalModel model, double limit) {
        double sources = model.parts().list().stream().mapToDouble(Parts.Part::heat).sum();
        return sources / (model.path().outside().density() * model.path().outside().specificHeat() * (limit - model.condition().temperature()));
    }

    /** The state with something changed by a factor, from a state that is near. */
    @FunctionalInterface
    private interface Change {
        Optional<ThermalState> at(double factor, Optional<ThermalState> near);
    }

    /** The least margin of a state, K; far below 0 where air has no bound, NaN where there is no state or no part to judge. */
    private static double margin(ThermalModel model, Optional<ThermalState> there) {
        return there.isEmpty() ? Double.NaN : there.get().balance().unbounded().isEmpty() ? margin(model, there.get()).orElse(Double.NaN)
                : -Balancing.HIGHEST;
    }

    /** All flows times a factor. */
    private static OperatingPoint times(OperatingPoint point, double factor) {
        return new OperatingPoint(point.banks().stream().map(bank -> new OperatingPoint.BankPoint(bank.bank(), factor * bank.flow(),
                factor * bank.massFlow(), bank.pressure(), bank.speed(), bank.power(), bank.temperature(), bank.density(), bank.stable(),
                bank.movers().stream().map(mover -> new OperatingPoint.MoverPoint(mover.position(), mover.running(), factor * mover.flow(),
                        mover.pressure(), mover.speed(), mover.power())).toList(), bank.setting())).toList(),
                point.passages().stream().map(flow -> new OperatingPoint.PassageFlow(flow.passage(), factor * flow.massFlow(),
                        factor * flow.flow(), flow.drop())).toList(), point.bays());
    }

    /** One search. */
    private record Search(ThermalModel model, ThermalState state, Change change, double least, double most, boolean fromRest) {

        Found run() {
            double now = margin(model, Optional.of(state));
            // margins rise with speed; bracketed in the logarithm, along which they are nearly straight
            double low = now >= 0 ? least : 1;
            double high = now >= 0 ? 1 : most;
            ThermalState near = state;
            double atLow = now;
            double atHigh = now;
            double step = now >= 0 ? 0.5 : 2;
            double bound = 1;
            boolean met = false;
            while (!met && bound > least && bound < most) {
                double next = Math.max(least, Math.min(most, bound * step));
                Optional<ThermalState> there = change.at(next, fromRest ? Optional.empty() : Optional.of(near));
                double margin = margin(model, there);
                if (Double.isNaN(margin)) {
                    return Found.none(End.LOST);
                }
                near = there.get();
                met = now >= 0 ? margin < 0 : margin >= 0;
                if (now >= 0) {
                    high = met ? bound : next;
                    atHigh = met ? atHigh : margin;
                    low = next;
                    atLow = margin;
                } else {
                    low = met ? bound : next;
                    atLow = met ? atLow : margin;
                    high = next;
                    atHigh = margin;
                }
                bound = next;
            }
            if (!met) {
                return Found.none(now >= 0 ? End.ALWAYS_MET : End.TOO_HOT);
            }
            return narrow(fromRest ? Optional.empty() : Optional.of(near), low, high, atLow, atHigh);
        }

        private Found narrow(Optional<ThermalState> start, double from, double to, double atFrom, double atTo) {
            List<ThermalState> last = new ArrayList<>();
            RootSearch root = RootSearch.between(exponent -> {
                Optional<ThermalState> there = change.at(Math.exp(exponent), start.isPresent() && !last.isEmpty()
                        ? Optional.of(last.getLast()) : start);
                there.ifPresent(last::add);
                return margin(model, there);
            }, Math.log(from), Math.log(to), atFrom, atTo, NARROW, JUST_MET);
            if (Double.isNaN(root.value())) {
                return Found.none(End.LOST);
            }
            Optional<ThermalState> there = last.isEmpty() ? change.at(Math.exp(root.at()), start) : Optional.of(last.getLast());
            return there.map(found -> new Found(Optional.of(answer(model, found, Math.exp(root.at()))), End.NOTHING_TO_FIND))
                    .orElseGet(() -> Found.none(End.LOST));
        }
    }

    private static Backwards answer(ThermalModel model, ThermalState there, double factor) {
        PartState worst = worst(model, there).orElseThrow();
        Map<String, Double> speeds = new LinkedHashMap<>();
        there.point().banks().stream().filter(bank -> bank.speed() > 0).forEach(bank -> speeds.put(bank.bank(), bank.speed()));
        return new Backwards(worst, intake(model, there.point()) / model.path().outside().density(),
                estimate(model, limit(model, worst.source()).getAsDouble()), speeds, factor, there);
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
