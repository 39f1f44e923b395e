package tramontane.thermal.internal.time;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Keeps what is shown of a history: as many times as charts need. */
final class Recorder {

    private final int bays;
    private final int parts;
    private final int banks;
    private final List<double[]> rows = new ArrayList<>();
    private final List<Boolean> marked = new ArrayList<>();

    /**
     * An empty one.
     *
     * @param bays  number of bays
     * @param parts number of parts
     * @param banks number of banks
     */
    Recorder(int bays, int parts, int banks) {
        this.bays = bays;
        this.parts = parts;
        this.banks = banks;
    }

    /**
     * Takes the values at a time.
     *
     * @param mark whether it is kept in any case
     */
    void add(double time, Network.Reading reading, double[] settings, double[] flows, boolean mark) {
        double[] row = new double[1 + bays + parts + 2 * banks];
        row[0] = time;
        System.arraycopy(reading.bay(), 0, row, 1, bays);
        System.arraycopy(reading.junction(), 0, row, 1 + bays, parts);
        System.arraycopy(settings, 0, row, 1 + bays + parts, banks);
        System.arraycopy(flows, 0, row, 1 + bays + parts + banks, banks);
        rows.add(row);
        marked.add(mark);
    }

    /** Leaves out times until few enough are left: half of them even in time, half where much changes. */
    void thin(int most) {
        if (rows.size() <= most) {
            return;
        }
        double[] length = new double[rows.size()];
        for (int i = 1; i < length.length; i++) {
            length[i] = length[i - 1] + moved(rows.get(i - 1), rows.get(i));
        }
        double duration = rows.getLast()[0] - rows.getFirst()[0];
        double whole = Math.max(length[length.length - 1], Double.MIN_NORMAL);
        long marks = marked.stream().filter(each -> each).count();
        double parts = Math.max(2, most - marks - 1);
        List<double[]> left = new ArrayList<>();
        double last = -1;
        for (int i = 0; i < length.length; i++) {
            double part = Math.floor(parts * 0.5 * ((rows.get(i)[0] - rows.getFirst()[0]) / duration + length[i] / whole));
            if (part > last || marked.get(i)) {
                left.add(rows.get(i));
                last = part;
            }
        }
        rows.clear();
        rows.addAll(left);
        marked.clear();
    }

    /** The largest change, K; of settings as if they were 100 K. */
    private double moved(double[] from, double[] to) {
        double most = 0;
        for (int i = 1; i <= bays + parts; i++) {
            double change = Math.abs(to[i] - from[i]);
            most = Math.max(most, Double.isNaN(change) ? Double.isNaN(to[i]) == Double.isNaN(from[i]) ? 0 : 1 : change);
        }
        for (int i = 1 + bays + parts; i <= bays + parts + banks; i++) {
            most = Math.max(most, 100 * Math.abs(to[i] - from[i]));
        }
        return most;
    }

    List<Double> times() {
        return rows.stream().map(row -> row[0]).toList();
    }

    private Map<String, List<Double>> series(List<String> ids, int first) {
        Map<String, List<Double>> all = new LinkedHashMap<>();
        for (int i = 0; i < ids.size(); i++) {
            int column = first + i;
            all.put(ids.get(i), rows.stream().map(row -> row[column]).toList());
        }
        return all;
    }

    Map<String, List<Double>> bays(List<String> ids) {
        return series(ids, 1);
    }

    Map<String, List<Double>> junctions(List<String> ids) {
        return series(ids, 1 + bays);
    }

    Map<String, List<Double>> settings(List<String> ids) {
        return series(ids, 1 + bays + parts);
    }

    Map<String, List<Double>> flows(List<String> ids) {
        return series(ids, 1 + bays + parts + banks);
    }
}
