package tramontane.thermal.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.file.Limits;
import tramontane.model.file.TreeFile;

/** What is written of a bay's surroundings and of sunshine. */
class SectionsTest {

    private static Values read(String json, List<Problem> problems) {
        Value.Tree tree = TreeFile.parse(json.replace('\'', '"').getBytes(java.nio.charset.StandardCharsets.UTF_8), Limits.STANDARD).tree().orElseThrow();
        Values values = FormReader.read(new EnclosureSection().form(), tree, "enclosure", problems);
        problems.addAll(new EnclosureSection().check(values, "enclosure"));
        return values;
    }

    /** Heights in m: side of a square; area over perimeter of one that lies. */
    @ParameterizedTest
    @CsvSource({"side, 0.5", "up, 0.125", "down, 0.125"})
    void aWallOfWhichOnlyTheAreaIsSaidIsASquare(String facing, double height) {
        EnclosureSection.Wall wall = new EnclosureSection().decode(read("{'walls': [{'area': '0.25 m²', 'facing': '" + facing + "'}]}",
                new ArrayList<>())).walls().getFirst();
        assertEquals(height, wall.height(), 1e-15);
        assertEquals(0, wall.resistance(), 0);
        assertEquals(0.9, wall.emissivity(), 0);
        assertEquals(0, wall.sunlit(), 0);
    }

    @Test
    void whatIsWrittenComesBack() {
        EnclosureSection section = new EnclosureSection();
        EnclosureSection.Enclosure whole = section.decode(read("{'flowArea': '200 cm²', 'chassisHeatCapacity': 900, 'chassisConductance': 7,"
                + "'walls': [{'area': 0.4, 'facing': 'up', 'height': 0.1, 'thickness': '10 mm', 'conductivity': 0.2, 'emissivity': 0.1,"
                + "'absorptance': 0.3, 'sunlit': 0.8}, {'area': 1}]}", new ArrayList<>()));
        assertEquals(0.05, whole.walls().getFirst().resistance(), 1e-15);
        List<Problem> problems = new ArrayList<>();
        assertEquals(whole, section.decode(FormReader.read(section.form(), section.encode(whole), "enclosure", problems)));
        assertEquals(List.of(), problems);
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "{'chassisHeatCapacity': 900}; enclosure: has chassisHeatCapacity without chassisConductance; expected both or neither",
        "{'chassisConductance': 9}; enclosure: has chassisConductance without chassisHeatCapacity; expected both or neither",
        "{'walls': [{'area': 1}, {'area': 1, 'thickness': 0.1}]}; enclosure.walls[1]: has thickness without conductivity; expected both or neither",
        "{'walls': [{'area': 1, 'conductivity': 0.1}]}; enclosure.walls[0]: has conductivity without thickness; expected both or neither"})
    void halvesAreNamed(String json, String sentence, String rest) {
        List<Problem> problems = new ArrayList<>();
        read(json, problems);
        assertEquals(List.of(sentence + "; " + rest), problems.stream().map(Problem::sentence).toList());
    }
}
