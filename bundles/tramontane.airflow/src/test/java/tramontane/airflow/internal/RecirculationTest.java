package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tramontane.analysis.OperatingPoint;
import tramontane.model.Passage;
import tramontane.model.Value;

/** By hand: what leaves, what comes back. */
class RecirculationTest {

    private static Passage way(String id, String from, String to) {
        return new Passage(id, "opening", from, to, Value.Tree.EMPTY);
    }

    private static double share(Map<Passage, Double> flows) {
        OperatingPoint point = new OperatingPoint(List.of(), flows.entrySet().stream().map(each ->
                new OperatingPoint.PassageFlow(each.getKey().id(), each.getValue(), each.getValue(), 0)).toList(), List.of());
        return Recirculation.of(point, "fans", id -> flows.keySet().stream().filter(way -> way.id().equals(id)).findFirst()
                .orElseThrow()).orElse(Double.NaN);
    }

    /** 10 through the bank, 3 of it back by a slit, 7 fresh: three tenths. */
    @Test
    void aThirdOfTheWayBack() {
        assertEquals(0.3, share(Map.of(way("fans", "in", "out"), 10.0, way("exhaust", "out", "outside"), 7.0,
                way("slit", "out", "in"), 3.0, way("inlet", "outside", "in"), 7.0)), 1e-9);
    }

    @Test
    void directionsAsDefinedDoNotMatter() {
        assertEquals(0.3, share(Map.of(way("fans", "out", "in"), -10.0, way("exhaust", "outside", "out"), -7.0,
                way("slit", "in", "out"), -3.0, way("inlet", "outside", "in"), 7.0)), 1e-9);
    }

    /** Half of 4 that come back goes off on the way: 2 of 10. */
    @Test
    void whatIsLostOnTheWayDoesNotCount() {
        assertEquals(0.2, share(Map.of(way("fans", "in", "out"), 10.0, way("exhaust", "out", "outside"), 6.0,
                way("hood", "out", "mid"), 4.0, way("leak", "mid", "outside"), 2.0, way("back", "mid", "in"), 2.0,
                way("inlet", "outside", "in"), 8.0)), 1e-9);
    }

    /** Outside air in the mixing bay: 4 marked and 4 fresh mix, 2 of the 8 come back: 1 of 10. */
    @Test
    void freshAirThinsIt() {
        assertEquals(0.1, share(Map.of(way("fans", "in", "out"), 10.0, way("exhaust", "out", "outside"), 6.0,
                way("hood", "out", "mid"), 4.0, way("draught", "outside", "mid"), 4.0, way("leak", "mid", "outside"), 6.0,
                way("back", "mid", "in"), 2.0, way("inlet", "outside", "in"), 8.0)), 1e-9);
    }

    @Test
    void airThatGoesStraightThroughNeverComesBack() {
        assertEquals(0, share(Map.of(way("inlet", "outside", "in"), 5.0, way("fans", "in", "outside"), 5.0)), 0);
        assertEquals(0, share(Map.of(way("fans", "outside", "in"), 5.0, way("outlet", "in", "outside"), 5.0)), 0);
    }

    @Test
    void aClosedRoundComesBackWhole() {
        assertTrue(share(Map.of(way("fans", "in", "out"), 5.0, way("back", "out", "in"), 5.0)) > 0.999999);
    }
}
