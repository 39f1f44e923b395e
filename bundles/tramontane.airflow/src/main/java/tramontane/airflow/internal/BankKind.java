package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.PassageKind;
import tramontane.model.AirMover;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Passage;
import tramontane.model.Problem;
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
    public List<Problem> check(Values values, Setting setting, String place) {
        long positions = (long) values.whole("across") * values.whole("along") * values.whole("series");
        if (positions > MOST) {
            return List.of(Problem.error(place, "holds " + positions + " movers; expected at most " + MOST));
        }
        Optional<AirMover> mover = setting.design().airMover(values.text("mover"));
        if (mover.isEmpty()) {
            return List.of(); // that it is missing has been said
        }
        List<Problem> problems = new ArrayList<>();
        if (mover.get().ratedSpeedSi().isEmpty()) {
            problems.add(Problem.error(Problem.place(place, "mover"), "names air mover " + mover.get().id()
                    + ", which states no speed; expected its ratedSpeed, or the speed of a curve"));
        }
        boolean fails = setting.design().conditions().stream().flatMap(condition -> condition.failed().stream())
                .anyMatch(failed -> failed.bank().orElse(setting.passage().id()).equals(setting.passage().id()));
        if (fails && mover.get().openArea().isEmpty() && (mover.get().width().isEmpty() || mover.get().height().isEmpty())) {
            problems.add(Problem.error(Problem.place(place, "mover"), "names air mover " + mover.get().id()
                    + ", of which a failed one cannot be judged; expected its openArea, or width and height of its frame"));
        }
        return problems;
    }

    @Override
    public FlowLaw law(Values values, Setting setting) {
        Bank bank = Bank.of(values, setting);
        return bank.law(bank.ratedSpeed() * setting.condition().speedSetting());
    }
}
