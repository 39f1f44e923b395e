package tramontane.thermal.internal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.BooleanSupplier;
import tramontane.model.AirMover;
import tramontane.model.MoverCurve;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.model.Value;
import tramontane.thermal.Drive;
import tramontane.thermal.Loop;
import tramontane.thermal.PartState;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalState;

/**
 * How far temperatures may lie from what was found, by the tolerances of flow, heat and resistances.
 *
 * <p>Each tolerance by itself is taken to its two ends; what they change adds up, as if every one were at its worst at once.
 * Tolerances of pressure go through the whole loop, those of heat through the air at the flow that was found, those of links
 * along their chain. Some samples of all together, always the same ones, widen bounds that they go beyond.
 *
 * @param junction by heat source: lowest and highest junction temperature, K
 * @param local    by heat source: lowest and highest temperature of the air at it, K
 * @param bays     by bay in the order of the design: lowest and highest temperature, K
 * @param stated   what the tolerances belong to, with their size and the most that each moves a junction
 * @param without  ends and samples for which the loop has no answer
 */
record Bounds(Map<String, Band> junction, Map<String, Band> local, List<Band> bays, Map<String, Effect> stated, int without) {

    private static final int SAMPLES = 6;

    /** A relative tolerance and the kelvin by which it moves a junction at most. */
    record Effect(double tolerance, double kelvin) {
    }

    /** Lowest and highest. */
    record Band(double low, double high) {
        boolean wide() {
            return high - low > 1e-9 * Math.abs(high);
        }
    }

    /** Everything that moves: junctions, then air at parts, then bays. */
    private static double[] values(ThermalState state, double[][] links) {
        int n = state.parts().size();
        double[] values = new double[2 * n + state.temperatures().size()];
        for (int k = 0; k < n; k++) {
            PartState part = state.parts().get(k);
            double junction = part.fault().isPresent() ? Double.NaN : part.air();
            for (int i = 0; i < part.links().size(); i++) {
                junction += part.links().get(i).rise() * (links == null ? 1 : 1 + links[k][i]);
            }
            values[k] = junction;
            values[n + k] = part.air();
        }
        for (int i = 0; i < state.temperatures().size(); i++) {
            values[2 * n + i] = state.temperatures().get(i);
        }
        return values;
    }

    /** Bounds of a state, whose control laws act on what changes, too. */
    static Bounds of(ThermalModel model, ThermalState state, BooleanSupplier stop) {
        return new Search(model, state, stop).run();
    }

    private static final class Search {
        private final ThermalModel model;
        private final ThermalState state;
        private final BooleanSupplier stop;
        private final double[] value;
        private final double[] below;
        private final double[] above;
        private int without;

        Search(ThermalModel model, ThermalState state, BooleanSupplier stop) {
            this.model = model;
            this.state = state;
            this.stop = stop;
            value = values(state, null);
            below = new double[value.length];
            above = new double[value.length];
        }

        Bounds run() {
            Map<String, Double> flows = pressures();
            Map<String, Effect> stated = new LinkedHashMap<>();
            flows.forEach((id, tolerance) -> {
                stated.put(id, new Effect(tolerance, moves(at(Map.of(id, 1 - tolerance)), at(Map.of(id, 1 + tolerance)))));
            });
            List<Parts.Part> parts = model.parts().list();
            double[] heat = new double[parts.size()];
            for (int k = 0; k < heat.length; k++) {
                heat[k] = parts.get(k).source().tolerance().map(Quantity::si).orElse(0.0);
                if (heat[k] > 0 && parts.get(k).heat() > 0) {
                    stated.put("heat of " + parts.get(k).source().id(), new Effect(heat[k], moves(
                            Optional.of(values(heated(state, k, 1 - heat[k]), null)),
                            Optional.of(values(heated(state, k, 1 + heat[k]), null)))));
                }
            }
            for (int k = 0; k < heat.length; k++) {
                for (PartState.LinkState link : state.parts().get(k).links()) {
                    if (link.tolerance() > 0) {
                        stated.put(link.kind() + " of " + state.parts().get(k).source(), new Effect(link.tolerance(), link.rise() * link.tolerance()));
                        below[k] += link.rise() * link.tolerance();
                        above[k] += link.rise() * link.tolerance();
                    }
                }
            }
            if (!stated.isEmpty()) {
                samples(flows, heat);
            }
            return bounds(stated);
        }

        private ThermalState heated(ThermalState at, int k, double factor) {
            return model.balancing().state(at.point(), model.parts().scaled(k, factor));
        }

