package tramontane.reliability.cli.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tramontane.analysis.Table;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.JsonDocument;
import tramontane.cli.terminal.Options;
import tramontane.cli.terminal.Options.Format;
import tramontane.cli.terminal.Syntax;
import tramontane.cli.terminal.TerminalVerb;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.Units;
import tramontane.reliability.LifeModel;
import tramontane.reliability.MoverLife.Law;
import tramontane.reliability.bearing.LifeFactor;
import tramontane.reliability.bearing.RollingBearing;
import tramontane.reliability.bearing.SmallMotor;

/** What a law of life says, without a design. */
final class ApplyLaw extends TerminalVerb {

    private static final String LAW = "--law";
    private static final String LIFE = "--life";
    private static final String RATED_AT = "--rated-at";
    private static final String AT = "--at";
    private static final String FACTOR = "--factor";
    private static final String ENERGY = "--energy";
    private static final String RATED_SPEED = "--rated-speed";
    private static final String SPEED = "--speed";
    private static final String EXPONENT = "--speed-exponent";
    private static final String RISE = "--rise";
    private static final String LIMIT = "--limiting-speed";
    private static final String RATING = "--rating";
    private static final String LOAD = "--load";
    private static final String BEARING = "--bearing";
    private static final String MOTOR = "--motor";
    private static final String DESIGN_LIFE = "--design-life";
    private static final double HOUR = 3600;
    private static final double HOTTEST = 773.15;
    private static final List<String> ALL = List.of(LIFE, RATED_AT, AT, FACTOR, ENERGY, RATED_SPEED, SPEED, EXPONENT, RISE, LIMIT, RATING,
            LOAD,
            BEARING, MOTOR, DESIGN_LIFE);

    ApplyLaw() {
        super("life bearing", "Life at another temperature, speed or load by a law, without a design.");
    }

    @Override
    protected Syntax syntax() {
        return new Syntax(name())
                .option(LAW, "LAW", "factor per 10 K (standard), Arrhenius, grease life, ISO 281 or MIL-HDBK-217F.")
                .option(LIFE, "TIME", "The rated life; without it only factors are given.")
                .option(RATED_AT, "TEMPERATURE", "Air temperature of the rating; standard 40 °C.")
                .option(AT, "TEMPERATURE", "Air temperature that is asked for.")
                .option(FACTOR, "NUMBER", "Factor per 10 K: life falls by it; standard 1.5, between 1.3 and 2.")
                .option(ENERGY, "ENERGY", "Arrhenius: the activation energy, \"0.4 eV\".")
                .option(RATED_SPEED, "SPEED", "Speed of the rating.")
                .option(SPEED, "SPEED", "Speed that is asked for.")
                .option(EXPONENT, "NUMBER", "Factor per 10 K and Arrhenius: life falls with this power of speed; standard 1.")
                .option(RISE, "DIFFERENCE", "Grease life: how much hotter the bearing is than the air; standard 0 K.")
                .option(LIMIT, "SPEED", "Grease life: limiting speed of bearing and grease.")
                .option(RATING, "FORCE", "ISO 281: basic dynamic load rating of each bearing.")
                .options(LOAD, "FORCE", "ISO 281: dynamic equivalent load of a bearing; given once for each bearing.")
                .option(BEARING, "WORD", "ISO 281: ball (standard) or roller.")
                .option(MOTOR, "WORD", "MIL-HDBK-217F: electrical (standard), sensor, servo or stepper.")
                .option(DESIGN_LIFE, "TIME", "MIL-HDBK-217F: running time that the failure rate is the mean of.")
                .option(Options.FORMAT, "FORMAT", "text (standard) or json.")
                .footer("Exit codes:",
                        "  0  computed",
                        "  2  the command line has mistakes",
                        "",
                        "Examples:",
                        "  tramontane life bearing --life \"60000 h\" --rated-at \"40 °C\" --at \"55 °C\"",
                        "  tramontane life bearing --law Arrhenius --energy \"0.4 eV\" --life \"60000 h\"",
                        "                          --at \"55 °C\"",
                        "  tramontane life bearing --law \"ISO 281\" --rating \"500 N\" --load \"5 N\"",
                        "                          --load \"3 N\" --speed \"3000 rpm\"",
                        "  tramontane life bearing --law MIL-HDBK-217F --at \"50 °C\"",
                        "                          --design-life \"60000 h\"");
    }

