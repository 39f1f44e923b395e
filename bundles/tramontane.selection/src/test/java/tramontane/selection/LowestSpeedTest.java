package tramontane.selection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tramontane.invented.InventedCatalogue;
import tramontane.model.AirMover;

/** What the reduced design says of the lowest speed is a bound: exact speeds are no lower, and what it turns down fails. */
class LowestSpeedTest {

    /** Axial parts whose curves have a dip, several side by side, one of them locked: then columns need not share the flow evenly. */
    @Test
    void exactSettingsAreNoLower() {
        List<AirMover> parts = InventedCatalogue.parts(InventedCatalogue.SHIPPED, InventedCatalogue.SEED).stream().filter(part -> part.id().matches("(HV|LW)-E.-.*")).toList();
        Space room = new Space(Optional.of(0.4), Optional.of(0.4), Optional.of(0.06), 6, 2, 12);
        Task task = new Task(Choices.sample("observatory"), "fans", parts, room, Map.of(Criterion.COST, 1.0), Task.LOWEST, 1, 0, false, false);
        Selection quick = Choices.SELECTOR.choose(task, Watch.NONE);
        Selection exact = Choices.SELECTOR.choose(new Task(task.design(), "fans", parts, room, Task.EVEN, Task.LOWEST, 100_000, 0, false, true), Watch.NONE);
        Map<List<Object>, Double> settings = new HashMap<>();
        exact.ranked().forEach(each -> settings.put(List.of(each.part().id(), each.arrangement()), each.setting()));
        List<String> wrong = new ArrayList<>();
        int compared = 0;
        for (Passed each : quick.passed()) {
            Optional<Double> found = Optional.ofNullable(settings.get(List.<Object>of(each.part(), each.arrangement())));
            found.filter(setting -> each.setting() > setting).ifPresent(setting -> wrong.add(each + " above " + setting));
            compared += found.isPresent() ? 1 : 0;
        }
        quick.rejected().forEach(each -> each.arrangement().map(arrangement -> settings.get(List.<Object>of(each.part(), arrangement)))
                .ifPresent(setting -> wrong.add(each.words() + " is turned down and does at " + setting)));
        int all = compared;
        assertEquals(List.of(), wrong);
        assertTrue(all > 10, () -> all + " compared of " + quick.counts());
    }
}
