package tramontane.thermal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import tramontane.analysis.Sentence;
import tramontane.model.Design;

/** A cabinet of many bays and components, drawn at random from a seed. */
public final class LargeDesign {

    private LargeDesign() {
    }

    /**
     * Columns of bays that air goes up through, joined sideways, drawn out at the top by a bank each.
     *
     * @param columns    columns of bays
     * @param rows       bays in each
     * @param components in them
     * @param law        whether a control law sets the speed
     * @param walls      whether the outer bays have walls
     */
    public static Design of(int columns, int rows, int components, boolean law, boolean walls, long seed) {
        Random random = new Random(seed);
        List<String> bays = new ArrayList<>();
        List<String> passages = new ArrayList<>();
        for (int c = 0; c < columns; c++) {
            for (int r = 0; r < rows; r++) {
                bays.add(String.format(Locale.ROOT, "{'id': 'b%d-%d', 'height': '%d mm', 'sections': {'enclosure': {'flowArea': '0.02 m²'%s%s}}}", c, r,
                        200 * r, r % 4 == 0 ? ", 'chassisHeatCapacity': '900 J/K', 'chassisConductance': '4 W/K'" : "",
                        walls && (c == 0 || c == columns - 1) ? ", 'walls': [{'area': '0.06 m²'}]" : ""));
                passages.add(String.format(Locale.ROOT, "{'id': 'p%d-%d', 'kind': 'opening', 'from': '%s', 'to': 'b%d-%d', 'area': '%d cm²'}", c, r,
                        r == 0 ? "outside" : "b" + c + "-" + (r - 1), c, r, 60 + random.nextInt(60)));
                if (c > 0 && r % 3 == 1) {
                    passages.add(String.format(Locale.ROOT, "{'id': 's%d-%d', 'kind': 'opening', 'from': 'b%d-%d', 'to': 'b%d-%d', 'area': '10 cm²'}",
                            c, r, c - 1, r, c, r));
                }
            }
            passages.add(String.format(Locale.ROOT, "{'id': 'fan%d', 'kind': 'bank', 'from': 'b%d-%d', 'to': 'outside', 'mover': 'F', 'across': 2}", c, c, rows - 1));
        }
        List<String> sources = new ArrayList<>();
        for (int k = 0; k < components; k++) {
            sources.add(String.format(Locale.ROOT, "{'id': 'part%d', 'power': '%d W', 'into': ['b%d-%d'], 'row': %d, 'limit': '85 °C', 'chain': ["
                    + "{'kind': 'junction to case', 'resistance': '0.3 K/W', 'heatCapacity': '%d J/K'}, {'kind': 'resistance',"
                    + " 'resistance': '%.2f K/W', 'reference': 'mean air', 'heatCapacity': '%d J/K'}]}", k, 5 + random.nextInt(20), k % columns,
                    k / columns % rows, 1 + random.nextInt(3), 2 + random.nextInt(20), 0.5 + random.nextDouble(), 50 + random.nextInt(400)));
        }
        return Designs.design("{'format': 1, 'airMovers': [{'id': 'F', 'width': '80 mm', 'height': '80 mm', 'curves': [{'speed': '3000 rpm',",
                "'flow': '0 0.01 0.02 0.03 0.04 0.05 m³/s', 'pressure': '80 78 70 54 30 0 Pa', 'power': '6 6.5 7 7.2 7 6.4 W'}]}],",
                "'airPath': {'bays': [" + String.join(",", bays) + "], 'passages': [" + String.join(",", passages) + "]},",
                law ? "'controlLaws': [{'id': 'fans', 'sensor': 'part0', 'temperature': '30 60 °C', 'speed': '30 100 %', 'hysteresis': '2 K'}]," : "",
                "'heatSources': [" + String.join(",", sources) + "]}");
    }

    /** Says how long an hour takes. */
    public static void main(String[] arguments) {
        java.lang.management.ThreadMXBean threads = java.lang.management.ManagementFactory.getThreadMXBean();
        for (boolean law : new boolean[] {false, true}) {
            for (boolean walls : new boolean[] {false, true}) {
                Design design = of(10, 10, 200, law, walls, 1);
                for (int i = 0; i < 12; i++) {
                    ThermalModel model = Designs.model(design);
                    long start = threads.getCurrentThreadCpuTime();
                    Transient outcome = Transient.of(List.of(new Transient.Step(0, model, Sentence.of("start"))), Transient.Start.COLD, 3600, () -> false);
                    long end = threads.getCurrentThreadCpuTime();
                    History history = outcome.history().orElseThrow(() -> new IllegalStateException(outcome.obstacles().toString()));
                    double far = history.parts().stream().mapToDouble(part -> Math.abs(part.end() - part.steady().orElseThrow())).max().orElseThrow();
                    System.out.printf("law %s walls %s: %.3f s of processor time, %d times kept, end %.2g K from steady, settled %d, bays to %.1f °C, parts to %.1f °C %s%n", law, walls,
                            (end - start) * 1e-9, history.times().size(), far, history.settled().size(),
                            history.bays().values().stream().mapToDouble(each -> each.getLast()).max().orElseThrow() - 273.15,
                            history.parts().stream().mapToDouble(History.Course::peak).max().orElseThrow() - 273.15, history.remarks());
                }
            }
        }
    }
}