    /** A line of the result. */
    private record Line(String name, String words, double value, QuantityKind kind) {
    }

    private record Applied(Law law, String sentence, List<Line> lines, List<String> cautions) {
    }

    @Override
    protected int run(Syntax.Given given, Console console) throws Ending {
        Format format = Options.format(given, Format.TEXT, Format.JSON);
        String word = Amounts.word(given, LAW, Arrays.stream(Law.values()).map(Law::word).toArray(String[]::new));
        Law law = Arrays.stream(Law.values()).filter(each -> each.word().equals(word)).findFirst().orElseThrow();
        List<String> own = switch (law) {
            case TEN_KELVIN -> List.of(LIFE, RATED_AT, AT, FACTOR, RATED_SPEED, SPEED, EXPONENT);
            case ARRHENIUS -> List.of(LIFE, RATED_AT, AT, ENERGY, RATED_SPEED, SPEED, EXPONENT);
            case GREASE -> List.of(LIFE, RATED_AT, AT, RISE, RATED_SPEED, SPEED, LIMIT);
            case FATIGUE -> List.of(RATING, LOAD, BEARING, SPEED);
            case HANDBOOK -> List.of(AT, MOTOR, DESIGN_LIFE);
        };
        for (String option : ALL) {
            if (!own.contains(option) && (option.equals(LOAD) ? !given.options(LOAD).isEmpty() : given.option(option).isPresent())) {
                throw Ending.badInput(option + " does not belong to the law \"" + word + "\"; it takes " + String.join(", ", own) + ".");
            }
        }
        Applied applied = switch (law) {
            case FATIGUE -> fatigue(given);
            case HANDBOOK -> handbook(given);
            default -> rated(given, law);
        };
        if (format == Format.JSON) {
            console.data().print(json(applied));
        } else {
            text(applied, console);
        }
        return ExitCode.FINE;
    }

    private Optional<Double> temperature(Syntax.Given given, String option) throws Ending {
        Optional<Double> value = Amounts.positive(given, option, QuantityKind.TEMPERATURE);
        if (value.filter(each -> each < 173.15 || each > HOTTEST).isPresent()) {
            throw Ending.badInput(option + " \"" + given.option(option).orElse("") + "\" is out of range; it must be -100 to 500 °C.");
        }
        return value;
    }

