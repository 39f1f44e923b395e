package tramontane.selection;

import java.util.List;
import java.util.Optional;
import tramontane.model.AirPath;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.model.Value;

/** A flow against a pressure, for who has no design yet. */
public final class Duty {

    /** The bank of {@link #design}. */
    public static final String BANK = "movers";

    private Duty() {
    }

    /**
     * A box whose air path takes a pressure at a flow, square in the flow, and that is to have that flow; its bank holds no part yet.
     *
     * @param flow      m³/s at the inlet of the movers
     * @param pressure  fan static pressure there, above 0 Pa
     * @param condition the air
     */
    public static Design design(Quantity flow, Quantity pressure, Condition condition) {
        Value.Tree resistance = Value.Tree.EMPTY.with("flow", flow.written()).with("pressure", pressure.written());
        Passage path = new Passage("air path", "measured resistance", Bay.OUTSIDE, "box", resistance);
        Passage bank = new Passage(BANK, Passage.BANK, "box", Bay.OUTSIDE, Value.Tree.EMPTY);
        Requirement requirement = new Requirement("airflow.bank.flow", BANK, Optional.of(flow), Optional.empty(), List.of(), Value.Tree.EMPTY);
        return new Design("Duty of " + text(flow) + " at " + text(pressure), Design.EMPTY.equipment(), List.of(),
                new AirPath(List.of(new Bay("box", Optional.empty(), Value.Tree.EMPTY)), List.of(path, bank), Value.Tree.EMPTY), List.of(),
                List.of(condition), List.of(), List.of(), List.of(requirement), Value.Tree.EMPTY);
    }

    private static String text(Quantity quantity) {
        return quantity.written() instanceof Value.Text(String words) ? words : quantity.si() + "";
    }
}
