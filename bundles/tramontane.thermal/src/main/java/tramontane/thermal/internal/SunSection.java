package tramontane.thermal.internal;

import java.util.Set;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.SectionType;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Quantity;
import tramontane.model.Range;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.physics.units.QuantityKind;

/** Sunshine in a condition. */
@Component(service = SectionType.class)
public final class SunSection implements SectionType<SunSection.Sun> {

    /** The section's name. */
    public static final String NAME = "sun";

    /** Radiation per area, W/m². */
    public static final QuantityKind IRRADIANCE = new QuantityKind("irradiance", "W/m²");

    private static final Form FORM = Form.of(NAME, "Sunshine in a condition.",
            Field.amount("irradiance", "irradiance", IRRADIANCE, Range.between(0, 2000),
                    "Power of sunshine per area that faces the sun, W/m²: up to some 1000 at sea level; IEC 60068-2-5"
                            + " tests with 1120.").mandatory());

    /**
     * Sunshine.
     *
     * @param irradiance W/m²
     */
    public record Sun(Quantity irradiance) {
    }

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Set<Owner> owners() {
        return Set.of(Owner.CONDITION);
    }

    @Override
    public Sun decode(Values values) {
        return new Sun(values.ifQuantity("irradiance").orElse(Quantity.of(0)));
    }

    @Override
    public Value.Tree encode(Sun sun) {
        return Value.Tree.EMPTY.with("irradiance", sun.irradiance().written());
    }
}
