package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.SectionType;
import tramontane.drive.SupplyLevels;
import tramontane.model.Design;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.Written;
import tramontane.physics.units.QuantityKind;

/** What single supplies give in a condition. */
@Component(service = SectionType.class)
public final class SupplyLevelsSection implements SectionType<SupplyLevels> {

    private static final Form LEVEL = Form.of("supply level", "What one supply gives.",
            Field.words("supply", "supply", "Its name among the supplies of the design.").mandatory(),
            Field.amount("voltage", "voltage", QuantityKind.VOLTAGE, Range.NOT_NEGATIVE, "Its voltage, without sign."),
            Field.amount("frequency", "frequency", QuantityKind.FREQUENCY, Range.POSITIVE, "Its frequency."));

    private static final Form FORM = Form.of(MoverDriveSection.NAME,
            "What single supplies give in the condition; its supplyVoltage and supplyFrequency hold for all others.",
            Field.parts("supplies", "supplies", LEVEL, "One for each supply that is not as it is as a rule."));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Set<Owner> owners() {
        return Set.of(Owner.CONDITION);
    }

    @Override
    public SupplyLevels decode(Values values) {
        return new SupplyLevels(values.parts("supplies").stream().map(level -> new SupplyLevels.Level(level.text("supply"),
                MoverDriveSection.si(level, "voltage"), MoverDriveSection.si(level, "frequency"))).toList());
    }

    @Override
    public List<Problem> check(Values values, Design design, String place) {
        List<Problem> problems = new ArrayList<>();
        List<Values> levels = values.parts("supplies");
        for (int i = 0; i < levels.size(); i++) {
            SuppliesSection.unknown(levels.get(i).text("supply"), design, place + ".supplies[" + i + "].supply", problems);
        }
        return problems;
    }

    @Override
    public Value.Tree encode(SupplyLevels levels) {
        return new Written().parts("supplies", levels.list().stream().map(level -> new Written().text("supply", level.supply())
                .number("voltage", level.voltage()).number("frequency", level.frequency()).tree()).toList()).tree();
    }
}
