package tramontane.airflow.desktop.internal.path;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.engine.internal.WiredEngine;
import tramontane.model.Design;
import tramontane.model.file.DesignFile;
import tramontane.physics.units.UnitSystem;

/** The shipped samples with their values, for tests of pictures. */
final class Samples {

    static final List<String> NAMES = List.of("quick", "quick-heat", "observatory", "cabinet");
    private static final Engine ENGINE = WiredEngine.with().engine();
    private static final Map<String, Evaluation> KNOWN = new HashMap<>();

    private Samples() {
    }

    static Design design(String name) {
        return DesignFile.read(Path.of("../../product/samples/" + name + ".tramontane.json")).design().orElseThrow();
    }

    static Engine engine() {
        return ENGINE;
    }

    static Evaluation evaluate(Design design) {
        return ENGINE.evaluate(new Engine.Request(design, Set.of("airflow", "thermal"), Set.of(), Engine.Request.TIME_LIMIT), Engine.Watch.NONE);
    }

    static synchronized Evaluation evaluation(String name) {
        return KNOWN.computeIfAbsent(name, key -> evaluate(design(key)));
    }

    static AirValues values(String name, String caseId) {
        return AirValues.of(evaluation(name), caseId, ENGINE.passageKinds());
    }

    static PathPicture picture(Design design, AirValues values, ColourBy by) {
        PathGraph graph = PathGraph.of(design, Measure.COMMON);
        return PathPicture.of(design, graph, LayeredPlacement.of(graph), values, by, UnitSystem.METRIC, Measure.COMMON);
    }

    static Design parse(String json) {
        return DesignFile.parse(json.replace('\'', '"')).design().orElseThrow();
    }
}
