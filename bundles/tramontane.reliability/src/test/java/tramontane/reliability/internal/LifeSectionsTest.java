package tramontane.reliability.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.analysis.SectionType;
import tramontane.analysis.Sections;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.file.DesignFile;

/** Reading, checking and writing of the sections. */
class LifeSectionsTest {

    private static Value.Tree tree(String json) {
        Design design = DesignFile.parse(("{'format': 1, 'airPath': {'bays': [], 'passages': []}, 'sections': {'life': {" + json + "}}}").replace('\'', '"'))
                .design().orElseThrow();
        return (Value.Tree) design.section("life").orElseThrow();
    }

    private static Values read(SectionType<?> type, Value.Tree tree, List<Problem> problems) {
        return Sections.read(type, tree, "life", problems).orElseThrow();
    }

    private static <T> void survives(SectionType<T> type, String json) {
        List<Problem> problems = new ArrayList<>();
        Values values = read(type, tree(json), problems);
        assertEquals(List.of(), problems);
        T section = type.decode(values);
        assertEquals(section, type.decode(read(type, type.encode(section), problems)), json);
        assertEquals(List.of(), problems);
    }

    private static List<String> problems(SectionType<?> type, String json) {
        List<Problem> problems = new ArrayList<>();
        Values values = read(type, tree(json), problems);
        if (problems.stream().noneMatch(Problem::isError)) {
            problems.addAll(type.check(values, "life"));
        }
        return problems.stream().map(Problem::sentence).distinct().toList();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "'rated': '70000 h'", "'rated': '70000 h', 'statistic': 'MTTF', 'at': '60 °C', 'speed': '3000 rpm', 'confidence': '90 %',"
            + " 'testedAt': '70 °C', 'shape': 2.2, 'shapeBounds': [1.5, 3], 'factor': 1.6, 'speedExponent': 0.5, 'shaft': 'level', 'lowestStorage': '-40 °C',"
            + " 'highestStorage': '80 °C', 'shock': '15 gn', 'shockTime': '11 ms'", "'rated': '5 years', 'law': 'Arrhenius', 'activationEnergy': '0.4 eV'",
        "'rated': '50000 h', 'law': 'grease life', 'greaseLimit': '20000 rpm', 'rise': '12 K'",
        "'law': 'ISO 281', 'dynamicRating': '600 N', 'loads': '8 12 N', 'rolling': 'roller'", "'law': 'MIL-HDBK-217F', 'motor': 'servo'"})
    void whatAMoverSaysSurvives(String json) {
        survives(Scene.MOVER, json);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "'shaft': 'depth', 'needed': 3, 'failing': 'removed', 'solids': 'fine dust', 'water': 'strong jets'"})
    void whatABankSaysSurvives(String json) {
        survives(Scene.BANK, json);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "'serviceLife': '10 years', 'conditions': ['a', 'b'], 'repair': '72 h', 'crews': 'one for each', 'interval': '2 years',"
            + " 'availability': '99.9 %', 'fleet': 40, 'restocking': '60 d', 'confidence': '99 %', 'hazard': true, 'damage': true, 'solids': 'dust',"
            + " 'water': 'spray', 'shock': '10 gn', 'shockTime': '6 ms', 'lowestStorage': '-25 °C', 'highestStorage': '70 °C'"})
    void whatTheDesignSaysSurvives(String json) {
        survives(Scene.SERVICE, json);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', value = {
        "'shape': 2 | life.rated: is missing; expected, as law `factor per 10 K` starts from it: no life is computed",
        "'rated': '1 h', 'law': 'Arrhenius' | life.activationEnergy: is missing; expected, as law `Arrhenius` needs it, for example `0.4 eV`: no life is computed",
        "'law': 'ISO 281', 'loads': '8 N' | life.dynamicRating: is missing; expected, as law `ISO 281` needs it: no life is computed",
        "'law': 'ISO 281', 'dynamicRating': '600 N' | life.loads: is missing; expected, as law `ISO 281` needs the load of each bearing: no life is computed",
        "'rated': '1 h', 'activationEnergy': '0.4 eV' | life.activationEnergy: is not used; expected where law is not `factor per 10 K`",
        "'law': 'MIL-HDBK-217F', 'shape': 2 | life.shape: is not used; expected where law is not `MIL-HDBK-217F`",
        "'law': 'MIL-HDBK-217F', 'at': '60 °C' | life.at: is not used; expected where law is not `MIL-HDBK-217F`",
        "'law': 'ISO 281', 'dynamicRating': '600 N', 'loads': '8 N', 'testedAt': '60 °C' | life.testedAt: is not used; expected where law is not `ISO 281`",
        "'rated': '1 h', 'shape': 4, 'shapeBounds': [1, 3] | life.shape: is 4.0; expected one between its shapeBounds, 1.0 and 3.0",
        "'rated': '1 h', 'shapeBounds': [1, 3] | life.shape: is missing; expected the shape between its shapeBounds",
        "'rated': '1 h', 'shape': 2, 'shapeBounds': [1, 2, 3] | life.shapeBounds: has 3 values; expected two, the lowest and the highest",
        "'rated': '1 h', 'lowestStorage': '20 °C', 'highestStorage': '10 °C' | life.highestStorage: is not above the lowest storage temperature; expected a higher one",
        "'rated': '1 h', 'shockTime': '11 ms' | life.shockTime: is not used; expected beside a shock"})
    void aMoverIsChecked(String json, String sentence) {
        assertEquals(List.of(sentence.replace('`', '"')), problems(Scene.MOVER, json));
    }

    /** What is written wrongly is said once: nothing else is called missing or not used for it. */
    @ParameterizedTest
    @ValueSource(strings = {"'rated': '1 kg'", "'rated': '1 h', 'law': 'magic'", "'rated': '1 h', 'law': 'magic', 'activationEnergy': '0.4 eV'",
        "'rated': '1 h', 'law': 'Arrhenius', 'activationEnergy': '0.4 m'", "'law': 'ISO 281', 'dynamicRating': '1 K', 'loads': '8 N'",
        "'rated': '1 h', 'shape': 'steep', 'shapeBounds': [1, 3]", "'rated': '1 h', 'shockTime': '11 ms', 'shock': '15 kg'"})
    void aMistakeIsSaidOnce(String json) {
        List<Problem> problems = new ArrayList<>();
        Values values = read(Scene.MOVER, tree(json), problems);
        problems.addAll(Scene.MOVER.check(values, "life"));
        assertEquals(1, problems.size(), problems.toString());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', value = {
        "'crews': 'one for each' | life.crews: is not used; expected beside repair",
        "'confidence': '99 %' | life.confidence: is not used; expected beside restocking",
        "'shockTime': '11 ms' | life.shockTime: is not used; expected beside shock",
        "'lowestStorage': '-25 °C', 'highestStorage': '-30 °C' | life.highestStorage: is not above the lowest storage temperature; expected a higher one"})
    void aServiceLifeIsChecked(String json, String sentence) {
        assertEquals(List.of(sentence), problems(Scene.SERVICE, json));
    }

    @ParameterizedTest
    @ValueSource(strings = {"'needed': 0", "'needed': 1.5", "'shaft': 'up'", "'failing': 'burnt'", "'solids': 'sand'", "'water': 'rain'"})
    void whatABankCannotSayIsAnError(String json) {
        List<Problem> problems = new ArrayList<>();
        read(Scene.BANK, tree(json), problems);
        assertEquals(1, problems.size(), problems.toString());
        assertTrue(problems.getFirst().isError() && problems.getFirst().sentence().contains("expected"), problems.toString());
    }

    @ParameterizedTest
    @ValueSource(strings = {"'rated': '0 h'", "'rated': '-5 h'", "'rated': '5 kg'", "'shape': 0", "'rated': '1 h', 'law': 'magic'", "'rated': '1 h', 'factor': 0.5",
        "'rated': 'NaN h'", "'at': '-300 °C'", "'shock': '-1 gn'", "'rated': '1 h', 'shapeBounds': [3, 2]"})
    void whatCannotBeIsAnError(String json) {
        List<Problem> problems = new ArrayList<>();
        read(Scene.MOVER, tree(json), problems);
        assertTrue(problems.stream().anyMatch(Problem::isError), json);
    }

    @ParameterizedTest
    @ValueSource(strings = {"'fleet': 0", "'serviceLife': '0 years'", "'availability': '100 %'", "'crews': 'many'", "'confidence': 2", "'water': 'rain'"})
    void whatTheDesignCannotSayIsAnError(String json) {
        List<Problem> problems = new ArrayList<>();
        read(Scene.SERVICE, tree(json), problems);
        assertTrue(problems.stream().anyMatch(Problem::isError), json);
    }
}
