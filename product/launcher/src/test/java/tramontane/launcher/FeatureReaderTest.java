package tramontane.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FeatureReaderTest {
    @Test
    void readsBundlesInTheirOrderInBothForms() throws FeatureFormatException {
        Feature feature = FeatureReader.parse("""
                {
                  "feature-resource-version": "1.0",
                  "id": "acme:lab:1.0",
                  "name": "Lab // not a comment",
                  "bundles": [ {"id": "acme:b:1.0", "hash": "x"}, "acme:a:2.0" ]
                }""");
        assertEquals("acme:lab:1.0", feature.id().toString());
        assertEquals(List.of("acme:b:1.0", "acme:a:2.0"), feature.bundles().stream().map(Object::toString).toList());
        assertFalse(feature.configured());
    }

    @Test
    void passesOverCommentsAndKeysItDoesNotKnow() throws FeatureFormatException {
        Feature feature = FeatureReader.parse("""
                /* A lab's
                   feature */
                { "id": "acme:lab:1.0", // ours
                  "vendor": {"deep": [1, {"er": null}]},
                  "name": "a \\" quoted /* name */",
                  "bundles": [ /* none "yet */ ],
                  "extensions": {"text:TEXT:optional": {"text": ["// kept"]}},
                  "configurations": {"acme.fan": {"speed": 1}}
                } // end""");
        assertEquals(List.of(), feature.bundles());
        assertTrue(feature.configured());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "{ \"id\": \"a:b:1\", \"bundles\": [                 | it ends in the middle",
        "``                                                  | it ends in the middle",
        "{ \"id\": \"a:b:1\" /* never closed }               | it ends in the middle",
        "[]                                                  | at $ it should have an object",
        "{ }                                                 | it has no \"id\"",
        "{ id: \"a:b:1\" }                                   | line 1 column 4",
        "{ \"id\": \"a:b:1\", }                              | line 1 column 19",
        "{ \"id\": \"a:b:1\" } x                             | it is not correct JSON",
        "{ \"id\": \"a:b\" }                                 | at $.id \"a:b\" is not of the form",
        "{ \"id\": \"a:b:1\", \"bundles\": {} }              | at $.bundles it should have a list of bundles",
        "{ \"id\": \"a:b:1\", \"bundles\": [7] }             | at $.bundles[0] it should have a bundle",
        "{ \"id\": \"a:b:1\", \"bundles\": [{}] }            | an \"id\" in each bundle",
        "{ \"id\": \"a:b:1\", \"bundles\": [\"x\"] }         | at $.bundles[0] \"x\" is not of the form",
        "{ \"id\": \"a:b:1\", \"feature-resource-version\": \"2.0\" } | this launcher reads version 1"})
    void saysInOneSentenceWhatIsWrong(String text, String expected) {
        String message = assertThrows(FeatureFormatException.class, () -> FeatureReader.parse(text)).getMessage();
        assertTrue(message.contains(expected), message);
        assertEquals(1, message.lines().count(), message);
        assertFalse(message.contains("http"), message);
    }

    @Test
    void placesInMessagesCountCommentsToo() {
        String message = assertThrows(FeatureFormatException.class,
                () -> FeatureReader.parse("/* one\n two */\n{ \"id\" \"a:b:1\" }")).getMessage();
        assertTrue(message.contains("line 3"), message);
    }
}
