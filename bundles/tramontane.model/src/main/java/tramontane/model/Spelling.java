package tramontane.model;

import java.util.Collection;
import java.util.List;
import java.util.Optional;

/** Guesses which known name a misspelt one stands for. */
public final class Spelling {

    /** Beyond so many names no guess is made: it would take longer than it helps. */
    private static final int MOST_NAMES = 1000;

    /** Letters from which the beginning of one name alone is taken for it. */
    private static final int PREFIX = 4;

    /** Longer names than this are not typed by hand. */
    private static final int LONGEST_NAME = 100;

    private Spelling() {
    }

    /** What to put behind a sentence about a wrong name: {@code  (did you mean "plenum"?)}, or nothing. */
    public static String hint(String wrong, Collection<String> known) {
        return nearest(wrong, known).map(name -> " (did you mean " + FormReader.quote(name) + "?)").orElse("");
    }

    /**
     * The known name one edit away: a letter more, less, changed or two swapped, or the case. Two edits in long names;
     * else the only one that begins so.
     *
     * @param wrong the name as it was written
     * @param known the names there are
     */
    public static Optional<String> nearest(String wrong, Collection<String> known) {
        if (known.size() > MOST_NAMES || wrong.length() > LONGEST_NAME) {
            return Optional.empty();
        }
        int allowed = wrong.length() < 3 ? 0 : wrong.length() < 8 ? 1 : 2;
        String nearest = null;
        int least = allowed + 1;
        for (String name : known) {
            int edits = name.equalsIgnoreCase(wrong) ? 0 : distance(wrong, name, least);
            if (edits < least) {
                least = edits;
                nearest = name;
            }
        }
        if (nearest == null && wrong.length() >= PREFIX) {
            List<String> longer = known.stream().filter(name -> name.startsWith(wrong)).toList();
            return longer.size() == 1 ? Optional.of(longer.getFirst()) : Optional.empty();
        }
        return Optional.ofNullable(nearest);
    }

    /**
     * Edits between two names, neighbours swapped counting as one (optimal string alignment distance: L. Boytsov, "Indexing
     * methods for approximate dictionary searching", ACM Journal of Experimental Algorithmics 16, 2011, section 2.2).
     *
     * @return the distance, or {@code enough} where lengths alone show that it is no less
     */
    private static int distance(String a, String b, int enough) {
        if (Math.abs(a.length() - b.length()) >= enough) {
            return enough;
        }
        int[] beforeLast = new int[b.length() + 1];
        int[] last = new int[b.length() + 1];
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            last[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                boolean same = a.charAt(i - 1) == b.charAt(j - 1);
                row[j] = Math.min(last[j - 1] + (same ? 0 : 1), 1 + Math.min(row[j - 1], last[j]));
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    row[j] = Math.min(row[j], beforeLast[j - 2] + 1);
                }
            }
            int[] free = beforeLast;
            beforeLast = last;
            last = row;
            row = free;
        }
        return last[b.length()];
    }
}
