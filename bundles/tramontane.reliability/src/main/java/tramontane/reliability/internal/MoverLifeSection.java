package tramontane.reliability.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.SectionType;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Quantities;
import tramontane.model.Quantity;
import tramontane.model.Range;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.Written;
import tramontane.physics.units.QuantityKind;
import tramontane.reliability.MoverLife;
import tramontane.reliability.MoverLife.Law;
import tramontane.reliability.MoverLife.Shaft;
import tramontane.reliability.Statistic;
import tramontane.reliability.bearing.RollingBearing;
import tramontane.reliability.bearing.SmallMotor;

/** Life of an air mover. */
@Component(service = SectionType.class)
public final class MoverLifeSection implements SectionType<MoverLife> {

    private static final double HOUR = 3600;

    private static final Form FORM = Form.of(MoverLife.SECTION, "How long the part lives, and how it may be used.",
            Field.amount("rated", "rated life", QuantityKind.TIME, Range.between(HOUR, 1e8 * HOUR), "Life that the maker states or a test has shown, in running time."),
            Field.choice("statistic", "life is", Statistic.words(), "Which life that is: the time by which 1, 10 or 50 % have failed, or the mean.")
                    .standard(Statistic.L10.word()),
            Field.amount("at", "rated at", QuantityKind.TEMPERATURE, Range.between(173.15, 473.15),
                    "Air temperature that the life was rated at; 40 °C is taken where not given, with a caution."),
            Field.amount("speed", "rated at speed", QuantityKind.ROTATIONAL_SPEED, Range.POSITIVE,
                    "Speed that the life was rated at; the rated speed of the part where not given."),
            Field.amount("confidence", "confidence", QuantityKind.FRACTION, Range.between(0.5, 0.9999), "Confidence at which a life test has shown it."),
            Field.amount("testedAt", "tested at", QuantityKind.TEMPERATURE, Range.between(173.15, 473.15),
                    "Air temperature of the life test behind the rating; life below is extrapolated. That of the rating where not given."),
            Field.amount("shape", "Weibull shape", QuantityKind.NUMBER, Range.between(0.2, 20),
                    "Shape of the distribution of lives. Where not given 3 is taken, 1.5 by ISO 281, and bounds show what 1.1 to 3.5 would make."),
            Field.increasing("shapeBounds", "shape between", QuantityKind.NUMBER, Range.between(0.2, 20), 2,
                    "Lowest and highest shape that a test leaves possible."),
            Field.choice("law", "life goes by", Arrays.stream(Law.values()).map(Law::word).toList(),
                    "How life goes with temperature and speed. The first three start from the rated life, the last two compute it.")
                    .standard(Law.TEN_KELVIN.word()),
            Field.amount("factor", "factor per 10 K", QuantityKind.NUMBER, Range.between(1, 5),
                    "By what factor life is shorter for each 10 K. Where not given 1.5 is taken, and bounds show what 1.3 to 2 would make."),
            Field.amount("activationEnergy", "activation energy", QuantityKind.ACTIVATION_ENERGY, Range.between(1.6e-21, 4.9e-19), "By Arrhenius: \"0.4 eV\"."),
            Field.amount("greaseLimit", "limiting speed", QuantityKind.ROTATIONAL_SPEED, Range.atLeast(10 * Math.PI),
                    "By grease life: limiting speed of bearing and grease; speed does not count where not given."),
            Field.amount("rise", "bearing above air", QuantityKind.TEMPERATURE_DIFFERENCE, Range.NOT_NEGATIVE,
                    "By grease life: how much hotter the bearing is than the air at the mover.").standard("0 K"),
            Field.amount("speedExponent", "exponent of speed", QuantityKind.NUMBER, Range.between(0, 5),
                    "Life goes with speed to minus this power. Where not given 1 is taken, as if revolutions counted, and bounds show what 0 would make."),
            Field.choice("rolling", "rolling bearings", Arrays.stream(RollingBearing.values()).map(MoverLifeSection::word).toList(),
                    "By ISO 281: kind of the rolling bearings.").standard(word(RollingBearing.BALL)),
            Field.amount("dynamicRating", "dynamic load rating", QuantityKind.FORCE, Range.POSITIVE, "By ISO 281: basic dynamic load rating C of one bearing."),
            Field.amounts("loads", "bearing loads", QuantityKind.FORCE, Range.POSITIVE, 1,
                    "By ISO 281: dynamic equivalent load P of each bearing, P = X Fr + Y Fa: \"8 12 N\"."),
            Field.choice("motor", "motor kind", Arrays.stream(SmallMotor.Kind.values()).map(SmallMotor.Kind::word).toList(),
                    "By MIL-HDBK-217F: kind of motor below one horsepower.").standard(SmallMotor.Kind.ELECTRICAL.word()),
            Field.choice("shaft", "shaft", Arrays.stream(Shaft.values()).map(Shaft::word).toList(),
                    "Attitudes of the shaft that it may work in. Where not given: level for sleeve kinds of bearing, any for ball bearings."),
            Field.amount("lowestStorage", "lowest storage temperature", QuantityKind.TEMPERATURE, Range.POSITIVE, "Lowest temperature of storage and transport."),
            Field.amount("highestStorage", "highest storage temperature", QuantityKind.TEMPERATURE, Range.POSITIVE, "Highest temperature of storage and transport."),
            Field.amount("shock", "shock", QuantityKind.ACCELERATION, Range.POSITIVE,
                    "Peak acceleration of a half-sine shock that it withstands (IEC 60068-2-27): \"15 gn\"."),
            Field.amount("shockTime", "duration of shock", QuantityKind.TIME, Range.POSITIVE, "How long that shock lasts: \"11 ms\"."));

