package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.List;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Values;

/**
 * The velocity head that air loses where it leaves a passage into a bay, whichever way it goes; it keeps it where the passage
 * is marked as going on into the next one.
 *
 * <p>The mark counts for both directions: backwards, the head that is lost at the passage's own start then stands with the
 * next passage, so that the sum along a row of passages of one section stays right.
 */
final class ExitHead {

    static final String NAME = "continues";
    static final Field FIELD = Field.yesNo(NAME, "continues", "Whether its air goes on into the next passage without losing its "
            + "velocity head in a bay between them; its drop is then less by one velocity head.");

    private ExitHead() {
    }

    /** Velocity heads lost at the exit: 1, or 0 where the air goes on. */
    static double of(Values values) {
        return values.on(NAME) ? 0 : 1;
    }

    /** A loss coefficient that contains the exit velocity head, without it where the air goes on. */
    static double in(double loss, Values values) {
        return loss - 1 + of(values);
    }

    /** Whether there is something left of a loss coefficient that contains the exit velocity head. */
    static List<Problem> check(double loss, Values values, String place) {
        return in(loss, values) > 0 ? List.of() : List.of(Problem.error(Problem.place(place, NAME), "leaves nothing of its loss "
                + "coefficient of " + (float) loss + ", of which 1 is the exit velocity head; expected a coefficient above 1"));
    }

    /** A form of a section, fields of a kind's own, and this one. */
    static Form form(String name, String help, List<Field> section, Field... own) {
        List<Field> fields = new ArrayList<>(section);
        fields.addAll(List.of(own));
        fields.add(FIELD);
        return new Form(name, help, false, fields);
    }
}
