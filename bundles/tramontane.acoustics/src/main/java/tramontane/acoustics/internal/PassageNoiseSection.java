package tramontane.acoustics.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.osgi.service.component.annotations.Component;
import tramontane.acoustics.Face;
import tramontane.acoustics.MoverNoise;
import tramontane.acoustics.PassageNoise;
import tramontane.analysis.SectionType;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Range;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.Written;
import tramontane.physics.units.QuantityKind;

/** What a passage does to sound. */
@Component(service = SectionType.class)
public final class PassageNoiseSection implements SectionType<PassageNoise> {

    /** No passage keeps back more: sound then goes through the walls. */
    static final double MOST_LOSS = 100;

    private static final String OPENING = "opening";
    private static final String ALL_ROUND = "all round";

    private static final Form FORM = Form.of(MoverNoise.SECTION, "What the passage does to sound.",
            Field.amounts("insertionLoss", "insertion loss", QuantityKind.LEVEL, Range.between(0, MOST_LOSS), 1,
                    "By how much it lowers the level of sound that goes through it: one value per band, or one for all. Of a bank it"
                            + " does not count for the bank's own sound. Nothing is counted in bands without a value."),
            BandFields.BANDS, BandFields.LOWEST_BAND,
            Field.amount("tolerance", "tolerance of the loss", QuantityKind.LEVEL, Range.between(0, 20),
                    "By how much the truth may differ from the insertion loss.").standard("2 dB"),
            Field.amount("area", "area for sound", QuantityKind.AREA, Range.POSITIVE,
                    "Area that sound goes through; from the size of the passage where not given, of a bank from the open area of its"
                            + " movers."),
            Field.choice("face", "face", Face.words(),
                    "Face of the equipment in which it sits, where it leads outside; left and right as seen from the front."),
            Field.choice("directivity", "directivity", List.of(OPENING, ALL_ROUND),
                    "How it radiates outside: as an opening does, louder straight ahead (VDI 2081), or evenly all round.")
                    .standard(OPENING),
            Field.amount("inletObstacle", "obstacle at the inlet", QuantityKind.LENGTH, Range.NOT_NEGATIVE,
                    "Of a bank: free distance from the rotor to what stands in front of it. The inlet clearance of the bank counts"
                            + " where not given."),
            Field.amount("outletObstacle", "obstacle at the outlet", QuantityKind.LENGTH, Range.NOT_NEGATIVE,
                    "Of a bank: free distance from the rotor to what stands behind it."));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Set<Owner> owners() {
        return Set.of(Owner.PASSAGE);
    }

    @Override
    public PassageNoise decode(Values v) {
        return new PassageNoise(BandFields.read(v, "insertionLoss"), v.si("tolerance"), si(v, "area"),
                v.ifText("face").flatMap(Face::named), !v.text("directivity").equals(ALL_ROUND), si(v, "inletObstacle"),
                si(v, "outletObstacle"));
    }

    @Override
    public List<Problem> check(Values values, String place) {
        List<Problem> problems = new ArrayList<>();
        BandFields.check(values, place, problems, "insertionLoss");
        if (values.has("tolerance") && !values.has("insertionLoss") && !values.unreadable("insertionLoss")) {
            problems.add(Problem.caution(Problem.place(place, "tolerance"), "is not used; expected beside an insertionLoss"));
        }
        return problems;
    }

    @Override
    public Value.Tree encode(PassageNoise noise) {
        Written written = BandFields.write(new Written(), "insertionLoss", noise.insertionLoss());
        if (noise.insertionLoss().isPresent() || noise.tolerance() != PassageNoise.STANDARD_TOLERANCE) {
            written.number("tolerance", noise.tolerance());
        }
        return written.number("area", noise.area()).text("face", noise.face().map(Face::word))
                .text("directivity", noise.directed() ? OPENING : ALL_ROUND).number("inletObstacle", noise.inletObstacle())
                .number("outletObstacle", noise.outletObstacle()).tree();
    }

    static Optional<Double> si(Values values, String field) {
        return values.ifQuantity(field).map(Quantity::si);
    }
}
