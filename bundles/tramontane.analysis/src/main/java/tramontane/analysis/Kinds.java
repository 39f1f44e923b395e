package tramontane.analysis;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import tramontane.model.Form;

/** Kinds of passages or links that an analysis draws on. */
public final class Kinds {

    private Kinds() {
    }

    /**
     * Kinds in the order of their names; of two of one name the first. One that fails when asked for its form is left out, so that
     * it takes nobody down with it; the engine says what is wrong with it.
     *
     * @param <K>   what they are
     * @param kinds as the framework hands them over
     * @param form  asks one for its form
     */
    public static <K> List<K> byName(Collection<? extends K> kinds, Function<? super K, Form> form) {
        Map<String, K> named = new TreeMap<>();
        for (K kind : kinds) {
            try {
                named.putIfAbsent(form.apply(kind).name(), kind);
            } catch (RuntimeException | LinkageError e) { // a stranger's mistake
                continue;
            }
        }
        return List.copyOf(named.values());
    }
}
