package tramontane.cli.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tramontane.analysis.Relation;
import tramontane.analysis.Trace;
import tramontane.physics.units.QuantityKind;

class WhereTest {

    private static final List<Trace.Step> STEPS = List.of(
            new Trace.Step("curve pressure", "fans", new Relation("spline", "p(Q) between measured points",
                    "Fritsch and Carlson 1980", ""), 38.25, List.of()),
            new Trace.Step("airflow.bank.flow", "fans", new Relation("fan laws", "Q2 = Q1 n2/n1", "Bleier 1998, eq. 5.1",
                    "changes of speed without change of type of flow"), 0.0170, List.of(
                    new Trace.Term("speed", QuantityKind.ROTATIONAL_SPEED, 298.5, "condition one failed"),
                    new Trace.Term("pressure", QuantityKind.PRESSURE, 38.25, "curve pressure"))));

    @TempDir
    private Path folder;
    private Path file;
    private final MemoryConsole console = new MemoryConsole();
    private final FakeEngine engine = new FakeEngine(List.of(), (request, watch) -> Toys.cabinet(), STEPS);

    @BeforeEach
    void write() throws IOException {
        file = Files.writeString(folder.resolve("a"),
                "{\"format\": 1, \"conditions\": [{\"id\": \"nominal\"}, {\"id\": \"one failed\"}]}");
    }

    private int trace(String... rest) {
        List<String> line = new ArrayList<>(List.of("trace", file.toString()));
        line.addAll(List.of(rest));
        return TestSurroundings.with(engine).program().run(line, console);
    }

    @Test
    void showsEachStepOfTheWorstFigure() {
        assertEquals(0, trace("airflow.bank.flow"));
        assertEquals("""
                flow at fans in one failed: fans 2 locked: 61.2 m³/h   (airflow.bank.flow)
                The worst of 3; choose another with --place and --condition.

                1.  curve pressure at fans = 38.3 Pa
                    by    spline: p(Q) between measured points
                    [Fritsch and Carlson 1980]
                2.  flow at fans = 61.2 m³/h
                    by    fan laws: Q2 = Q1 n2/n1
                    with  speed = 2850 rpm   from condition one failed
                          pressure = 38.3 Pa   from curve pressure
                    holds changes of speed without change of type of flow
                    [Bleier 1998, eq. 5.1]
                """, console.printed());
        assertEquals(List.of("one failed: fans 2 locked/airflow.bank.flow/fans"), engine.traced);
        assertEquals(Set.of("airflow"), engine.requests.getFirst().analyses());
    }

    @Test
    void showsTheCaseThatWasNamed() {
        assertEquals(0, trace("airflow.bank.flow", "--condition", "one failed: fans 1 locked"));
        assertEquals(List.of("one failed: fans 1 locked/airflow.bank.flow/fans"), engine.traced);
        assertEquals(Set.of("one failed"), engine.requests.getFirst().conditions());
    }

    @Test
    void aFigureOfTheWholeDesignHasNoPlace() {
        assertEquals(0, trace("acme.energy"));
        assertTrue(console.printed().startsWith("energy per year: 0.500 kWh   (acme.energy)\n\n"), console.printed());
    }

    @Test
    void asJson() {
        assertEquals(0, trace("airflow.bank.flow", "--format", "json"));
        assertEquals(2, JsonParser.parseString(console.written()).getAsJsonObject().getAsJsonArray("steps").size());
    }

    @Test
    void mistakes() {
        assertEquals(2, trace("airflow.bank.flo"));
        assertEquals(2, trace("x"));
        assertEquals(2, trace("acme.dust.load", "--place", "cellar"));
        assertEquals(2, trace("acme.dust.load", "--condition", "nominl"));
        assertEquals(4, trace("airflow.bank.flow", "--condition", "one failed: fans 9 locked"));
        assertEquals("""
                airflow.bank.flo: no loaded analysis gives this figure; did you mean airflow.bank.flow?
                x: no loaded analysis gives this figure; "tramontane modules" lists the figures.
                --place cellar: the figure is not given there; it is at box, duct.
                --condition nominl: there is no such condition in the design; did you mean nominal?
                airflow.bank.flow could not be computed; "tramontane solve" says why.
                """, console.errors());
    }
}
