package tramontane.catalogue.internal.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Importer.Imported;
import tramontane.catalogue.PartTable;
import tramontane.model.Problem;

/** Whatever a table has been through, it is read or refused with sentences, never anything else. */
class AccidentsTest {

    private static final String SOUND = "id,width [mm],curves.speed [rpm],flow [m³/h],pressure [Pa],winding.wires,\"sections.odd.\"\"a.b\"\"\",origins[1].from\n"
            + "A,92,2400,0 30 60,50 30 0,4,\"x \"\"y\"\"\",measured\nB,80 mm,2400,0,50,,1,\nB,,,60,0,,,estimated\n";

    private static final List<String> PIECES = List.of("\"", ",", ";", "\n", "\r", "\t", "'", "[", "]", "(", ")", ".", "{", "}", "\0", "1,5", "1.234,5", "-",
            "curves[999].flow", "\"a\".", "[mm]", "e9", "1e999", "\\", "ü", "\uFEFF", "=");

    @Provide
    Arbitrary<byte[]> accidents() {
        return Arbitraries.randomValue(random -> accident(SOUND, random).getBytes(random.nextInt(5) == 0 ? StandardCharsets.ISO_8859_1
                : StandardCharsets.UTF_8));
    }

    private static String accident(String text, Random random) {
        String broken = text;
        for (int i = random.nextInt(4); i >= 0; i--) {
            int at = random.nextInt(broken.length() + 1);
            int end = Math.min(broken.length(), at + random.nextInt(12));
            broken = broken.substring(0, at) + (random.nextBoolean() ? PIECES.get(random.nextInt(PIECES.size())) : "")
                    + broken.substring(random.nextBoolean() ? at : end);
        }
        return broken;
    }

    @Property(tries = 400)
    void aBrokenTableIsReadOrRefused(@ForAll("accidents") byte[] content) {
        Imported read = PartTable.read("t.csv", content, PartTable.automatic(), Tables.SECTIONS);
        boolean isWrong = read.problems().stream().anyMatch(Problem::isError);
        assertEquals(isWrong, read.movers().isEmpty(), () -> new String(content, StandardCharsets.UTF_8));
        read.problems().forEach(problem -> assertFalse(problem.message().isBlank() || problem.place().isBlank()));
    }

    @Property(tries = 200)
    void brokenPointsAreReadOrRefused(@ForAll Random random) {
        PartTable.Pasted pasted = PartTable.curve(accident("flow [m³/h]; pressure [Pa]\n0; 50\n30,5; 40\n60; 0\n", random), "", "", "");
        assertEquals(pasted.problems().stream().anyMatch(Problem::isError), pasted.curve().isEmpty());
    }

    @Test
    void longCellsAreNoTrouble() {
        String numbers = "1 ".repeat(100_000);
        for (String cell : List.of(numbers, "1".repeat(100_000), "1'1".repeat(50_000), "1,".repeat(100_000), "(".repeat(100_000), "'".repeat(100_000))) {
            Imported read = PartTable.read("t.csv", ("id;flow [m³/h];pressure [Pa]\nA;" + cell + ";1\n").getBytes(StandardCharsets.UTF_8),
                    PartTable.automatic(), List.of());
            assertTrue(read.problems().stream().anyMatch(Problem::isError));
            read.problems().forEach(problem -> assertTrue(problem.sentence().length() < 400, problem::sentence));
        }
    }
}
