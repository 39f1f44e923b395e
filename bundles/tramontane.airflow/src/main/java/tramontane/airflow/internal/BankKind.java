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
import tramontane.model.Range;
import tramontane.model.Shape;
import tramontane.model.Values;
import tramontane.physics.units.QuantityKind;

/**
 * Identical air movers side by side, one behind another, or both.
 *
 * <p>The law given here is at the condition's speed setting times that of the bank times the rated speed. The air-flow analysis, which knows the
 * speed laws, makes banks itself.
 */
@Component(service = PassageKind.class)
public final class BankKind implements PassageKind {

    private static final int MOST = 1000;
    /** A flap that leaves more open than this is none. */
    private static final double MOST_LEAK = 0.5;

    private static final Form FORM = Form.of(Passage.BANK, "Identical air movers side by side, one behind another, or both.",
            Field.reference("mover", "air mover", Shape.Target.MOVER, "The part that sits at each position.").mandatory(),
            Field.whole("across", "across", 1, MOST, "How many stand side by side.").standard(1),
            Field.whole("along", "along", 1, MOST, "How many such rows stand side by side.").standard(1),
            Field.whole("series", "in series", 1, MOST,
                    "How many stand one behind another; positions are counted column by column, in the direction of flow.")
                    .standard(1),
            Field.amount("speed", "speed", QuantityKind.FRACTION, Range.PART_OF_ONE,
                    "Speed setting of this bank over that of the condition; where a control law acts, the law alone counts.")
                    .standard("100 %"),
            Field.amount("stageFactor", "stage factor", QuantityKind.FRACTION, Range.PART_OF_ONE,
                    "Pressure of each mover behind another over what it gives alone. 1 is ideal; swirl from the mover in front "
                            + "takes some (common practice: measure it).").standard(1),
            Field.yesNo("straightener", "straightener", "Whether vanes or a long way between movers behind one another take the "
                    + "swirl out of the air."),
            Field.amount("flowFactor", "flow derating", QuantityKind.FRACTION, Range.PART_OF_ONE,
                    "Flow of the curve at equal pressure where it sits, over that measured: obstructions and uneven inflow take "
                            + "some (common practice).").standard("100 %"),
            Field.amount("pressureFactor", "pressure derating", QuantityKind.FRACTION, Range.PART_OF_ONE,
                    "Pressure of the curve at equal flow where it sits, over that measured: obstructions and uneven inflow take "
                            + "some (common practice).").standard("100 %"),
            Field.amount("inletClearance", "inlet clearance", QuantityKind.LENGTH, Range.NOT_NEGATIVE,
                    "Free distance in front of the movers, to the next wall, card or filter."),
            Field.choice("installation", "installation category", AirMover.CATEGORIES,
                    "How the movers sit, by ISO 5801: A free inlet and outlet, as between bays; B ducted outlet, C ducted inlet, "
                            + "D both ducted.").standard("A"),
            Field.yesNo("flaps", "flaps", "Whether each column has a non-return flap that shuts when its movers stand still."),
            Field.amount("flapLoss", "flap loss", QuantityKind.NUMBER, Range.POSITIVE,
                    "Loss coefficient of an open flap on the open area of the mover, the head lost behind it not included.")
                    .standard(1.5),
            Field.amount("flapPressure", "flap pressure", QuantityKind.PRESSURE, Range.POSITIVE, "Pressure that lifts a flap.")
                    .standard("2 Pa"),
            Field.amount("flapLeak", "flap leak", QuantityKind.FRACTION, new Range(0, false, MOST_LEAK),
                    "Area of the leak of a shut flap over the open area of the mover.").standard("1 %"));

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
        if (setting.passage().tolerance().isPresent()) {
            problems.add(Problem.caution(Problem.place(place, "tolerance"), "is not used for a bank; state it with the curves of "
                    + "its mover"));
        }
        for (String field : Bank.Flap.FIELDS) {
            if (values.has(field) && !values.on("flaps")) {
                problems.add(Problem.caution(Problem.place(place, field), "says how a flap is, but the bank has none; expected "
                        + "with flaps set to true"));
            }
        }
        boolean sizeless = mover.get().openArea().isEmpty() && (mover.get().width().isEmpty() || mover.get().height().isEmpty());
        if (sizeless && values.on("flaps")) {
            problems.add(Problem.error(Problem.place(place, "mover"), "names air mover " + mover.get().id()
                    + ", of which no flap can be computed; expected its openArea, or width and height of its frame"));
        }
        boolean fails = setting.design().conditions().stream().flatMap(condition -> condition.failed().stream())
                .anyMatch(failed -> failed.bank().orElse(setting.passage().id()).equals(setting.passage().id()));
        if (fails && sizeless) {
            problems.add(Problem.error(Problem.place(place, "mover"), "names air mover " + mover.get().id()
                    + ", of which a failed one cannot be judged; expected its openArea, or width and height of its frame"));
        }
        return problems;
    }

    @Override
    public FlowLaw law(Values values, Setting setting) {
        Bank bank = Bank.of(values, setting);
        return bank.law(bank.ratedSpeed() * setting.condition().speedSetting() * bank.setting());
    }
}
