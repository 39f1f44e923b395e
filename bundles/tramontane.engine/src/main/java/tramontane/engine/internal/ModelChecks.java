package tramontane.engine.internal;

import java.util.List;
import tramontane.model.Design;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Value;

/** What the model itself can say about a design. */
interface ModelChecks {

    /** No check at all. */
    ModelChecks NONE = new ModelChecks() {
        @Override
        public List<Problem> consistency(Design design) {
            return List.of();
        }

        @Override
        public List<Problem> references(Form form, Value.Tree tree, Design design, String place) {
            return List.of();
        }
    };

    /** Dangling names, duplicates, missing parts. */
    List<Problem> consistency(Design design);

    /** Dangling names in the parameters of a passage or in a section. */
    List<Problem> references(Form form, Value.Tree tree, Design design, String place);
}
