package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.SectionType;
import tramontane.analysis.Sections;
import tramontane.drive.Current;
import tramontane.drive.Supplies;
import tramontane.model.Design;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Shape;
import tramontane.model.Spelling;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.Written;
import tramontane.physics.units.QuantityKind;

/** What feeds the movers of a design, and what that costs. */
@Component(service = SectionType.class)
public final class SuppliesSection implements SectionType<Supplies> {

    private static final String SLOW = "time-lag";

    private static final QuantityKind MELTING = new QuantityKind("melting integral", "A² s");
    private static final QuantityKind PER_KELVIN = new QuantityKind("share per kelvin", "1/K");

    private static final Form FUSE = Form.of("fuse", "The fuse before all movers of a supply.",
            Field.amount("rated", "rated current", QuantityKind.CURRENT, Range.POSITIVE, "Its rated current.").mandatory(),
            Field.choice("kind", "kind", List.of("quick-acting", SLOW), "How soon it acts.").standard("quick-acting"),
            Field.amount("melting", "melting integral", MELTING, Range.POSITIVE, "Its melting integral, A² s, from its data sheet."));

    private static final Form SOURCE = Form.of("supply", "One supply of air movers.",
            Field.words("id", "name", "Its name, unique among the supplies.").mandatory(),
            Field.choice("current", "kind of current", Current.words(), "What it gives.").mandatory(),
            Field.amount("voltage", "nominal voltage", QuantityKind.VOLTAGE, Range.ANY,
                    "Nominal voltage; below zero where the positive pole is earthed. Between phases for three-phase AC.").mandatory(),
            Field.amount("below", "may be lower by", QuantityKind.FRACTION, Range.SHARE, "How far it may be below that.").standard("0 %"),
            Field.amount("above", "may be higher by", QuantityKind.FRACTION, Range.SHARE, "How far it may be above that.").standard("0 %"),
            Field.amount("frequency", "frequency", QuantityKind.FREQUENCY, Range.POSITIVE, "Its frequency."),
            Field.amount("most", "most current", QuantityKind.CURRENT, Range.POSITIVE, "Current that it gives for long."),
            Field.amount("peak", "peak current", QuantityKind.CURRENT, Range.POSITIVE, "Current that it gives for a short time."),
            Field.amount("peakTime", "peak time", QuantityKind.TIME, Range.POSITIVE, "For how long it gives its peak current."),
            Field.amount("efficiency", "efficiency", QuantityKind.FRACTION, Range.PART_OF_ONE,
                    "What it gives over what it takes from the mains; 100 % for the mains themselves.").standard("100 %"),
            Field.part("fuse", "fuse", FUSE, "The fuse before all movers."),
            Field.reference("place", "place", Shape.Target.BAY, "The bay in whose air it stands; outside where not given."),
            Field.amount("derateFrom", "derated from", QuantityKind.TEMPERATURE, Range.POSITIVE, "Temperature of that air from which it gives less."),
            Field.amount("derate", "derating", PER_KELVIN, Range.NOT_NEGATIVE,
                    "How much less, as a share per kelvin, 1/K: 0.025 for 2.5 % per kelvin.")
                    .standard(0));

    private static final Form FORM = Form.of(MoverDriveSection.NAME, "What feeds the movers of the design, and what that costs.",
            Field.parts("supplies", "supplies", SOURCE, "The supplies."),
            Field.amount("price", "price", QuantityKind.NUMBER, Range.NOT_NEGATIVE, "Price of a kilowatt-hour, in the currency."),
            Field.words("currency", "currency", "What prices are in, for example EUR."));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Set<Owner> owners() {
        return Set.of(Owner.DESIGN);
    }

    @Override
    public Supplies decode(Values values) {
        return new Supplies(values.parts("supplies").stream().map(SuppliesSection::source).toList(), MoverDriveSection.si(values, "price"),
                values.text("currency"));
    }

    private static Supplies.Source source(Values v) {
        Optional<Supplies.Fuse> fuse = v.part("fuse").map(each -> new Supplies.Fuse(each.si("rated"), each.text("kind").equals(SLOW),
                MoverDriveSection.si(each, "melting")));
        return new Supplies.Source(v.text("id"), Current.named(v.text("current")), v.si("voltage"), v.si("below"), v.si("above"),
                MoverDriveSection.si(v, "frequency"), MoverDriveSection.si(v, "most"), MoverDriveSection.si(v, "peak"),
                MoverDriveSection.si(v, "peakTime"), v.si("efficiency"), fuse, v.ifText("place").filter(place -> !place.isEmpty()),
                MoverDriveSection.si(v, "derateFrom"), v.si("derate"));
    }

    @Override
    public List<Problem> check(Values values, String place) {
        List<Problem> problems = new ArrayList<>();
        Set<String> names = new HashSet<>();
        List<Values> supplies = values.parts("supplies");
        for (int i = 0; i < supplies.size(); i++) {
            Supplies.Source source = source(supplies.get(i));
            String at = place + ".supplies[" + i + "]";
            if (!names.add(source.id())) {
                problems.add(Problem.error(at + ".id", "\"" + source.id() + "\" is there twice; expected each name once"));
            }
            if (source.voltage() == 0) {
                problems.add(Problem.error(at + ".voltage", "is 0 V; expected its nominal voltage"));
            }
            if (source.current().alternating() && source.frequency().isEmpty()) {
                problems.add(Problem.caution(at + ".frequency", "is missing; whether the movers stand it cannot be told"));
            }
            if (source.peak().isPresent() && source.most().isPresent() && source.peak().get() < source.most().get()) {
                problems.add(Problem.error(at + ".peak", "is below what it gives for long; expected it above"));
            }
        }
        return problems;
    }

    /** Says so if a name is that of no supply. */
    static void unknown(String name, Design design, String place, List<Problem> problems) {
        List<String> known = Sections.decode(new SuppliesSection(), design).map(Supplies::list).orElse(List.of()).stream()
                .map(Supplies.Source::id).distinct().toList();
        if (!name.isEmpty() && !known.contains(name)) {
            problems.add(Problem.error(place, '"' + name + "\" is no supply of the design" + Spelling.hint(name, known) + "; expected "
                    + (known.isEmpty() ? "one in the drive section of the design" : "one of " + String.join(", ", known))));
        }
    }

    @Override
    public Value.Tree encode(Supplies supplies) {
        return new Written().parts("supplies", supplies.list().stream().map(SuppliesSection::written).toList())
                .number("price", supplies.price()).text("currency", supplies.currency()).tree();
    }

    private static Value.Tree written(Supplies.Source s) {
        return new Written().text("id", s.id()).text("current", s.current().word()).number("voltage", s.voltage()).number("below", s.below())
                .number("above", s.above()).number("frequency", s.frequency()).number("most", s.most()).number("peak", s.peak())
                .number("peakTime", s.peakTime()).number("efficiency", s.efficiency())
                .part("fuse", s.fuse().map(fuse -> new Written().number("rated", fuse.rated()).text("kind", fuse.slow() ? SLOW : "quick-acting")
                        .number("melting", fuse.melting()).tree()).orElse(Value.Tree.EMPTY))
                .text("place", s.place()).number("derateFrom", s.derateFrom()).number("derate", s.derate()).tree();
    }
}
