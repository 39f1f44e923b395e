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

/** A screen of round wires: I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed. (1994), diagram 8-6. */
@Component(service = PassageKind.class)
public final class ScreenKind implements PassageKind {

    /** Largest open ratio: beyond it a screen is hardly one, and with no wire at all it loses nothing. */
    static final Range OPEN_RATIO = new Range(0, false, 0.99);

    private static final Relation SCREEN = new Relation("screen of round wires",
            "Δp = (K (1 + 21/Re) + e) ρ v²/2, v = Q/A, K = 1.3 (1-F) + (1/F - 1)², Re on the wire and the velocity in the holes",
            "I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed. (1994), diagram 8-6; its factors at low Re from memory",
            "clean; Re from about 50; other correlations differ by 10 to 30 %, more below F 0.3");

    private static final Form FORM = ExitHead.form("screen", "A screen of round wires, as against insects.",
            CrossSection.sizeFields("screen"),
            Field.amount("wireDiameter", "wire diameter", QuantityKind.LENGTH, Range.POSITIVE, "Diameter of a wire.").mandatory(),
            Field.amount("meshPitch", "mesh pitch", QuantityKind.LENGTH, Range.POSITIVE,
                    "Distance of two wires of a square mesh, from middle to middle."),
            Field.amount("openRatio", "open ratio", QuantityKind.FRACTION, OPEN_RATIO, "Area of the holes over area of the face."));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        List<Problem> problems = new ArrayList<>(CrossSection.checkSize(values, place, "how large its face is"));
        problems.addAll(Checks.oneOf(values, place, "how open it is", List.of(List.of("meshPitch"), List.of("openRatio"))));
        problems.addAll(checkPitch(values, place, "meshPitch"));
        return problems;
    }

    /** Whether wires at a pitch leave room between them. */
    static List<Problem> checkPitch(Values values, String place, String pitch) {
        return values.has(pitch) && values.has("wireDiameter") && values.si(pitch) <= values.si("wireDiameter")
                ? List.of(Problem.error(Problem.place(place, pitch), "leaves no room between the wires; expected above "
                        + (float) (1000 * values.si("wireDiameter")) + " mm, the wire diameter"))
                : List.of();
    }

    private static double open(Values values) {
        return values.has("openRatio") ? values.si("openRatio") : WireScreen.mesh(values.si("wireDiameter"), values.si("meshPitch"));
    }

    @Override
    public FlowLaw law(Values values, Setting setting) {
        return law(CrossSection.of(values).orElseThrow().area(), open(values), values.si("wireDiameter"), ExitHead.of(values));
    }

    /** Its face: what stands at a screen sees the face velocity, not that in the holes. */
    @Override
    public OptionalDouble flowArea(Values values, Setting setting) {
        return OptionalDouble.of(CrossSection.of(values).orElseThrow().area());
    }

    /**
     * Round wires in an opening.
     *
     * @param face face area, m²
     * @param open open over whole area
     * @param wire wire diameter, m
     * @param exit velocity heads of the face lost behind it
     */
    static FlowLaw law(double face, double open, double wire, double exit) {
        double loss = WireScreen.loss(open);
        // K c/Re ρ v²/2 with Re = ρ v w/(F μ)
        double linear = loss * WireScreen.REYNOLDS * open / (2 * wire * face);
        return new MixedLaw(linear, (loss + exit) / (2 * face * face), 0);
    }

    @Override
    public Optional<Origin> origin(Values values, Setting setting) {
        double open = open(values);
        return Optional.of(Inputs.of(setting).area("face area A", CrossSection.of(values).orElseThrow().area())
                .length("wire diameter", values.si("wireDiameter")).add("open ratio F", QuantityKind.FRACTION, open)
                .number("loss coefficient K", WireScreen.loss(open)).exit(values).of(SCREEN));
    }
}
