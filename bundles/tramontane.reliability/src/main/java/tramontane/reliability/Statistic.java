package tramontane.reliability;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tramontane.reliability.statistics.Weibull;

/** Which life of alike units a number is. */
public enum Statistic {
    /** 1 % have failed. */
    L1("L1", 0.01),
    /** 10 % have failed. */
    L10("L10", 0.1),
    /** Half have failed. */
    L50("L50", 0.5),
    /** The mean of all lives. */
    MEAN("MTTF", Double.NaN);

    private final String word;
    private final double failed;

    Statistic(String word, double failed) {
        this.word = word;
        this.failed = failed;
    }

    /** The word in files and labels. */
    public String word() {
        return word;
    }

    /** The statistic of that word. */
    public static Optional<Statistic> named(String word) {
        return Arrays.stream(values()).filter(each -> each.word.equals(word)).findFirst();
    }

    /** All words. */
    public static List<String> words() {
        return Arrays.stream(values()).map(Statistic::word).toList();
    }

    /**
     * The distribution that has this life.
     *
     * @param life  above zero
     * @param shape Weibull shape, above zero
     */
    public Weibull with(double life, double shape) {
        return this == MEAN ? Weibull.ofMean(life, shape) : Weibull.through(life, failed, shape);
    }
}