    private Applied rated(Syntax.Given given, Law law) throws Ending {
        double at = Amounts.needed(temperature(given, AT), name(), AT, "the air temperature that is asked for, for example \"55 °C\"");
        double ratedAt = temperature(given, RATED_AT).orElse(LifeModel.RATED_AT);
        Optional<Double> life = Amounts.time(given, LIFE);
        Optional<Double> ratedSpeed = Amounts.positive(given, RATED_SPEED, QuantityKind.ROTATIONAL_SPEED);
        Optional<Double> speed = Amounts.positive(given, SPEED, QuantityKind.ROTATIONAL_SPEED);
        if (ratedSpeed.isPresent() != speed.isPresent()) {
            throw Ending.badInput(RATED_SPEED + " and " + SPEED + " belong together; missing: " + (speed.isPresent() ? RATED_SPEED : SPEED)
                    + ".");
        }
        List<String> cautions = new ArrayList<>();
        Optional<Double> factor = Amounts.between(given, FACTOR, 1, 10);
        double exponent = Amounts.between(given, EXPONENT, 0, 10).orElse(LifeModel.SPEED_EXPONENT);
        double ofTemperature;
        double ofSpeed = speed.isPresent() ? LifeFactor.speed(exponent, ratedSpeed.get(), speed.get()) : 1;
        String words;
        switch (law) {
            case ARRHENIUS -> {
                double energy = Amounts.needed(Amounts.positive(given, ENERGY, QuantityKind.ACTIVATION_ENERGY), name(), ENERGY,
                        "the activation energy, for example \"0.4 eV\"");
                ofTemperature = LifeFactor.arrhenius(energy, ratedAt, at);
                words = "Arrhenius, " + Cells.text(energy, QuantityKind.ACTIVATION_ENERGY);
            }
            case GREASE -> {
                Optional<Double> rise = Amounts.of(given, RISE, QuantityKind.TEMPERATURE_DIFFERENCE);
                if (rise.filter(each -> !(each >= 0 && each <= 200)).isPresent()) {
                    throw Ending.badInput(RISE + " \"" + given.option(RISE).orElse("") + "\" is out of range; it must be 0 to 200 K.");
                }
                double hotter = rise.orElse(0.0);
                Optional<Double> limit = Amounts.positive(given, LIMIT, QuantityKind.ROTATIONAL_SPEED);
                if (limit.isPresent() != speed.isPresent()) {
                    throw Ending.badInput(LIMIT + ", " + RATED_SPEED + " and " + SPEED + " belong together; missing: "
                            + (speed.isPresent() ? LIMIT : SPEED) + ".");
                }
                ofTemperature = LifeFactor.grease(ratedAt + hotter, at + hotter, 0, 0, Double.POSITIVE_INFINITY);
                ofSpeed = limit.isPresent() ? LifeFactor.grease(ratedAt, ratedAt, ratedSpeed.get(), speed.get(), limit.get()) : 1;
                words = "grease life";
                if (at + hotter < 343.15) {
                    cautions.add("Below about 70 °C at the bearing grease does not age by oxidation alone; the gain is overrated.");
                }
            }
            default -> {
                double per = factor.orElse(LifeFactor.PER_TEN_KELVIN);
                ofTemperature = LifeFactor.perTenKelvin(per, ratedAt, at);
                words = "factor " + Cells.written(per) + " per 10 K";
                if (factor.isEmpty()) {
                    cautions.add("The factor of 1.5 per 10 K is common practice, not known of these bearings; with "
                            + ends(LifeFactor.LOWEST_PER_TEN_KELVIN, ratedAt, at, life, ofSpeed) + ", with "
                            + ends(LifeFactor.HIGHEST_PER_TEN_KELVIN, ratedAt, at, life, ofSpeed) + ".");
                }
            }
        }
        if (at < ratedAt) {
            cautions.add("Below the temperature of the rating life is extrapolated; nothing shows that it grows so.");
        }
        double all = ofTemperature * ofSpeed;
        List<Line> lines = new ArrayList<>(List.of(new Line("temperatureFactor", "factor of temperature", ofTemperature,
                QuantityKind.NUMBER),
                new Line("speedFactor", "factor of speed", ofSpeed, QuantityKind.NUMBER), new Line("factor", "both", all,
                QuantityKind.NUMBER)));
        life.ifPresent(time -> {
            lines.add(new Line("ratedLife", "rated life", time, QuantityKind.TIME));
            lines.add(new Line("life", "life", time * all, QuantityKind.TIME));
        });
        String where = Cells.text(at, QuantityKind.TEMPERATURE) + speed.map(each -> " and " + Cells.text(each,
                QuantityKind.ROTATIONAL_SPEED)).orElse("");
        String sentence = life.map(time -> "Life " + Cells.years(time * all) + " at " + where + ", " + Cells.plain(all) + " of the rated "
                + Cells.years(time) + " at " + Cells.text(ratedAt, QuantityKind.TEMPERATURE) + " (" + words + ").")
                .orElseGet(() -> "Life at " + where
                + " is " + Cells.plain(all) + " of that at " + Cells.text(ratedAt, QuantityKind.TEMPERATURE) + " (" + words + ").");
        return new Applied(law, sentence, lines, cautions);
    }

    private static String ends(double per, double ratedAt, double at, Optional<Double> life, double ofSpeed) {
        double factor = LifeFactor.perTenKelvin(per, ratedAt, at) * ofSpeed;
        return Cells.written(per) + " it is " + life.map(time -> Cells.years(time * factor)).orElseGet(() -> Cells.plain(factor));
    }

