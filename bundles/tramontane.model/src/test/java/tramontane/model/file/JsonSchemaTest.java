package tramontane.model.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaId;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.model.AirMover;
import tramontane.model.Design;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Range;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;

/** The schema is judged by a validator that knows nothing of this program. */
class JsonSchemaTest {

    private static final Form GRILLE = Form.of("grille", "Openings in a sheet.",
            Field.amount("freeArea", "free area", QuantityKind.AREA, Range.POSITIVE, "Area of the openings.").mandatory(),
            Field.amount("loss", "loss coefficient", QuantityKind.NUMBER, Range.NOT_NEGATIVE, "Loss coefficient."));
    private static final Form PACKAGE = Form.of("package", "From junction to case.",
            Field.amount("resistance", "resistance", QuantityKind.THERMAL_RESISTANCE, Range.POSITIVE, "Junction to case.")
                    .mandatory());
    private static final Form DUST = Form.of("dust", "Dust in the air.",
            Field.amount("load", "load", QuantityKind.DENSITY, Range.NOT_NEGATIVE, "Dust per volume.").mandatory(),
            Field.yesNo("sticky", "sticky", "Whether it sticks."));
    /** A section of the same name that something else carries. */
    private static final Form BEARING = Form.of("dust", "Dust in the bearing.",
            Field.whole("grade", "grade", 1, 5, "How tight it is."));
    private static final Value.Tree SCHEMA = JsonSchema.design(Map.of("grille", GRILLE), Map.of("package", PACKAGE),
            Map.of(Design.FORM, Map.of("dust", DUST), AirMover.FORM, Map.of("dust", BEARING)));
    private static final com.networknt.schema.JsonSchema VALIDATOR = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
            .getSchema(TreeFile.write(SCHEMA));

    private static Set<String> refused(String json) {
        return VALIDATOR.validate(json, InputFormat.JSON).stream().map(ValidationMessage::getInstanceLocation)
                .map(Object::toString).collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void theSchemaItselfIsSound() {
        com.networknt.schema.JsonSchema draft = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                .getSchema(com.networknt.schema.SchemaLocation.of(SchemaId.V202012));
        assertEquals(Set.of(), draft.validate(TreeFile.write(SCHEMA), InputFormat.JSON));
    }

    @Test
    void soundFilesPass() {
        assertEquals(Set.of(), refused(DesignFileTest.rack()));
        assertEquals(Set.of(), refused(DesignFile.write(DesignFile.parse(DesignFileTest.rack()).design().orElseThrow())));
        assertEquals(Set.of(), refused("{\"format\": 1}"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            "format": 1,                     |                                | $
            "format": 1                      | "format": 2                    | $.format
            "name": "Rack with two blowers"  | "name": 5                      | $.name
            "width": "483 mm"                | "width": -0.483                | $.equipment.width
            "width": "483 mm"                | "width": true                  | $.equipment.width
            "attitude": "upright"            | "attitude": "leaning"          | $.equipment.attitude
            "flow": "0 20 40 60 80 cfm"      | "flow": [0.01]                 | $.airMovers[0].curves[0].flow
            "bays": ["box"                   | "bays": [5                     | $.airPath.bays[0]
            "freeArea": "120 cm²"            | "freeArea": -1                 | $.airPath.passages[0].freeArea
            "freeArea": "120 cm²", "loss"    | "loss"                         | $.airPath.passages[0]
            "power": "35.0 W"                | "power": -35                   | $.heatSources[0].power
            "share": "40 %"                  | "share": 1.5                   | $.heatSources[0].into[0].share
            "resistance": "0.5 K/W"          | "resistance": 0                | $.heatSources[0].chain[0].resistance
            "package", "resistance"          | "package", "resistence"        | $.heatSources[0].chain[0]
            {"cpu": "120 %"}                 | {"cpu": -1}                    | $.conditions[1].heatFactors.cpu
            "position": "any one"            | "position": 0                  | $.conditions[1].failed[0].position
            "banks": ["blowers"]             | "banks": [1]                   | $.controlLaws[0].banks[0]
            "load": 1.0                      | "load": -1.0                   | $.sections.dust.load
            "load": 1.0                      | "load": 1.0, "sticky": "yes"   | $.sections.dust.sticky
            """)
    void mistakesAreFoundWhereTheyStand(String piece, String instead, String place) {
        String sound = DesignFileTest.rack();
        assertTrue(sound.contains(piece), piece);
        Set<String> refused = refused(sound.replace(piece, instead == null ? "" : instead));
        assertTrue(refused.contains(place) || place.equals("$") && !refused.isEmpty(), refused::toString);
    }

    @Test
    void whatIsSaidOfOneKindHoldsForNoOther() {
        assertEquals(Set.of(), refused(DesignFileTest.rack().replace("\"package\", \"resistance\"", "\"pad\", \"resistence\"")));
    }

    @Test
    void aSectionIsDescribedByWhatCarriesIt() {
        String file = "{\"format\": 1, \"airMovers\": [{\"id\": \"fan\", \"curves\": [], \"sections\": {\"dust\": DUST}}]}";
        assertEquals(Set.of(), refused(file.replace("DUST", "{\"grade\": 3}")));
        assertEquals(Set.of("$.airMovers[0].sections.dust.grade"), refused(file.replace("DUST", "{\"grade\": 6}")));
        // what the design itself may carry says nothing of a bay's section of that name
        assertEquals(Set.of(), refused("{\"format\": 1, \"airPath\": {\"bays\": [{\"id\": \"box\","
                + " \"sections\": {\"dust\": {\"load\": \"a lot\", \"grade\": 6}}}]}}"));
        assertEquals(Set.of("$.sections.dust"), refused("{\"format\": 1, \"sections\": {\"dust\": {\"grade\": 3}}}"));
    }

    @Test
    void quantitiesSayInWhichUnitsTheyMayBeWritten() {
        String text = TreeFile.write(SCHEMA);
        assertTrue(text.contains("Area of the openings. A number in m², or a text in "), text);
        assertTrue(text.contains("\"default\": \"20 °C\""), text);
    }
}
