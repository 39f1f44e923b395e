package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.model.Form;
import tramontane.model.file.DesignFile;
import tramontane.model.file.JsonSchema;
import tramontane.model.file.TreeFile;

/** The shipped samples against the schema that our passage kinds make, judged by a validator that knows nothing of us. */
class SamplesTest {

    private static final com.networknt.schema.JsonSchema VALIDATOR = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
            .getSchema(TreeFile.write(JsonSchema.design(Cases.KINDS.stream().map(kind -> kind.form())
                    .collect(Collectors.toMap(Form::name, Function.identity())), Map.of())));

    static List<Path> samples() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("../../product/samples"))) {
            return files.filter(file -> file.toString().endsWith(DesignFile.ENDING)).sorted().toList();
        }
    }

    @Test
    void thereAreSamples() throws IOException {
        assertTrue(samples().size() >= 3, () -> "found too few");
    }

    @ParameterizedTest
    @MethodSource("samples")
    void aSampleFitsTheSchema(Path sample) throws IOException {
        String json = Files.readString(sample);
        assertEquals(Set.of(), VALIDATOR.validate(json, InputFormat.JSON));
        String written = DesignFile.write(DesignFile.parse(json).design().orElseThrow());
        assertEquals(Set.of(), VALIDATOR.validate(written, InputFormat.JSON));
        // and the schema is not one that lets everything through
        assertFalse(VALIDATOR.validate(json.replace("\"mover\": \"", "\"mover\": 5, \"was\": \""), InputFormat.JSON)
                .isEmpty());
    }
}
