package tramontane.selection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Better;
import tramontane.model.AirMover;
import tramontane.model.Quantity;
import tramontane.physics.units.QuantityKind;

class SpaceTest {

    private static AirMover part(double width, double height, double depth) {
        return new AirMover("P", "", Optional.empty(), Optional.of(Quantity.of(width)), Optional.of(Quantity.of(height)), Optional.of(Quantity.of(depth)),
                Optional.empty(), Optional.empty(), Optional.empty(), List.of(), tramontane.model.Value.Tree.EMPTY);
    }

    private static List<String> words(Space space, AirMover part) {
        return space.arrangements(part).stream().map(Arrangement::words).toList();
    }

    @Test
    void whatFitsIsListedFewestFirst() {
        Space space = new Space(Optional.of(0.25), Optional.of(0.13), Optional.of(0.08), 6, 3, 4);
        assertEquals(List.of("single", "2 side by side", "2 in series", "2 side by side, 2 in series"), words(space, part(0.12, 0.12, 0.038)));
        assertEquals(List.of(), words(space, part(0.14, 0.14, 0.038)));
        assertEquals(List.of("single"), words(space, part(0.20, 0.13, 0.05)));
        assertEquals(List.of("single, turned"), words(space, part(0.13, 0.20, 0.05)));
        assertEquals(List.of("single", "2 side by side", "2 in series", "3 side by side", "2 × 2 side by side", "2 side by side, 2 in series"),
                words(new Space(Optional.of(0.21), Optional.of(0.13), Optional.of(0.05), 6, 2, 4), part(0.06, 0.06, 0.025)));
    }

    @Test
    void withoutAnOpeningCountsAloneDecide() {
        assertEquals(List.of("single", "2 side by side", "2 in series", "2 side by side, 2 in series"), words(Space.ANY, part(1, 1, 1)));
    }

    @Property(tries = 300)
    void everyArrangementFits(@ForAll @DoubleRange(min = 0.02, max = 0.4) double width, @ForAll @DoubleRange(min = 0.02, max = 0.4) double height,
            @ForAll @DoubleRange(min = 0.01, max = 0.1) double depth, @ForAll @IntRange(min = 1, max = 8) int most) {
        Space space = new Space(Optional.of(0.4), Optional.of(0.3), Optional.of(0.12), most, 3, 12);
        for (Arrangement each : space.arrangements(part(width, height, depth))) {
            double across = each.across() * (each.turned() ? height : width);
            double along = each.along() * (each.turned() ? width : height);
            assertTrue(across <= 0.4 * (1 + 2e-4) && along <= 0.3 * (1 + 2e-4) && each.series() * depth <= 0.12 * (1 + 2e-4), each.toString());
            assertTrue(each.columns() <= most && each.movers() <= 12 && each.series() <= 3);
        }
    }

    @Test
    void stepsAreFactorsOfTwo() {
        Criterion power = new Criterion(Criterion.POWER, "power", QuantityKind.POWER, Better.LOWER);
        Criterion life = new Criterion(Criterion.LIFE, "life", QuantityKind.TIME, Better.HIGHER);
        Criterion noise = new Criterion(Criterion.NOISE, "noise", QuantityKind.LEVEL, Better.LOWER);
        assertEquals(1, power.steps(6) - power.steps(3), 1e-12);
        assertEquals(1, life.steps(3) - life.steps(6), 1e-12);
        assertEquals(1, noise.steps(45) - noise.steps(35), 1e-12);
    }

    @Test
    void impossibleTasksAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Arrangement(0, 1, 1, false));
        Task task = Task.of(tramontane.model.Design.EMPTY, "b", List.of(), Space.ANY);
        assertThrows(IllegalArgumentException.class, () -> task.withWeights(java.util.Map.of("power", -1.0)));
        assertThrows(IllegalArgumentException.class, () -> new Task(task.design(), "b", List.of(), Space.ANY, Task.EVEN, 0, 1, 1, false, false));
    }
}
