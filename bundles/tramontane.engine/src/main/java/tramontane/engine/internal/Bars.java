package tramontane.engine.internal;

import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** The bundles that are not called any more because one of their analyses ran without end. Holds until restart. */
final class Bars {

    private final Map<String, String> reasons = new ConcurrentHashMap<>();

    /** Bars the bundle of an analysis. */
    void bar(Card card, Duration limit) {
        reasons.putIfAbsent(card.bundle(), "bundle " + card.bundle() + " is barred until the program is started again: its"
                + " analysis " + card.id() + " ran beyond the time limit of " + words(limit));
    }

    /** Why a bundle is barred. */
    Optional<String> reason(String bundle) {
        return Optional.ofNullable(reasons.get(bundle));
    }

    /** A duration as people say it. */
    static String words(Duration duration) {
        long millis = duration.toMillis();
        return millis % 60_000 == 0 && millis > 0 ? millis / 60_000 + " min"
                : millis % 1000 == 0 ? millis / 1000 + " s" : millis + " ms";
    }
}
