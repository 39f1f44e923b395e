package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import tramontane.analysis.OperatingPoint;
import tramontane.model.Bay;
import tramontane.model.Passage;

/**
 * How much of the air that a bank draws has been through it before: air that leaves the bank is marked, mixes in every bay
 * with what else comes in, and what of it comes back to the bank's inlet is the share. Balance of the marked air over bays.
 */
final class Recirculation {

    private static final int MOST_SWEEPS = 20000;

    private record Stream(String from, String to, double massFlow, boolean marked) {
    }

    private Recirculation() {
    }

    /**
     * The share, 0 to 1.
     *
     * @param point   the solved air path
     * @param bank    id of the bank
     * @param passage passages by id
     * @return empty where the air goes round for ever, or nothing flows
     */
    static OptionalDouble of(OperatingPoint point, String bank, Function<String, Passage> passage) {
        List<Stream> streams = new ArrayList<>();
        String inlet = "";
        for (OperatingPoint.PassageFlow flow : point.passages()) {
            Passage way = passage.apply(flow.passage());
            boolean forwards = flow.massFlow() >= 0;
            boolean marked = flow.passage().equals(bank);
            if (flow.massFlow() != 0) {
                streams.add(new Stream(forwards ? way.from() : way.to(), forwards ? way.to() : way.from(),
                        Math.abs(flow.massFlow()), marked));
            }
            if (marked) {
                inlet = forwards ? way.from() : way.to();
            }
        }
        Map<String, Double> share = new HashMap<>();
        for (int sweep = 0; sweep < MOST_SWEEPS; sweep++) {
            Map<String, double[]> sums = new HashMap<>();
            for (Stream stream : streams) {
                double[] sum = sums.computeIfAbsent(stream.to(), bay -> new double[2]);
                double carried = stream.marked() ? 1 : stream.from().equals(Bay.OUTSIDE) ? 0
                        : share.getOrDefault(stream.from(), 0.0);
                sum[0] += stream.massFlow();
                sum[1] += stream.massFlow() * carried;
            }
            double moved = 0;
            for (Map.Entry<String, double[]> each : sums.entrySet()) {
                double now = each.getValue()[1] / each.getValue()[0];
                Double before = share.put(each.getKey(), now);
                moved = Math.max(moved, Math.abs(now - (before == null ? 0 : before)));
            }
            if (moved <= 1e-10) {
                return inlet.equals(Bay.OUTSIDE) || inlet.isEmpty() ? OptionalDouble.of(0)
                        : OptionalDouble.of(share.getOrDefault(inlet, 0.0));
            }
        }
        return OptionalDouble.empty();
    }
}
