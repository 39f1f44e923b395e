package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Relation;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Values;
import tramontane.physics.WireScreen;
import tramontane.physics.units.QuantityKind;

/**
 * A finger guard of round bars or rings over the opening of a mover.
 *
 * <p>Its bars are taken as the wires of a screen: I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed. (1994), diagram 8-6.
 * The swirl and uneven velocity close to a mover are not in it.
 */
@Component(service = PassageKind.class)
public final class FingerGuardKind implements PassageKind {

    private static final Relation GIVEN = new Relation("local loss", "Δp = (K + e) ρ v²/2, v = Q/A", "loss coefficient as given", "");
    private static final Relation BARS = new Relation("round bars",
            "Δp = (K + e) ρ v²/2, v = Q/A, K = 1.3 (1-F) + (1/F - 1)²; K (1 + 21/Re) where the bar's diameter is known",
            "I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed. (1994), diagram 8-6, for screens of round wires",
            "even flow; close to a mover it loses more; other correlations differ by 10 to 30 %");

    private static final Form FORM = ExitHead.form("finger guard", "A finger guard of round bars or rings over the opening of a "
            + "mover. Right before or behind a mover mark it as continuing: no velocity head is lost between them.",
            CrossSection.sizeFields("opening"),
            Field.amount("openRatio", "open ratio", QuantityKind.FRACTION, ScreenKind.OPEN_RATIO,
                    "Area between the bars over area of the opening."),
            Field.amount("freeArea", "free area", QuantityKind.AREA, Range.POSITIVE, "Area between all bars together."),
            Field.amount("wireDiameter", "bar diameter", QuantityKind.LENGTH, Range.POSITIVE,
                    "Diameter of a bar or ring; with the spacing."),
            Field.amount("spacing", "spacing", QuantityKind.LENGTH, Range.POSITIVE,
                    "Distance of two bars or rings from middle to middle; with the bar diameter."),
            Field.amount("lossCoefficient", "loss coefficient", QuantityKind.NUMBER, Range.POSITIVE, "Drop of total pressure over "
                    + "the velocity head in the opening, without the head lost behind it. Calculated where not given."));

    private static final List<List<String>> OPEN = List.of(List.of("openRatio"), List.of("freeArea"),
            List.of("wireDiameter", "spacing"), List.of("lossCoefficient"));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        List<Problem> problems = new ArrayList<>(CrossSection.checkSize(values, place, "how large its opening is"));
        problems.addAll(Checks.oneOf(values, place, "how open it is", OPEN));
        problems.addAll(ScreenKind.checkPitch(values, place, "spacing"));
        CrossSection.of(values).map(CrossSection::area).filter(area -> values.has("freeArea")
                && values.si("freeArea") > ScreenKind.OPEN_RATIO.most() * area).ifPresent(area -> problems.add(Problem.error(
                        Problem.place(place, "freeArea"), "leaves no room for bars in the opening it lies in; expected at most "
                                + (float) (ScreenKind.OPEN_RATIO.most() * area) + " m²")));
        return problems;
    }

    private static double face(Values values) {
        return CrossSection.of(values).orElseThrow().area();
    }

    private static double open(Values values) {
        return values.has("openRatio") ? values.si("openRatio")
                : values.has("freeArea") ? values.si("freeArea") / face(values)
                : WireScreen.bars(values.si("wireDiameter"), values.si("spacing"));
    }

    private static double loss(Values values) {
        return values.has("lossCoefficient") ? values.si("lossCoefficient") : WireScreen.loss(open(values));
    }

    @Override
    public FlowLaw law(Values values, Setting setting) {
        return values.has("wireDiameter")
                ? ScreenKind.law(face(values), open(values), values.si("wireDiameter"), ExitHead.of(values))
                : LocalLoss.of(loss(values) + ExitHead.of(values), face(values));
    }

    /** Its face: what stands at it sees the face velocity, not that between the bars. */
    @Override
    public OptionalDouble flowArea(Values values, Setting setting) {
        return OptionalDouble.of(face(values));
    }

    @Override
    public Optional<Origin> origin(Values values, Setting setting) {
        Inputs inputs = Inputs.of(setting).area("opening A", face(values)).number("loss coefficient K", loss(values)).exit(values);
        return Optional.of(values.has("lossCoefficient") ? inputs.of(GIVEN)
                : inputs.add("open ratio F", QuantityKind.FRACTION, open(values)).of(BARS));
    }
}
