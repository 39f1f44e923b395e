package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.List;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Relation;
import tramontane.analysis.Trace;
import tramontane.model.Values;
import tramontane.physics.units.QuantityKind;

/** What goes into a passage's flow law, for who asks. */
final class Inputs {

    private final PassageKind.Setting setting;
    private final List<Trace.Term> terms = new ArrayList<>();

    private Inputs(PassageKind.Setting setting) {
        this.setting = setting;
    }

    static Inputs of(PassageKind.Setting setting) {
        return new Inputs(setting);
    }

    /** A value of the passage itself. */
    Inputs add(String name, QuantityKind quantity, double value) {
        terms.add(new Trace.Term(name, quantity, value, "passage " + setting.passage().id()));
        return this;
    }

    Inputs number(String name, double value) {
        return add(name, QuantityKind.NUMBER, value);
    }

    Inputs length(String name, double value) {
        return add(name, QuantityKind.LENGTH, value);
    }

    Inputs area(String name, double value) {
        return add(name, QuantityKind.AREA, value);
    }

    /** The exit velocity head, in velocity heads. */
    Inputs exit(Values values) {
        return number("velocity heads e lost at the exit", ExitHead.of(values));
    }

    /** The condition's clogging. */
    Inputs clogging() {
        terms.add(new Trace.Term("clogging", QuantityKind.NUMBER, setting.condition().cloggingFactor(),
                "condition " + setting.condition().id()));
        return this;
    }

    PassageKind.Origin of(Relation relation) {
        return new PassageKind.Origin(relation, terms);
    }
}
