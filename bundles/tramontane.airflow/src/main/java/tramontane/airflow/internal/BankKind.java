package tramontane.airflow.internal;

import org.osgi.service.component.annotations.Component;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.PassageKind;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Passage;
import tramontane.model.Shape;
import tramontane.model.Values;

/**
 * Identical air movers side by side, one behind another, or both.
 *
 * <p>The law given here is at the condition's speed setting times the rated speed. The air-flow analysis, which knows the
 * speed laws, makes banks itself.
 */
@Component(service = PassageKind.class)
public final class BankKind implements PassageKind {

    private static final int MOST = 1000;

    private static final Form FORM = Form.of(Passage.BANK, "Identical air movers side by side, one behind another, or both.",
            Field.reference("mover", "air mover", Shape.Target.MOVER, "The part that sits at each position.").mandatory(),
            Field.whole("across", "across", 1, MOST, "How many stand side by side.").standard(1),
            Field.whole("along", "along", 1, MOST, "How many such rows stand side by side.").standard(1),
            Field.whole("series", "in series", 1, MOST,
                    "How many stand one behind another; positions are counted column by column, in the direction of flow.")
                    .standard(1));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public FlowLaw law(Values values, Setting setting) {
        Bank bank = Bank.of(values, setting);
        return bank.law(bank.ratedSpeed() * setting.condition().speedSetting());
    }
}
