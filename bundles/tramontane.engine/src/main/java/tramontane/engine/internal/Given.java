package tramontane.engine.internal;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;

/**
 * What an analysis is given beside the design.
 *
 * @param single   data by type
 * @param byCase   data by type and case id
 * @param figures  figures by id
 * @param used     the answers that all this is from
 * @param missing  why it cannot run; empty where everything needed is there
 */
record Given(Map<Class<?>, Object> single, Map<Class<?>, Map<String, Object>> byCase, Map<String, List<Figure>> figures,
        List<Answer> used, Optional<Finding> missing) {
}
