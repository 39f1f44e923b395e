package tramontane.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import tramontane.model.Form;

class KindsTest {

    private static Form form(String name) {
        return switch (name) {
            case "broken" -> throw new IllegalStateException("no form");
            case "none" -> null;
            default -> Form.of(name.toLowerCase(), "");
        };
    }

    @Test
    void kindsComeByNameTheFirstOfEachWithoutThoseThatFail() {
        assertEquals(List.of("board", "Grease", "PAD"), Kinds.byName(List.of("PAD", "broken", "Grease", "none", "board", "pad"), KindsTest::form));
    }
}