    private static String word(RollingBearing kind) {
        return kind.name().toLowerCase(Locale.ROOT);
    }

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Set<Owner> owners() {
        return Set.of(Owner.MOVER);
    }

    @Override
    public MoverLife decode(Values v) {
        return new MoverLife(si(v, "rated"), Statistic.named(v.text("statistic")).orElse(Statistic.L10), si(v, "at"), si(v, "speed"), si(v, "confidence"),
                si(v, "testedAt"), si(v, "shape"), list(v, "shapeBounds"), one(Law.values(), Law::word, v, "law").orElse(Law.TEN_KELVIN), si(v, "factor"),
                si(v, "activationEnergy"), si(v, "greaseLimit"), v.si("rise"), si(v, "speedExponent"),
                one(RollingBearing.values(), MoverLifeSection::word, v, "rolling").orElse(RollingBearing.BALL), si(v, "dynamicRating"), list(v, "loads"),
                one(SmallMotor.Kind.values(), SmallMotor.Kind::word, v, "motor").orElse(SmallMotor.Kind.ELECTRICAL), one(Shaft.values(), Shaft::word, v, "shaft"),
                si(v, "lowestStorage"), si(v, "highestStorage"), si(v, "shock"), si(v, "shockTime"));
    }

    @Override
    public List<Problem> check(Values v, String place) {
        List<Problem> problems = new ArrayList<>();
        if (!v.unreadable("law")) {
            law(v, place, problems, one(Law.values(), Law::word, v, "law").orElse(Law.TEN_KELVIN));
        }
        List<Double> bounds = list(v, "shapeBounds");
        if (bounds.size() > 2) {
            problems.add(Problem.error(Problem.place(place, "shapeBounds"), "has " + bounds.size() + " values; expected two, the lowest and the highest"));
        } else if (bounds.size() == 2) {
            si(v, "shape").filter(shape -> shape < bounds.get(0) || shape > bounds.get(1)).ifPresent(shape -> problems.add(Problem.error(
                    Problem.place(place, "shape"), "is " + shape + "; expected one between its shapeBounds, " + bounds.get(0) + " and " + bounds.get(1))));
            if (!v.has("shape") && !v.unreadable("shape")) {
                problems.add(Problem.missing(Problem.place(place, "shape"), "; expected the shape between its shapeBounds"));
            }
        }
        Optional<Double> low = si(v, "lowestStorage");
        if (low.isPresent() && si(v, "highestStorage").filter(high -> high <= low.get()).isPresent()) {
            problems.add(Problem.error(Problem.place(place, "highestStorage"), "is not above the lowest storage temperature; expected a higher one"));
        }
        if (v.has("shockTime") && !v.has("shock") && !v.unreadable("shock")) {
            problems.add(Problem.caution(Problem.place(place, "shockTime"), "is not used; expected beside a shock"));
        }
        return problems;
    }

