package tramontane.engine.internal;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tramontane.analysis.Figure;
import tramontane.analysis.Input;
import tramontane.model.Condition;
import tramontane.model.Design;

/** What one analysis is handed in one run. */
final class HandedInput implements Input {

    private final Card card;
    private final Design design;
    private final Given given;

    HandedInput(Card card, Design design, Given given) {
        this.card = card;
        this.design = design;
        this.given = given;
    }

    @Override
    public Design design() {
        return design;
    }

    @Override
    public Condition condition() {
        if (card.isDesignWide()) {
            throw new IllegalStateException("a design-wide analysis has no condition of its own");
        }
        return design.conditions().stream().findFirst().orElseThrow(
                () -> new IllegalStateException("reads() left the condition out, so it cannot be used"));
    }

    @Override
    public <R> R result(Class<R> type) {
        Object data = given.single().get(type);
        if (data == null) {
            throw new IllegalArgumentException(given.byCase().containsKey(type)
                    ? type.getSimpleName() + " is there once per condition: ask for results(), not for result()"
                    : type.getSimpleName() + " was not asked for in needs()");
        }
        return type.cast(data);
    }

    @Override
    public <R> Map<String, R> results(Class<R> type) {
        Map<String, Object> data = given.byCase().get(type);
        if (data == null) {
            throw new IllegalArgumentException(given.single().containsKey(type)
                    ? type.getSimpleName() + " is there once: ask for result(), not for results()"
                    : type.getSimpleName() + " was not asked for in needs()");
        }
        Map<String, R> cast = new LinkedHashMap<>();
        data.forEach((id, one) -> cast.put(id, type.cast(one)));
        return Collections.unmodifiableMap(cast);
    }

    @Override
    public List<Figure> figures(String id) {
        List<Figure> figures = given.figures().get(id);
        if (figures == null) {
            throw new IllegalArgumentException("figure " + id + " was not asked for in needs()");
        }
        return figures;
    }
}
