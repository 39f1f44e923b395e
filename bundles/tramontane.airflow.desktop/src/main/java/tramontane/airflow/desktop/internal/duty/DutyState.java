package tramontane.airflow.desktop.internal.duty;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * What is shown of duty points.
 *
 * @param bank       the bank that was last chosen or selected; empty for the first
 * @param hidden     conditions whose system curves are left out, as declared in the design
 * @param others     whether other conditions than that in front are shown at all
 * @param speeds     whether curves at other speeds are shown
 * @param tolerance  whether the tolerance of the curve is shown
 * @param efficiency whether the efficiency is shown
 */
public record DutyState(Optional<String> bank, Set<String> hidden, boolean others, boolean speeds, boolean tolerance, boolean efficiency) {

    /** What is shown at first. */
    public static final DutyState FIRST = new DutyState(Optional.empty(), Set.of(), true, false, true, false);

    public DutyState {
        Objects.requireNonNull(bank);
        hidden = Set.copyOf(hidden);
    }

    /** With another bank. */
    public DutyState withBank(String other) {
        return new DutyState(Optional.of(other), hidden, others, speeds, tolerance, efficiency);
    }

    /** With a condition shown, or left out. */
    public DutyState withCondition(String condition, boolean shown) {
        Set<String> left = new TreeSet<>(hidden);
        if (shown) {
            left.remove(condition);
        } else {
            left.add(condition);
        }
        return new DutyState(bank, left, others, speeds, tolerance, efficiency);
    }

    /** With other conditions, or without any. */
    public DutyState withOthers(boolean shown) {
        return new DutyState(bank, hidden, shown, speeds, tolerance, efficiency);
    }

    /** With or without curves at other speeds. */
    public DutyState withSpeeds(boolean shown) {
        return new DutyState(bank, hidden, others, shown, tolerance, efficiency);
    }

    /** With or without the tolerance. */
    public DutyState withTolerance(boolean shown) {
        return new DutyState(bank, hidden, others, speeds, shown, efficiency);
    }

    /** With or without the efficiency. */
    public DutyState withEfficiency(boolean shown) {
        return new DutyState(bank, hidden, others, speeds, tolerance, shown);
    }

    /** What of it is kept from one start to the next. */
    public String text() {
        List<String> words = new ArrayList<>();
        if (others) {
            words.add("others");
        }
        if (speeds) {
            words.add("speeds");
        }
        if (tolerance) {
            words.add("tolerance");
        }
        if (efficiency) {
            words.add("efficiency");
        }
        return String.join(" ", words);
    }

    /** Reads what {@link #text} gave. */
    public static DutyState parse(String text) {
        Set<String> words = Set.copyOf(new TreeSet<>(List.of(text.split(" "))));
        return new DutyState(Optional.empty(), Set.of(), words.contains("others"), words.contains("speeds"), words.contains("tolerance"),
                words.contains("efficiency"));
    }
}
