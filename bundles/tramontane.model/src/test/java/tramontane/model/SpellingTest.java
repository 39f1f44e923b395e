package tramontane.model;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpellingTest {

    @ParameterizedTest
    @CsvSource({"sovle,solve", "slove,solve", "solv,solve", "SOLVE,solve", "valdiate,validate", "airflow.bank.flwo,airflow.bank.flow",
        "box,", "ab,", "solbe,solve", "vali,validate", "xyz,"})
    void guessesTheNameThatIsNear(String written, String meant) {
        assertEquals(Optional.ofNullable(meant),
                Spelling.nearest(written, List.of("solve", "validate", "airflow.bank.flow", "plenum")));
    }

    @Test
    void quotesItsGuess() {
        assertEquals(" (did you mean \"plenum\"?)", Spelling.hint("plenun", List.of("plenum", "box")));
        assertEquals("", Spelling.hint("duct", List.of("plenum", "box")));
    }
}
