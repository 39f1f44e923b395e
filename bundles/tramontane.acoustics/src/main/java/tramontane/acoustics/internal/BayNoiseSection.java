package tramontane.acoustics.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.osgi.service.component.annotations.Component;
import tramontane.acoustics.Banded;
import tramontane.acoustics.BayNoise;
import tramontane.acoustics.MoverNoise;
import tramontane.analysis.SectionType;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.Written;
import tramontane.physics.units.QuantityKind;

/** The lining of a bay. */
@Component(service = SectionType.class)
public final class BayNoiseSection implements SectionType<BayNoise> {

    private static final Form FORM = Form.of(MoverNoise.SECTION, "What lines the bay and takes sound up.",
            Field.amount("area", "area of the lining", QuantityKind.AREA, Range.POSITIVE, "Area of what takes sound up.").mandatory(),
            Field.amounts("absorption", "absorption", QuantityKind.FRACTION, Range.SHARE, 1,
                    "What it takes of the sound that meets it: absorption coefficient per band, or one for all. Nothing is counted in bands"
                            + " without a value.").mandatory(),
            BandFields.BANDS, BandFields.LOWEST_BAND);

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Set<Owner> owners() {
        return Set.of(Owner.BAY);
    }

    @Override
    public BayNoise decode(Values values) {
        return new BayNoise(values.si("area"), BandFields.read(values, "absorption").orElse(Banded.always(0)));
    }

    @Override
    public List<Problem> check(Values values, String place) {
        List<Problem> problems = new ArrayList<>();
        BandFields.check(values, place, problems, "absorption");
        return problems;
    }

    @Override
    public Value.Tree encode(BayNoise noise) {
        return BandFields.write(new Written().number("area", noise.area()), "absorption", Optional.of(noise.absorption())).tree();
    }
}
