package tramontane.airflow.desktop.internal.path;

import java.util.Optional;
import tramontane.model.Design;
import tramontane.model.edit.Subject;

/** Something in the picture that can be pointed at. */
sealed interface PathTarget {

    /** Outside at the left. */
    PathTarget SOURCE = new Outside(true);
    /** Outside at the right. */
    PathTarget SINK = new Outside(false);

    /** Outside, at the left or at the right. */
    record Outside(boolean left) implements PathTarget {
    }

    /** A bay, in the design or not. */
    record Chamber(String id) implements PathTarget {
    }

    /** A passage, by its number in the design. */
    record Joint(int passage) implements PathTarget {
    }

    /** A position of a bank, counted from 1; 0 for all of a bank too large to draw. */
    record Position(int passage, int position) implements PathTarget {
    }

    /** What it is for the whole window; empty for what the design does not have. */
    default Optional<Subject> subject(Design design) {
        return switch (this) {
            case Outside outside -> Optional.of(Subject.OUTSIDE);
            case Chamber(String id) -> Optional.of(Subject.bay(id)).filter(subject -> subject.isIn(design));
            case Joint(int passage) -> passage(design, passage);
            case Position(int passage, int position) -> passage(design, passage);
        };
    }

    private static Optional<Subject> passage(Design design, int passage) {
        return passage < design.airPath().passages().size() ? Optional.of(Subject.Kind.PASSAGE.subjects(design).get(passage)) : Optional.empty();
    }

    /** What stands for a subject in the picture of a design; empty where nothing does. */
    static Optional<PathTarget> of(Subject subject, Design design) {
        if (subject.isOutside()) {
            return Optional.of(SOURCE);
        }
        if (subject.index(design).isEmpty()) {
            return Optional.empty();
        }
        return switch (subject.kind()) {
            case BAY -> Optional.of(new Chamber(subject.id()));
            case PASSAGE -> Optional.of(new Joint(subject.index(design).getAsInt()));
            default -> Optional.empty();
        };
    }
}
