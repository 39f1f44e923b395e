package tramontane.desktop.internal.judging;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.model.Design;
import tramontane.model.edit.Subject;

/** The things of a design by the names that results have for them. */
final class Places {

    /** Of one name in several lists, results mean the first of these. */
    private static final List<Subject.Kind> MEANT = List.of(Subject.Kind.PASSAGE, Subject.Kind.BAY, Subject.Kind.HEAT_SOURCE,
            Subject.Kind.AIR_MOVER, Subject.Kind.CONTROL_LAW, Subject.Kind.CONDITION);

    private final Map<String, Subject> byId = new HashMap<>();
    private final Map<String, Integer> ranks = new HashMap<>();
    private final List<Map.Entry<String, Subject>> phrases = new ArrayList<>();

    private Places(Design design) {
        for (Subject.Kind kind : MEANT) {
            for (Subject subject : kind.subjects(design)) {
                if (subject.nth() == 0 && !subject.id().isEmpty()) {
                    byId.putIfAbsent(subject.id(), subject);
                    phrases.add(Map.entry(kind.noun() + " " + subject.id(), subject));
                }
            }
        }
        design.airPath().banks().forEach(bank -> phrases.add(Map.entry("bank " + bank.id(), Subject.passage(bank.id()))));
        byId.putIfAbsent(Subject.OUTSIDE.id(), Subject.OUTSIDE);
        phrases.sort(Comparator.comparing((Map.Entry<String, Subject> phrase) -> phrase.getKey().length()).reversed());
        ranks.put("", 0);
        List.of(Subject.Kind.BAY, Subject.Kind.PASSAGE, Subject.Kind.HEAT_SOURCE, Subject.Kind.CONTROL_LAW, Subject.Kind.AIR_MOVER)
                .forEach(kind -> kind.subjects(design).forEach(subject -> ranks.putIfAbsent(subject.id(), ranks.size())));
    }

    static Places of(Design design) {
        return new Places(design);
    }

    /** The thing that a result names; a place within one, as {@code fans 2}, is the thing. */
    Optional<Subject> subject(String place) {
        for (int end = place.length(); end > 0; end = Math.max(place.lastIndexOf(' ', end - 1), place.lastIndexOf(',', end - 1))) {
            Subject found = byId.get(place.substring(0, end));
            if (found != null) {
                return Optional.of(found);
            }
        }
        return Optional.empty();
    }

    /** Where a place stands among others in the order of the design; what is not in it comes last. */
    int rank(String place) {
        Integer rank = ranks.get(place);
        return rank != null ? rank : subject(place).map(subject -> ranks.getOrDefault(subject.id(), Integer.MAX_VALUE)).orElse(Integer.MAX_VALUE);
    }

    /** The thing that a text names by its kind and id, as {@code heat source frame grabber, condition hot day}; the one named first. */
    Optional<Subject> named(String text) {
        Optional<Subject> found = Optional.empty();
        int first = Integer.MAX_VALUE;
        for (Map.Entry<String, Subject> phrase : phrases) {
            int at = text.indexOf(phrase.getKey());
            int end = at + phrase.getKey().length();
            if (at >= 0 && at < first && (at == 0 || !Character.isLetterOrDigit(text.charAt(at - 1)))
                    && (end == text.length() || !Character.isLetterOrDigit(text.charAt(end)))) {
                first = at;
                found = Optional.of(phrase.getValue());
            }
        }
        return found;
    }
}
