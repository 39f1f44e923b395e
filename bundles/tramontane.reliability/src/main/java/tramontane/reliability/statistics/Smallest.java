package tramontane.reliability.statistics;

import java.util.OptionalInt;
import java.util.function.IntPredicate;

/** Search for the smallest whole number that is enough. */
final class Smallest {

    private Smallest() {
    }

    /**
     * The smallest number from the first to the last that is enough; all above it must be enough too.
     *
     * @return empty where the last is not
     */
    static OptionalInt from(int first, int last, IntPredicate enough) {
        if (enough.test(first)) {
            return OptionalInt.of(first);
        }
        int low = first;
        long step = 1;
        int high = (int) Math.min(last, first + step);
        while (!enough.test(high)) {
            if (high == last) {
                return OptionalInt.empty();
            }
            low = high;
            step *= 2;
            high = (int) Math.min(last, first + step);
        }
        while (high - low > 1) {
            int middle = low + (high - low) / 2;
            if (enough.test(middle)) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return OptionalInt.of(high);
    }
}