    private Applied fatigue(Syntax.Given given) throws Ending {
        double rating = Amounts.needed(Amounts.positive(given, RATING, QuantityKind.FORCE), name(), RATING,
                "the basic dynamic load rating, for example \"500 N\"");
        double speed = Amounts.needed(Amounts.positive(given, SPEED, QuantityKind.ROTATIONAL_SPEED), name(), SPEED,
                "the speed, for example \"3000 rpm\"");
        RollingBearing bearing = Amounts.word(given, BEARING, "ball", "roller").equals("ball") ? RollingBearing.BALL
                : RollingBearing.ROLLER;
        if (given.options(LOAD).isEmpty()) {
            throw Ending.badInput(name() + ": " + LOAD + " is missing: the dynamic equivalent load of each bearing, for example \"5 N\"."
                    + " See \"tramontane help " + name() + "\".");
        }
        List<Double> lives = new ArrayList<>();
        List<Line> lines = new ArrayList<>();
        List<String> cautions = new ArrayList<>(List.of("In light bearings of fans fatigue is far from limiting; their grease is."));
        for (String text : given.options(LOAD)) {
            double load;
            try {
                load = Units.parse(text, QuantityKind.FORCE);
            } catch (UnitException wrong) {
                throw Ending.badInput(LOAD + " " + wrong.getMessage() + ".");
            }
            if (!(load > 0)) {
                throw Ending.badInput(LOAD + " \"" + text + "\" must be above zero.");
            }
            if (load > rating / 2) {
                cautions.add("The load of " + Cells.text(load, QuantityKind.FORCE)
                        + " is above half the load rating, where ISO 281 does not hold.");
            }
            double life = bearing.life(rating, load, speed);
            lives.add(life);
            lines.add(new Line("bearing" + lives.size(), "L10 of bearing " + lives.size() + ", " + Cells.text(load, QuantityKind.FORCE),
                    life,
                    QuantityKind.TIME));
        }
        double together = bearing.together(lives);
        lines.add(new Line("life", "L10 of all bearings", together, QuantityKind.TIME));
        return new Applied(Law.FATIGUE, "L10 by fatigue " + Cells.years(together) + " at " + Cells.text(speed,
                QuantityKind.ROTATIONAL_SPEED)
                + " (ISO 281, " + lives.size() + (lives.size() == 1 ? " bearing" : " bearings") + ").", lines, cautions);
    }

    private Applied handbook(Syntax.Given given) throws Ending {
        double at = Amounts.needed(temperature(given, AT), name(), AT, "the air temperature, for example \"50 °C\"");
        if (at < SmallMotor.LOWEST || at > SmallMotor.HIGHEST) {
            throw Ending.badInput(AT + " \"" + given.option(AT).orElse("")
                    + "\" is out of range; the tables of MIL-HDBK-217F go from 0 to 140 °C.");
        }
        double designLife = Amounts.needed(Amounts.time(given, DESIGN_LIFE), name(), DESIGN_LIFE,
                "the running time that the rate is the mean of, for example \"60000 h\"");
        String word = Amounts.word(given, MOTOR, Arrays.stream(SmallMotor.Kind.values()).map(SmallMotor.Kind::word).toArray(String[]::new));
        SmallMotor motor = new SmallMotor(Arrays.stream(SmallMotor.Kind.values()).filter(each -> each.word().equals(word)).findFirst()
                .orElseThrow());
        double bearing = SmallMotor.bearing(at);
        double winding = SmallMotor.winding(at);
        double rate = motor.rate(bearing, winding, designLife / HOUR);
        return new Applied(Law.HANDBOOK, String.format(java.util.Locale.ROOT,
                "%.3g failures in 10^6 h at %s, a mean life of %s (MIL-HDBK-217F,"
                + " Notice 2).", rate * 1e6, Cells.text(at, QuantityKind.TEMPERATURE), Cells.years(HOUR / rate)), List.of(
                new Line("bearing", "characteristic life of the bearings", bearing * HOUR, QuantityKind.TIME),
                new Line("winding", "characteristic life of the winding", winding * HOUR, QuantityKind.TIME),
                new Line("mean", "mean life (MTTF)", HOUR / rate, QuantityKind.TIME)),
                List.of("The handbook has not been kept up since 1995; its rates compare designs, they do not predict."));
    }

    private static void text(Applied applied, Console console) {
        Cells.print(applied.sentence(), console);
        Cells.print(new Table(applied.law().word().substring(0, 1).toUpperCase(java.util.Locale.ROOT) + applied.law().word().substring(1),
                Cells.columns("what", "#value"), applied.lines().stream().map(line -> List.of(Cells.words(line.words()), Cells.words(
                        line.kind().equals(QuantityKind.TIME) ? Cells.years(line.value()) : Cells.plain(line.value())))).toList()),
                        console);
        Cells.print("To know before", applied.cautions(), console);
    }

    private static String json(Applied applied) {
        return JsonDocument.of(json -> {
            json.beginObject().name("format").value(1).name("sentence").value(applied.sentence()).name("law").value(applied.law().word());
            for (Line line : applied.lines()) {
                TestJson.number(json, line.name(), line.value());
            }
            TestJson.strings(json, "cautions", applied.cautions());
            json.endObject();
        });
    }
}
