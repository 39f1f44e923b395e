package tramontane.engine.internal;

import java.util.List;
import tramontane.model.Consistency;
import tramontane.model.Design;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.References;
import tramontane.model.Value;

/** What the model itself can say about a design. */
interface ModelChecks {

    /** The checks of {@link Consistency} and {@link References}. */
    ModelChecks OF_THE_MODEL = new ModelChecks() {
        @Override
        public List<Problem> consistency(Design design) {
            return Consistency.check(design);
        }

        @Override
        public List<Problem> references(Form form, Value.Tree tree, Design design, String place) {
            return References.check(form, tree, design, place);
        }
    };

    /** Dangling names, duplicates, missing parts. */
    List<Problem> consistency(Design design);

    /** Dangling names in the parameters of a passage or link or in a section. */
    List<Problem> references(Form form, Value.Tree tree, Design design, String place);
}
