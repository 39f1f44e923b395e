package tramontane.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import tramontane.analysis.OperatingPoint;
import tramontane.model.Design;
import tramontane.thermal.internal.Parts;

/** What must hold whatever the design. */
class ThermalPropertiesTest {

    private static double outside(ThermalModel model) {
        return model.condition().temperature();
    }

    /**
     * Where it settles. Some three in a thousand have no state of rest: in a way that hardly any air takes, how warm that air is
     * decides which way it goes, and that how warm it is. They must say so.
     */
    private static ThermalState settled(Design design) {
        Loop loop = Designs.model(design).settle(() -> false);
        assertTrue(loop.state().isPresent() || loop.cycle().size() == 2 && loop.obstacles().isEmpty());
        Assume.that(loop.state().isPresent());
        return loop.state().get();
    }

    @Property(tries = 150)
    void energyCloses(@ForAll int seed) {
        ThermalState state = settled(RandomDesigns.wild(seed));
        double heat = state.balance().sources() + state.balance().movers();
        if (state.temperatures().stream().noneMatch(each -> each.isNaN())) {
            assertEquals(heat, state.balance().toAir() + state.balance().toWalls(), 1e-9 * heat);
        } else {
            assertFalse(state.balance().unbounded().isEmpty());
        }
    }

    /** Also of each bay by itself: what comes with the air, what is put in, what leaves. */
    @Property(tries = 100)
    void everyBayIsInBalance(@ForAll int seed) {
        Design design = RandomDesigns.wild(seed);
        ThermalModel model = Designs.model(design);
        ThermalState state = settled(design);
        double cp = model.path().outside().specificHeat();
        double total = state.balance().sources() + state.balance().movers();
        double[] put = model.parts().heat();
        int bays = state.temperatures().size();
        for (int i = 0; i < bays; i++) {
            String id = design.airPath().bays().get(i).id();
            double sum = put[i];
            for (int p = 0; p < state.point().passages().size(); p++) {
                OperatingPoint.PassageFlow flow = state.point().passages().get(p);
                var passage = design.airPath().passages().get(p);
                String up = flow.massFlow() >= 0 ? passage.from() : passage.to();
                String down = flow.massFlow() >= 0 ? passage.to() : passage.from();
                double comes = up.equals("outside") ? outside(model) : state.temperatures().get(Integer.parseInt(up.substring(1)));
                if (down.equals(id) && flow.massFlow() != 0) {
                    sum += Math.abs(flow.massFlow()) * cp * (comes - state.temperatures().get(i)) + put[bays + p]
                            + state.point().bank(flow.passage()).map(bank -> bank.power().orElse(0)).orElse(0.0);
                } else if (flow.massFlow() == 0 && (up.equals(id) || down.equals(id))) {
                    sum += put[bays + p] / 2;
                }
            }
            if (!Double.isNaN(sum)) {
                assertEquals(0, sum, 1e-6 * (total + 1), "bay " + id);
            }
        }
    }

    @Property(tries = 60)
    void temperaturesFallWithSpeed(@ForAll int seed) {
        Design design = RandomDesigns.row(seed);
        ThermalModel model = Designs.model(design);
        List<Double> before = null;
        for (double speed : new double[] {0.4, 0.7, 1, 1.4}) {
            List<Double> now = model.at(new Drive(Map.of(), speed, Map.of()), Optional.empty(), () -> false).state().orElseThrow().temperatures();
            for (int i = 0; before != null && i < now.size(); i++) {
                if (before.get(i) > outside(model) + 1e-6) {
                    assertTrue(now.get(i) < before.get(i), "bay " + i + " at " + speed + ": " + now + " after " + before);
                }
            }
            before = now;
        }
    }

