package tramontane.cli.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Engine;
import tramontane.analysis.Scope;

class ModulesTest {

    private static final Inventory INVENTORY = new Inventory(
            List.of(new Inventory.Loaded("acme.dust", "2.0.0", "runs"),
                    new Inventory.Loaded("acme.rig", "1.0.0", "not resolved")),
            List.of(new Engine.Loaded("acme", "dust", "acme.dust 2.0.0", Scope.CONDITION, List.of(Toys.DUST),
                    Optional.of("it ran longer than 5 min"))),
            List.of(new Inventory.Extension("section", "dust", List.of("bay", "condition"), "dust there", "acme.dust"),
                    new Inventory.Extension("section", "dust", List.of("design"), "dust in all", "acme.dust"),
                    new Inventory.Extension("importer", "acme.rig", "rig readings", "acme.dust")),
            List.of(new Inventory.Trouble("bundle acme.rig", "it needs package acme.core, which no bundle exports")));

    private final MemoryConsole console = new MemoryConsole();

    @Test
    void listsWhatRunsAndWhyTheRestDoesNot() {
        assertEquals(0, TestSurroundings.empty().withInventory(INVENTORY).run(console, "modules"));
        assertEquals("""
                Bundles
                bundle     version  state
                ---------  -------  ------------
                acme.dust  2.0.0    runs
                acme.rig   1.0.0    not resolved

                Analyses
                id    label  runs once per  bundle
                ----  -----  -------------  ---------------
                acme  dust   condition      acme.dust 2.0.0

                Figures
                id              label      unit   what it is
                --------------  ---------  -----  --------------
                acme.dust.load  dust load  kg/m³  Dust in a bay.

                Extensions
                kind      name                   what it is    bundle
                --------  ---------------------  ------------  ---------
                section   dust (bay, condition)  dust there    acme.dust
                section   dust (design)          dust in all   acme.dust
                importer  acme.rig               rig readings  acme.dust

                Not running
                  bundle acme.rig: it needs package acme.core, which no bundle exports.
                  analysis acme: it is barred: it ran longer than 5 min.
                """, console.printed());
    }

    @Test
    void asJson() {
        assertEquals(0, TestSurroundings.empty().withInventory(INVENTORY).run(console, "modules", "--format", "json"));
        JsonObject root = JsonParser.parseString(console.written()).getAsJsonObject();
        assertEquals(List.of("format", "version", "bundles", "analyses", "extensions", "notRunning"),
                List.copyOf(root.keySet()));
        assertEquals(2, root.getAsJsonArray("notRunning").size());
        JsonObject section = root.getAsJsonArray("extensions").get(0).getAsJsonObject();
        assertEquals("dust", section.get("name").getAsString());
        assertEquals(2, section.getAsJsonArray("carriedBy").size());
        assertFalse(root.getAsJsonArray("extensions").get(2).getAsJsonObject().has("carriedBy"));
        assertEquals("kg/m³", root.getAsJsonArray("analyses").get(0).getAsJsonObject().getAsJsonArray("figures").get(0)
                .getAsJsonObject().get("unit").getAsString());
    }
}
