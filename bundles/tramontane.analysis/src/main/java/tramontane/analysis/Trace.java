package tramontane.analysis;

import java.util.List;
import org.osgi.annotation.versioning.ProviderType;
import tramontane.physics.units.QuantityKind;

/**
 * Where an analysis says where its figures come from. In normal runs it does nothing; when someone asks about a figure, the
 * engine runs the same analysis again with a recording one.
 *
 * <pre>{@code
 * if (run.trace().recording()) {
 *     run.trace().step(new Trace.Step(FLOW.id(), bank, FAN_LAWS, flow, List.of(
 *             new Trace.Term("speed", QuantityKind.ROTATIONAL_SPEED, speed, "condition " + condition.id()))));
 * }
 * }</pre>
 */
@ProviderType
public interface Trace {

    /** What stands between a figure's id and its place where an input names both: {@code airflow.bay.pressure at box}. */
    String AT = " at ";

    /** To which nobody listens. */
    Trace SILENT = new Trace() {
        @Override
        public boolean recording() {
            return false;
        }

        @Override
        public void step(Step step) {
            // nobody listens
        }
    };

    /**
     * One that keeps what it is told.
     *
     * @param steps to which every step is added
     */
    static Trace into(List<Step> steps) {
        return new Trace() {
            @Override
            public boolean recording() {
                return true;
            }

            @Override
            public void step(Step step) {
                steps.add(step);
            }
        };
    }

    /** Whether anybody listens; guard the making of steps with it. */
    boolean recording();

    /** Says how one value came about. */
    void step(Step step);

    /**
     * How one value came about.
     *
     * @param figure   the figure's id, or a name of its own for a value on the way
     * @param place    where
     * @param relation the formula
     * @param value    what came out, SI units
     * @param inputs   what went in
     */
    record Step(String figure, String place, Relation relation, double value, List<Term> inputs) {
        public Step {
            inputs = List.copyOf(inputs);
        }
    }

    /**
     * One value that went into a formula.
     *
     * @param name     what it is called
     * @param quantity its kind
     * @param value    its value, SI units
     * @param from     where it stands: a place in the design, another figure's id (of the same case, at the same place if it has
     *                 a step there), a figure's id with its place behind {@link #AT}, a standard
     */
    record Term(String name, QuantityKind quantity, double value, String from) {
    }
}
