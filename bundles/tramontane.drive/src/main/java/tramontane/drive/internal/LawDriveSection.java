package tramontane.drive.internal;

import java.util.Set;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.SectionType;
import tramontane.drive.LawDrive;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Range;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.Written;
import tramontane.physics.units.QuantityKind;

/** How a control law is carried out, and what is asked of a better one. */
@Component(service = SectionType.class)
public final class LawDriveSection implements SectionType<LawDrive> {

    private static final Form FORM = Form.of(MoverDriveSection.NAME, "How a control law is carried out, and what is asked of a better one.",
            Field.amount("sensorLag", "sensor lag", QuantityKind.TIME, Range.NOT_NEGATIVE, "Time constant with which its sensor follows.")
                    .standard("0 s"),
            Field.amount("interval", "reading interval", QuantityKind.TIME, Range.NOT_NEGATIVE,
                    "Time between two readings; the setting stands in between.").standard("0 s"),
            Field.amount("sensorTolerance", "sensor tolerance", QuantityKind.TEMPERATURE_DIFFERENCE, Range.NOT_NEGATIVE,
                    "How far the sensor may be off.").standard("0 K"),
            Field.amount("moverLag", "mover lag", QuantityKind.TIME, Range.NOT_NEGATIVE,
                    "Time constant with which the speed follows the setting; a third of the starting time of the part where not given."),
            Field.amount("resolution", "resolution", QuantityKind.FRACTION, Range.between(0, 0.5), "Step of the setting; smooth where it is 0.")
                    .standard("0 %"),
            Field.choice("aim", "aim", LawDrive.AIMS, "What a computed law is to spare.").standard("energy"),
            Field.amount("reserve", "reserve", QuantityKind.TEMPERATURE_DIFFERENCE, Range.NOT_NEGATIVE,
                    "What a computed law is to leave of every limit.").standard("0 K"),
            Field.amount("gainMargin", "gain margin", QuantityKind.NUMBER, Range.atLeast(1),
                    "Least gain margin of the loop, as a factor; 2 is 6 dB (common practice).").standard(LawDrive.GAIN_MARGIN),
            Field.amount("lowest", "lowest setting", QuantityKind.FRACTION, Range.SHARE,
                    "Lowest setting that a computed law may give; what the movers need to start where not given."));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Set<Owner> owners() {
        return Set.of(Owner.CONTROL_LAW);
    }

    @Override
    public LawDrive decode(Values v) {
        return new LawDrive(v.si("sensorLag"), v.si("interval"), v.si("sensorTolerance"), MoverDriveSection.si(v, "moverLag"), v.si("resolution"),
                v.text("aim"), v.si("reserve"), v.si("gainMargin"), MoverDriveSection.si(v, "lowest"));
    }

    @Override
    public Value.Tree encode(LawDrive law) {
        return new Written().number("sensorLag", law.lag()).number("interval", law.interval()).number("sensorTolerance", law.tolerance())
                .number("moverLag", law.moverLag()).number("resolution", law.resolution()).text("aim", law.aim()).number("reserve", law.reserve())
                .number("gainMargin", law.gainMargin()).number("lowest", law.lowest()).tree();
    }
}
