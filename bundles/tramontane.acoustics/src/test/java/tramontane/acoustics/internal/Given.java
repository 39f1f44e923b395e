package tramontane.acoustics.internal;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.analysis.Figure;
import tramontane.analysis.Input;
import tramontane.model.Condition;
import tramontane.model.Design;

/** What an analysis is handed. */
record Given(Design design, Optional<Condition> one, Map<String, ?> data) implements Input {

    @Override
    public Condition condition() {
        return one.orElseThrow(IllegalStateException::new);
    }

    @Override
    public <R> R result(Class<R> type) {
        return type.cast(data.get(""));
    }

    @Override
    public <R> Map<String, R> results(Class<R> type) {
        Map<String, R> results = new LinkedHashMap<>();
        data.forEach((id, each) -> results.put(id, type.cast(each)));
        return results;
    }

    @Override
    public List<Figure> figures(String id) {
        return List.of();
    }
}
