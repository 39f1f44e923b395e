package tramontane.reliability.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.SectionType;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Shape;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.Written;
import tramontane.physics.units.QuantityKind;
import tramontane.reliability.BankLife.Solids;
import tramontane.reliability.BankLife.Water;
import tramontane.reliability.MissionLife;
import tramontane.reliability.MoverLife;
import tramontane.reliability.ServiceLife;
import tramontane.reliability.ServiceLife.Crews;

/** How long the equipment is to serve, what it meets, and how it is looked after. */
@Component(service = SectionType.class)
public final class ServiceLifeSection implements SectionType<ServiceLife> {

    private static final double HOUR = 3600;
    private static final double LONGEST = 1000 * MissionLife.YEAR;

    private static final Form FORM = Form.of(MoverLife.SECTION, "How long the equipment is to serve, what it meets, and how it is looked after.",
            Field.amount("serviceLife", "service life", QuantityKind.TIME, Range.between(HOUR, LONGEST),
                    "How long it is to serve, in calendar time: \"10 years\". Survival is that at its end."),
            Field.references("conditions", "judged in", Shape.Target.CONDITION,
                    "Conditions in which is judged what must hold with movers failed. Where not given those that let movers fail, or all where none does."),
            Field.amount("repair", "time to repair", QuantityKind.TIME, Range.between(1, LONGEST),
                    "From the failure of a mover until it is exchanged; without it nothing is repaired."),
            Field.choice("crews", "crews", Arrays.stream(Crews.values()).map(Crews::word).toList(), "How many movers are exchanged at once.")
                    .standard(Crews.ONE.word()),
            Field.amount("interval", "time between visits", QuantityKind.TIME, Range.between(HOUR, LONGEST), "Time between visits of maintenance, at each of which all movers are exchanged."),
            Field.amount("availability", "availability", QuantityKind.FRACTION, Range.between(0.5, 0.999999999),
                    "Share of the time in which it must cool: the longest time between visits follows from it, where failures show only then."),
            Field.whole("fleet", "fleet", 1, 10_000_000, "How many of the equipment there are.").standard(1),
            Field.amount("restocking", "restocking time", QuantityKind.TIME, Range.between(1, LONGEST), "Time until spares that were used are there again."),
            Field.amount("confidence", "confidence of spares", QuantityKind.FRACTION, Range.between(0.5, 0.999999), "How surely spares last until then.")
                    .standard("95 %"),
            Field.yesNo("hazard", "loss is dangerous", "Whether loss of cooling can hurt somebody."),
            Field.yesNo("damage", "loss does damage", "Whether a mover that stops without warning does damage."),
            Field.choice("solids", "solids", Solids.words(), "What solids reach the movers (IEC 60529).").standard(Solids.NONE.word()),
            Field.choice("water", "water", Water.words(), "How water reaches the movers (IEC 60529).").standard(Water.NONE.word()),
            Field.amount("shock", "shock", QuantityKind.ACCELERATION, Range.POSITIVE, "Peak acceleration of shocks that it meets: \"10 gn\"."),
            Field.amount("shockTime", "duration of shock", QuantityKind.TIME, Range.POSITIVE, "How long they last: \"11 ms\"."),
            Field.amount("lowestStorage", "lowest storage temperature", QuantityKind.TEMPERATURE, Range.POSITIVE, "Lowest temperature of storage and transport."),
            Field.amount("highestStorage", "highest storage temperature", QuantityKind.TEMPERATURE, Range.POSITIVE,
                    "Highest temperature of storage and transport."));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Set<Owner> owners() {
        return Set.of(Owner.DESIGN);
    }

    @Override
    public ServiceLife decode(Values v) {
        return new ServiceLife(si(v, "serviceLife"), v.names("conditions"), si(v, "repair"),
                MoverLifeSection.one(Crews.values(), Crews::word, v, "crews").orElse(Crews.ONE), si(v, "interval"),
                si(v, "availability"), v.whole("fleet"),
                si(v, "restocking"), si(v, "confidence").orElse(ServiceLife.CONFIDENCE), v.on("hazard"), v.on("damage"),
                MoverLifeSection.one(Solids.values(), Solids::word, v, "solids").orElse(Solids.NONE),
                MoverLifeSection.one(Water.values(), Water::word, v, "water").orElse(Water.NONE), si(v, "shock"), si(v, "shockTime"),
                si(v, "lowestStorage"), si(v, "highestStorage"));
    }

    private static Optional<Double> si(Values values, String field) {
        return MoverLifeSection.si(values, field);
    }

    @Override
    public List<Problem> check(Values v, String place) {
        List<Problem> problems = new ArrayList<>();
        beside(v, place, problems, "crews", "repair");
        beside(v, place, problems, "confidence", "restocking");
        beside(v, place, problems, "shockTime", "shock");
        Optional<Double> low = si(v, "lowestStorage");
        if (low.isPresent() && si(v, "highestStorage").filter(high -> high <= low.get()).isPresent()) {
            problems.add(Problem.error(Problem.place(place, "highestStorage"), "is not above the lowest storage temperature; expected a higher one"));
        }
        return problems;
    }

    private static void beside(Values v, String place, List<Problem> problems, String field, String needed) {
        if (v.has(field) && !v.has(needed) && !v.unreadable(needed)) {
            problems.add(Problem.caution(Problem.place(place, field), "is not used; expected beside " + needed));
        }
    }

    @Override
    public Value.Tree encode(ServiceLife life) {
        Written written = new Written().number("serviceLife", life.serviceLife()).texts("conditions", life.conditions()).number("repair", life.repair());
        if (life.crews() != Crews.ONE) {
            written.text("crews", life.crews().word());
        }
        written.number("interval", life.interval());
        written.number("availability", life.availability());
        if (life.fleet() != 1) {
            written.whole("fleet", Optional.of(life.fleet()));
        }
        written.number("restocking", life.restocking());
        if (life.confidence() != ServiceLife.CONFIDENCE) {
            written.number("confidence", life.confidence());
        }
        written.flag("hazard", life.hazard()).flag("damage", life.damage());
        if (life.solids() != Solids.NONE) {
            written.text("solids", life.solids().word());
        }
        if (life.water() != Water.NONE) {
            written.text("water", life.water().word());
        }
        return written.number("shock", life.shock()).number("shockTime", life.shockTime()).number("lowestStorage", life.lowestStorage())
                .number("highestStorage", life.highestStorage()).tree();
    }
}
