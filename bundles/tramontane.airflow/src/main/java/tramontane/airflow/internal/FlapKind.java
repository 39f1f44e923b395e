package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Relation;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Values;
import tramontane.physics.Resistance;
import tramontane.physics.units.QuantityKind;

/** A non-return flap: open in its direction, from its first to its second bay, a leak against it ({@link FlapLaw}). */
@Component(service = PassageKind.class)
public final class FlapKind implements PassageKind {

    private static final Range LEAK = new Range(0, false, 0.5);

    private static final Relation FLAP = new Relation("non-return flap",
            "forwards Δp = K ρ v²/2 + p q/√(q² + q₁²), p the lifting pressure; backwards Δp = K₁ ρ v₁²/2 in the leak",
            "common practice; K₁: I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed. (1994), diagram 8-1 for a small hole in a "
                    + "large wall",
            "the simplest picture of a flap: it asks for its whole lifting pressure at all flows that its leak does not carry");

    static final String NAME = "flap";

    private static final Form FORM = ExitHead.form(NAME, "A non-return flap, open to flow from its first to its second bay.",
            CrossSection.sizeFields("flap"),
            Field.amount("lossCoefficient", "loss coefficient", QuantityKind.NUMBER, Range.POSITIVE, "Drop of total pressure of the "
                    + "wide open flap over the velocity head in its area, exit included.").mandatory(),
            Field.amount("liftingPressure", "lifting pressure", QuantityKind.PRESSURE, Range.POSITIVE,
                    "Pressure that lifts it; assumed where not given.").standard("2 Pa"),
            Field.amount("leakShare", "leak share", QuantityKind.FRACTION, LEAK,
                    "Area of the leak of the shut flap over its area; assumed where not given.").standard("1 %"));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        List<Problem> problems = new ArrayList<>(CrossSection.checkSize(values, place, "how large it is"));
        if (values.has("lossCoefficient")) {
            problems.addAll(ExitHead.check(values.si("lossCoefficient"), values, place));
        }
        return problems;
    }

    private static CrossSection section(Values values) {
        return CrossSection.of(values).orElseThrow();
    }

    private static double loss(Values values) {
        return ExitHead.in(values.si("lossCoefficient"), values);
    }

    private static double leakLoss(Values values) {
        return ExitHead.in(Resistance.opening(0), values);
    }

    @Override
    public FlowLaw law(Values values, Setting setting) {
        return FlapLaw.of(section(values).area(), loss(values), values.si("leakShare"), leakLoss(values),
                values.si("liftingPressure"));
    }

    /** That of the flap, wide open. */
    @Override
    public OptionalDouble flowArea(Values values, Setting setting) {
        return OptionalDouble.of(section(values).area());
    }

    @Override
    public List<Finding> findings(Values values, Setting setting, OperatingPoint.PassageFlow flow) {
        if (flow.flow() >= 0) {
            return values.has("liftingPressure") ? List.of() : List.of(Finding.note(flow.passage(), "flap " + flow.passage()
                    + " is assumed to lift at ", new Amount(values.si("liftingPressure"), QuantityKind.PRESSURE))
                    .remedy("give its lifting pressure").source("common practice; the value is assumed"));
        }
        return values.has("leakShare") ? List.of() : List.of(Finding.note(flow.passage(), "flap " + flow.passage()
                + " is shut, and assumed to leak through ", new Amount(values.si("leakShare"), QuantityKind.FRACTION), " of its area")
                .remedy("give its leak share").source("common practice; the value is assumed"));
    }

    @Override
    public Optional<Origin> origin(Values values, Setting setting) {
        String assumed = ", assumed";
        return Optional.of(Inputs.of(setting).area("area of the flap", section(values).area())
                .number("loss coefficient K of the open flap", loss(values))
                .add("lifting pressure p" + (values.has("liftingPressure") ? "" : assumed), QuantityKind.PRESSURE,
                        values.si("liftingPressure"))
                .add("leak share" + (values.has("leakShare") ? "" : assumed), QuantityKind.FRACTION, values.si("leakShare"))
                .number("loss coefficient K₁ of the leak", leakLoss(values)).of(FLAP));
    }
}
