package tramontane.selection.cli.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tramontane.analysis.Importer;
import tramontane.catalogue.PartFile;
import tramontane.catalogue.PartTable;
import tramontane.cli.terminal.Ending;
import tramontane.model.Form;
import tramontane.model.Values;

class PartsTest {

    /** The importer of tables, as its bundle registers it. */
    private static final Importer TABLE = new Importer() {
        @Override
        public String id() {
            return "parts-table";
        }

        @Override
        public String label() {
            return "table of parts";
        }

        @Override
        public List<String> endings() {
            return List.of(".csv");
        }

        @Override
        public Form settings() {
            return PartTable.MAPPING;
        }

        @Override
        public Imported read(String name, byte[] content, Values settings) {
            return PartTable.read(name, content, settings, List.of());
        }
    };

    @TempDir
    private Path folder;

    private final MemoryConsole console = new MemoryConsole(100);
    private Parts parts;

    @BeforeEach
    void layOut() throws IOException {
        parts = new Parts(Shelf.folders(folder.resolve("parts")), new FakeEngine(), List.of(TABLE));
    }

    private int run(String... words) throws Ending {
        return parts.run(List.of(words), console);
    }

    private String refused(String... words) {
        return assertThrows(Ending.class, () -> run(words)).getMessage();
    }

    @Test
    void listsInTheOrderThatIsWanted() throws Ending {
        assertEquals(0, run("list", "--where", "width > 50 mm", "--sort", "price", "--descending", "--fields", "width,price,status", "--format", "csv"));
        assertEquals("id,width [m],price [1],status\r\nGarbin 110,0.11,9.0,last order\r\nGarbin 92,0.092,8.5,current\r\nGarbin 80,0.08,1.0,ended\r\n"
                + "Garbin 120,0.12,,current\r\n", console.written());
    }

    @Test
    void saysHowManyThereAre() throws Ending {
        run("list", "--limit", "2");
        assertTrue(console.printed().contains("price EUR"), console.printed());
        assertTrue(console.printed().endsWith("5 parts; the first 2 are shown, --limit shows more.\n"), console.printed());
        run("list", "--where", "width > 100 mm");
        assertTrue(console.printed().endsWith("2 of 5 pass the filter.\n"), console.printed());
    }

    @Test
    void programsGetTheFileOfEachPart() throws Ending {
        run("list", "--format", "json", "--limit", "1");
        JsonObject part = JsonParser.parseString(console.written()).getAsJsonObject().getAsJsonArray("parts").get(0).getAsJsonObject();
        assertEquals("Garbin 110", part.get("id").getAsString());
        assertTrue(part.get("file").getAsString().endsWith("Garbin-110.json"));
        assertEquals(0.11, part.getAsJsonObject("values").get("width").getAsDouble(), 1e-12);
    }

    @Test
    void showsWhereFiguresComeFrom() throws Exception {
        Shelf.part(folder.resolve("parts"), "Garbin 92", 92, "current", """
                "mass": "90 g", "price": 3, "rotorDiameter": "95 mm", "currency": "EUR", "origins": [
                {"from": "datasheet", "source": "sheet 7", "tolerance": "5 %"}, {"of": "mass", "from": "measured", "source": "our scales"}],""");
        assertEquals(0, run("show", "Garbin 92"));
        String text = console.printed();
        assertTrue(text.lines().anyMatch(line -> line.matches("width +frame width +92.0 mm +datasheet \\[1] +5.00")), text);
        assertTrue(text.lines().anyMatch(line -> line.matches("mass +0.0900 kg +measured \\[2]")), text);
        assertTrue(text.lines().anyMatch(line -> line.matches("freeDelivery +free delivery +100 m³/h +from its curves")), text);
        assertTrue(text.contains("[1] sheet 7\n[2] our scales\n"), text);
        assertTrue(text.contains("Curve at 3000 rpm, 1.20 kg/m³"), text);
        assertTrue(text.contains("its rotor of 95.0 mm does not go into its frame"), text);
    }

    @Test
    void namesThePartThatWasMeant() {
        assertEquals("garbin 92: there is no such part in the catalogue; did you mean Garbin 92?", refused("show", "garbin 92"));
    }

    @Test
    void aSoundCatalogueIsSaidToBe() throws Exception {
        assertEquals(0, run("check", "--where", "width > 900 mm"));
        assertEquals("5 parts in 5 files: no errors in files, all figures can be true together.\n", console.printed());
    }