    /** What the law needs, and what it makes nothing of. */
    private static void law(Values v, String place, List<Problem> problems, Law law) {
        boolean rates = law != Law.FATIGUE && law != Law.HANDBOOK;
        if (rates) {
            need(v, place, problems, "rated", "law \"" + law.word() + "\" starts from it");
        }
        if (law == Law.ARRHENIUS) {
            need(v, place, problems, "activationEnergy", "law \"Arrhenius\" needs it, for example \"0.4 eV\"");
        }
        if (law == Law.FATIGUE) {
            need(v, place, problems, "dynamicRating", "law \"ISO 281\" needs it");
            need(v, place, problems, "loads", "law \"ISO 281\" needs the load of each bearing");
        }
        unused(v, place, problems, law != Law.TEN_KELVIN, law, "factor");
        unused(v, place, problems, law != Law.ARRHENIUS, law, "activationEnergy");
        unused(v, place, problems, law != Law.GREASE, law, "greaseLimit", "rise");
        unused(v, place, problems, law != Law.FATIGUE, law, "dynamicRating", "loads", "rolling");
        unused(v, place, problems, law != Law.HANDBOOK, law, "motor");
        unused(v, place, problems, law != Law.TEN_KELVIN && law != Law.ARRHENIUS, law, "speedExponent");
        unused(v, place, problems, law == Law.HANDBOOK, law, "shape", "shapeBounds");
        unused(v, place, problems, !rates, law, "rated", "statistic", "at", "speed", "confidence", "testedAt");
    }

    private static void need(Values v, String place, List<Problem> problems, String field, String why) {
        if (!v.has(field) && !v.unreadable(field)) {
            problems.add(Problem.caution(Problem.place(place, field), "is missing; expected, as " + why + ": no life is computed"));
        }
    }

    private static void unused(Values v, String place, List<Problem> problems, boolean unused, Law law, String... fields) {
        for (String field : fields) {
            if (unused && v.has(field)) {
                problems.add(Problem.caution(Problem.place(place, field), "is not used; expected where law is not \"" + law.word() + "\""));
            }
        }
    }

    @Override
    public Value.Tree encode(MoverLife life) {
        Written written = new Written().number("rated", life.rated());
        if (life.statistic() != Statistic.L10) {
            written.text("statistic", life.statistic().word());
        }
        written.number("at", life.at()).number("speed", life.speed()).number("confidence", life.confidence()).number("testedAt", life.testedAt())
                .number("shape", life.shape()).numbers("shapeBounds", life.shapeBounds());
        if (life.law() != Law.TEN_KELVIN) {
            written.text("law", life.law().word());
        }
        written.number("factor", life.factor()).number("activationEnergy", life.activationEnergy()).number("greaseLimit", life.greaseLimit());
        if (life.rise() != 0) {
            written.number("rise", life.rise());
        }
        written.number("speedExponent", life.speedExponent());
        if (life.rolling() != RollingBearing.BALL) {
            written.text("rolling", word(life.rolling()));
        }
        written.number("dynamicRating", life.dynamicRating()).numbers("loads", life.loads());
        if (life.motor() != SmallMotor.Kind.ELECTRICAL) {
            written.text("motor", life.motor().word());
        }
        return written.text("shaft", life.shaft().map(Shaft::word)).number("lowestStorage", life.lowestStorage())
                .number("highestStorage", life.highestStorage()).number("shock", life.shock()).number("shockTime", life.shockTime()).tree();
    }

    static Optional<Double> si(Values values, String field) {
        return values.ifQuantity(field).map(Quantity::si);
    }

    private static List<Double> list(Values values, String field) {
        return values.ifQuantities(field).map(Quantities::si).orElse(List.of());
    }

    /** What a field says, by the words of an enumeration. */
    static <E> Optional<E> one(E[] all, Function<E, String> word, Values values, String field) {
        return values.ifText(field).flatMap(text -> Arrays.stream(all).filter(each -> word.apply(each).equals(text)).findFirst());
    }
}