        /** Adds what the two ends of one tolerance change; gives the most that it moves a junction, K. */
        private double moves(Optional<double[]> low, Optional<double[]> high) {
            double most = 0;
            for (int i = 0; i < value.length; i++) {
                double down = 0;
                double up = 0;
                for (Optional<double[]> end : List.of(low, high)) {
                    if (end.isPresent() && !Double.isNaN(end.get()[i])) {
                        down = Math.max(down, value[i] - end.get()[i]);
                        up = Math.max(up, end.get()[i] - value[i]);
                    }
                }
                below[i] += down;
                above[i] += up;
                most = i < state.parts().size() ? Math.max(most, Math.max(down, up)) : most;
            }
            return most;
        }

        private Optional<double[]> at(Map<String, Double> pressure) {
            Optional<ThermalState> there = settle(pressure);
            return there.map(each -> values(each, null));
        }

        private Optional<ThermalState> settle(Map<String, Double> pressure) {
            Loop loop = model.settle(new Drive(Map.of(), 1, pressure), Optional.of(state), stop);
            without += loop.state().isPresent() ? 0 : 1;
            return loop.state();
        }

        private void samples(Map<String, Double> flows, double[] heat) {
            Random random = new Random(1);
            for (int s = 0; s < SAMPLES && !stop.getAsBoolean(); s++) {
                boolean corner = s < 2; // all cold, all hot
                double sign = s == 0 ? -1 : 1;
                Map<String, Double> pressure = new LinkedHashMap<>();
                flows.forEach((id, tolerance) -> {
                    // hot: movers weak, passages tight
                    double end = model.path().passage(id).isBank() ? -sign : sign;
                    pressure.put(id, 1 + tolerance * (corner ? end : 2 * random.nextDouble() - 1));
                });
                Optional<ThermalState> there = flows.isEmpty() ? Optional.of(state) : settle(pressure);
                if (there.isEmpty()) {
                    continue;
                }
                Parts parts = model.parts();
                double[][] links = new double[heat.length][];
                for (int k = 0; k < heat.length; k++) {
                    parts = parts.scaled(k, 1 + heat[k] * (corner ? sign : 2 * random.nextDouble() - 1));
                    // not those of the state, which has none where air stands
                    List<Parts.Item> chain = parts.list().get(k).chain();
                    links[k] = new double[chain.size()];
                    for (int i = 0; i < links[k].length; i++) {
                        links[k][i] = chain.get(i).link().tolerance().map(Quantity::si).orElse(0.0) * (corner ? sign : 2 * random.nextDouble() - 1);
                    }
                }
                double[] sample = values(model.balancing().state(there.get().point(), parts), links);
                for (int i = 0; i < value.length; i++) {
                    if (!Double.isNaN(sample[i])) {
                        below[i] = Math.max(below[i], value[i] - sample[i]);
                        above[i] = Math.max(above[i], sample[i] - value[i]);
                    }
                }
            }
        }

        /** Relative tolerances of pressure at equal flow, by passage. */
        private Map<String, Double> pressures() {
            Map<String, Double> tolerances = new LinkedHashMap<>();
            for (Passage passage : model.path().passages()) {
                double tolerance = passage.isBank() ? ofCurves(passage) : passage.tolerance().map(Quantity::si).orElse(0.0);
                if (tolerance > 0) {
                    tolerances.put(passage.id(), tolerance);
                }
            }
            return tolerances;
        }

        private double ofCurves(Passage bank) {
            return bank.parameters().get("mover").filter(Value.Text.class::isInstance).map(value -> ((Value.Text) value).text())
                    .flatMap(model.design()::airMover).map(AirMover::curves).stream().flatMap(List::stream)
                    .map(MoverCurve::tolerance).flatMap(Optional::stream).mapToDouble(Quantity::si).max().orElse(0);
        }

        private Bounds bounds(Map<String, Effect> stated) {
            int n = state.parts().size();
            Map<String, Band> junction = new HashMap<>();
            Map<String, Band> local = new HashMap<>();
            List<Band> bays = new ArrayList<>();
            for (int k = 0; k < n; k++) {
                junction.put(state.parts().get(k).source(), band(k));
                local.put(state.parts().get(k).source(), band(n + k));
            }
            for (int i = 0; i < state.temperatures().size(); i++) {
                bays.add(band(2 * n + i));
            }
            return new Bounds(junction, local, bays, stated, without);
        }

        private Band band(int i) {
            return new Band(value[i] - below[i], value[i] + above[i]);
        }
    }
}
