package tramontane.cli.internal;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** What somebody may have meant who wrote something else. */
final class Suggestion {

    private Suggestion() {
    }

    /** The known word that is nearest, if one is near: at most a third of its letters differ. */
    static Optional<String> of(String written, Collection<String> known) {
        String word = written.toLowerCase(Locale.ROOT);
        return known.stream().min(Comparator.comparingInt(each -> distance(word, each.toLowerCase(Locale.ROOT))))
                .filter(each -> distance(word, each.toLowerCase(Locale.ROOT)) <= Math.max(1, each.length() / 3));
    }

    /** Edit distance: insertions, deletions and replacements (Levenshtein 1966), swaps of neighbours counted as one. */
    static int distance(String one, String other) {
        int[][] distance = new int[one.length() + 1][other.length() + 1];
        for (int i = 0; i <= one.length(); i++) {
            for (int j = 0; j <= other.length(); j++) {
                if (i == 0 || j == 0) {
                    distance[i][j] = i + j;
                    continue;
                }
                int replaced = distance[i - 1][j - 1] + (one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1);
                distance[i][j] = Math.min(replaced, 1 + Math.min(distance[i - 1][j], distance[i][j - 1]));
                if (i > 1 && j > 1 && one.charAt(i - 1) == other.charAt(j - 2) && one.charAt(i - 2) == other.charAt(j - 1)) {
                    distance[i][j] = Math.min(distance[i][j], distance[i - 2][j - 2] + 1);
                }
            }
        }
        return distance[one.length()][other.length()];
    }
}
