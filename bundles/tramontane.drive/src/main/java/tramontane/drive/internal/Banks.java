package tramontane.drive.internal;

import tramontane.drive.BankDrive;
import tramontane.drive.Control;
import tramontane.drive.MoverDrive;
import tramontane.model.Condition;
import tramontane.model.FormReader;
import tramontane.model.Passage;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;

/** What a bank's passage says of its movers. */
final class Banks {

    private Banks() {
    }

    /** Number of movers. */
    static int positions(Passage bank) {
        return whole(bank, "across") * whole(bank, "along") * whole(bank, "series");
    }

    /** Number of movers that have not failed. */
    static int running(Passage bank, Condition condition) {
        long failed = condition.failed().stream().filter(each -> each.bank().orElse(bank.id()).equals(bank.id()) && each.position().isPresent())
                .map(each -> each.position().get()).distinct().count();
        return Math.max(0, positions(bank) - (int) failed);
    }

    private static int whole(Passage bank, String field) {
        return bank.parameters().get(field).filter(Value.Num.class::isInstance).map(value -> (int) ((Value.Num) value).number()).orElse(1);
    }

    /**
     * How the speed of its movers is set in truth: as the bank says where the part can do that, as the part does where the bank says
     * nothing, and not at all where the bank wants what the part cannot. What acts on the supply can be done to any part.
     */
    static Control control(MoverDrive part, BankDrive bank) {
        Control own = part.control().kind();
        Control wanted = bank.control().orElse(own);
        return wanted == own || wanted.onSupply() ? wanted : own == Control.THERMISTOR ? own : Control.NONE;
    }

    /** Whether it says that its movers run slower than the condition has them. */
    static boolean slowed(Passage bank) {
        return bank.parameters().get("speed").flatMap(value -> FormReader.quantity(value, QuantityKind.FRACTION))
                .filter(share -> share.si() != 1).isPresent();
    }

    /** The id of its part. */
    static String mover(Passage bank) {
        return bank.parameters().get("mover").filter(Value.Text.class::isInstance).map(value -> ((Value.Text) value).text()).orElse("");
    }
}
