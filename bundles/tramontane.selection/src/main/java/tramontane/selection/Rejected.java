package tramontane.selection;

import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.analysis.Sentence;
import tramontane.model.Design;

/**
 * A part, or one in an arrangement, that does not do.
 *
 * @param part        its id
 * @param arrangement how it was arranged; empty where none fits
 * @param reason      in one sentence, which requirement fails and by how much
 * @param speed       how many times its full speed would do, by the reduced design; empty where speed is not what it lacks
 * @param exactly     whether it was judged exactly, or turned down by the reduced design
 * @param remedy      what would have to change, or what is found where it fails and what to do about that; empty where nothing was
 *                    looked for, or found
 * @param setting     the speed setting that it was judged at; empty where it was not judged exactly
 */
public record Rejected(String part, Optional<Arrangement> arrangement, Sentence reason, OptionalDouble speed, boolean exactly,
        Sentence remedy, OptionalDouble setting) {

    /** One that was not solved. */
    public Rejected(String part, Optional<Arrangement> arrangement, Sentence reason, OptionalDouble speed, boolean exactly, Sentence remedy) {
        this(part, arrangement, reason, speed, exactly, remedy, OptionalDouble.empty());
    }

    /** {@code P120-38, 2 side by side}. */
    public String words() {
        return part + arrangement.map(each -> ", " + each.words()).orElse("");
    }

    /** A design with it all the same, at the setting that it was judged at, or at full speed; empty where no arrangement of it fits. */
    public Optional<Design> in(Task task) {
        return arrangement.flatMap(each -> task.parts().stream().filter(candidate -> candidate.id().equals(part)).findFirst()
                .map(mover -> Placement.of(task.design(), task.bank(), mover, each, setting.orElse(1))));
    }
}