    @Test
    void whatIsDamagedDoublyThereOrImpossibleIsNamed() throws Exception {
        Path shelf = folder.resolve("parts");
        Files.writeString(shelf.resolve("broken.json"), "{ \"id\": ");
        Files.copy(shelf.resolve("Garbin-40.json"), shelf.resolve("twin.json"));
        Shelf.part(shelf, "Odd", 92, "current", "\"rotorDiameter\": \"950 mm\",");
        assertEquals(1, run("check"));
        String text = console.printed();
        assertTrue(text.contains("error    broken.json, "), text);
        assertTrue(text.contains("twin.json"), text);
        assertTrue(text.contains("Odd: its rotor of 950 mm does not go into its frame"), text);
        assertTrue(text.contains("2 errors in files, 1 part figure impossible"), text);
    }

    @Test
    void theFieldsHaveTheirUnits() throws Ending {
        run("fields");
        assertTrue(console.printed().lines().anyMatch(line -> line.matches("width +frame width +mm +5")), console.printed());
        assertTrue(console.printed().lines().anyMatch(line -> line.matches("freeDelivery +free delivery +m³/h +5 +from the curves")), console.printed());
        assertFalse(console.printed().contains("ratedPower"), console.printed());
    }

    @Test
    void whatIsExportedCanBeImported() throws Exception {
        Path table = folder.resolve("out.csv");
        assertEquals(0, run("export", "--where", "status = current", "--output", table.toString()));
        assertTrue(console.errors().startsWith("3 parts written to "), console.errors());
        Path target = folder.resolve("again.json");
        assertEquals(0, run("import", table.toString(), "--as", "parts-table", "--output", target.toString()));
        PartFile.Read read = PartFile.read(target);
        assertEquals(List.of("Garbin 120", "Garbin 40", "Garbin 92"), read.parts().stream().map(part -> part.id()).toList());
        assertEquals(PartFile.read(folder.resolve("parts").resolve("Garbin-92.json")).parts().getFirst(), read.parts().getLast());
        assertTrue(refused("import", table.toString(), "--as", "parts-table", "--output", target.toString()).contains("--replace writes over it"));
    }

    @Test
    void aTableWithMistakesWritesNothing() throws Exception {
        Path table = Files.writeString(folder.resolve("bad.csv"), "id,width [mm],curves.flow [m³/h],curves.pressure [Pa]\nA,ninety,0 100,50 0\n");
        Path target = folder.resolve("bad.json");
        assertEquals(2, run("import", table.toString(), "--as", "parts-table", "--output", target.toString()));
        assertTrue(console.errors().contains("line 2"), console.errors());
        assertTrue(console.errors().endsWith("1 error; nothing was written.\n"), console.errors());
        assertFalse(Files.exists(target));
    }

    @Test
    void aMappingNamesColumnsAndOptionsComeBeforeIt() throws Exception {
        Path table = Files.writeString(folder.resolve("other.csv"), "Typ;B\nA;92\n");
        Path mapping = Files.writeString(folder.resolve("map.json"),
                "{\"delimiter\": \"comma\", \"columns\": [{\"column\": \"Typ\", \"field\": \"id\"}, {\"column\": \"B\", \"field\": \"width\", \"unit\": \"mm\"}]}");
        Path target = folder.resolve("mapped.json");
        assertEquals(0, run("import", table.toString(), "--as", "parts-table", "--mapping", mapping.toString(), "--set", "delimiter=semicolon",
                "--output", target.toString()), console::errors);
        assertTrue(Files.readString(target).contains("92 mm"), Files.readString(target));
    }

    @Test
    void importersAndTheirSettingsAreListed() throws Ending {
        assertEquals(0, run("import"));
        assertTrue(console.printed().contains("parts-table  table of parts  .csv"), console.printed());
        assertTrue(console.printed().contains("delimiter"), console.printed());
        assertEquals(2, run("import", "some.csv"));
    }

    @Test
    void mistakesAreNamed() {
        assertTrue(refused("list", "--fields", "wdth").contains("did you mean width?"));
        assertTrue(refused("list", "--sort", "zzzzz").contains("\"tramontane catalogue fields\" lists them"));
        assertTrue(refused("list", "--limit", "many").contains("is no whole number"));
        assertTrue(refused("export", "--where", "width > 9 m").contains("No part passes"));
        assertTrue(refused("export", "--fields", "nonsense").startsWith("--fields: "));
        assertTrue(refused("import", "x.csv", "--as", "parts-tabel").contains("did you mean parts-table?"));
        assertTrue(refused("import", "x.csv", "--as", "parts-table").contains("there is no such file"));
        assertTrue(refused("import", "x.csv", "--as", "parts-table", "--set", "delimter=comma").contains("did you mean delimiter?"));
    }
}