    @Property(tries = 100)
    void atFixedFlowTemperaturesRiseWithTheHeatOfEachSource(@ForAll int seed) {
        Design design = RandomDesigns.wild(seed);
        ThermalModel model = Designs.model(design);
        ThermalState state = settled(design);
        for (int k = 0; k < model.parts().list().size(); k++) {
            ThermalState more = model.balancing().state(state.point(), model.parts().scaled(k, 1.5));
            for (int i = 0; i < state.temperatures().size(); i++) {
                assertTrue(!(more.temperatures().get(i) < state.temperatures().get(i) - 1e-9));
            }
            for (int j = 0; j < state.parts().size(); j++) {
                PartState before = state.parts().get(j);
                PartState after = more.parts().get(j);
                assertTrue(before.fault().isEmpty() || after.fault().isPresent(), "more heat gives no temperature where there was none");
                if (after.fault().isEmpty()) {
                    double rise = after.junction().orElseThrow() - before.junction().orElseThrow();
                    assertTrue(j == k ? rise > 0 : rise >= -1e-9, "rise " + rise);
                }
            }
        }
    }

    @Property(tries = 100)
    void atFixedFlowHeatsSuperpose(@ForAll int seed) {
        Design design = RandomDesigns.plain(seed, 1);
        ThermalModel model = Designs.model(design);
        ThermalState state = settled(design);
        int n = model.parts().list().size();
        double[] sum = new double[state.temperatures().size() + n];
        for (int k = 0; k < n; k++) {
            Parts alone = model.parts();
            for (int j = 0; j < n; j++) {
                alone = j == k ? alone : alone.scaled(j, 0);
            }
            add(sum, model.balancing().state(state.point(), alone), outside(model));
        }
        double[] whole = new double[sum.length];
        add(whole, state, outside(model));
        for (int i = 0; i < sum.length; i++) {
            assertTrue(Double.isNaN(whole[i]) || Math.abs(whole[i] - sum[i]) <= 1e-9 * (1 + Math.abs(whole[i])),
                    "expected " + whole[i] + ", got " + sum[i]);
        }
    }

    private static void add(double[] sum, ThermalState state, double outside) {
        int bays = state.temperatures().size();
        for (int i = 0; i < bays; i++) {
            sum[i] += state.temperatures().get(i) - outside;
        }
        for (int j = 0; j < state.parts().size(); j++) {
            sum[bays + j] += state.parts().get(j).junction().orElse(Double.NaN) - outside;
        }
    }

    @Property(tries = 60)
    void whichEndAPassageIsWrittenFromDoesNotMatter(@ForAll int seed) {
        ThermalState one = settled(RandomDesigns.wild(seed));
        ThermalState other = settled(RandomDesigns.turned(seed));
        for (int i = 0; i < one.temperatures().size(); i++) {
            assertEquals(one.temperatures().get(i), other.temperatures().get(i), 1e-6);
        }
        for (int k = 0; k < one.parts().size(); k++) {
            assertEquals(one.parts().get(k).junction().orElse(0), other.parts().get(k).junction().orElse(0), 1e-5);
        }
    }

    @Property(tries = 40)
    void aSecondRunGivesTheSameBits(@ForAll int seed) {
        Design design = RandomDesigns.wild(seed);
        ThermalState one = settled(design);
        ThermalModel model = Designs.model(design);
        model.settle(new Drive(Map.of(), 0.5, Map.of()), Optional.empty(), () -> false);
        ThermalState other = model.settle(() -> false).state().orElseThrow();
        assertEquals(one.temperatures(), other.temperatures());
        assertEquals(one.point(), other.point());
        assertEquals(one.parts(), other.parts());
        assertEquals(one.balance(), other.balance());
    }

    @Property(tries = 60)
    void withoutHeatAllIsAsOutside(@ForAll int seed) {
        Design design = RandomDesigns.plain(seed, 0);
        double outside = outside(Designs.model(design));
        ThermalState state = Designs.settled(design);
        assertTrue(state.temperatures().stream().allMatch(each -> each == outside), state.temperatures() + " with " + outside + " outside");
        assertTrue(state.parts().stream().allMatch(part -> part.junction().orElseThrow() == outside));
        assertEquals(0, state.balance().toAir(), 0);
    }
}
