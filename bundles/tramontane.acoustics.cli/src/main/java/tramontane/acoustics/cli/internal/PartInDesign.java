package tramontane.acoustics.cli.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.acoustics.RecordedNoise;
import tramontane.analysis.Engine;
import tramontane.cli.Console;
import tramontane.cli.terminal.Delivery;
import tramontane.cli.terminal.DesignSource;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.Messages;
import tramontane.cli.terminal.Options;
import tramontane.cli.terminal.Syntax;
import tramontane.model.AirMover;
import tramontane.model.Design;
import tramontane.model.Noun;
import tramontane.model.Problem;
import tramontane.model.Spelling;
import tramontane.model.Value;
import tramontane.model.file.DesignFile;

/**
 * The part of a design that a recording is put into.
 *
 * @param source the design
 * @param part   id of the part; empty where the design has mistakes
 * @param target where the changed design goes
 */
record PartInDesign(DesignSource source, String part, Path target) {

    static final String INTO = "--into";
    private static final String PART = "--part";
    private static final String OUTPUT = "--output";
    private static final String IN_PLACE = "--in-place";
    private static final String REPLACE = "--replace";

    static Syntax options(Syntax syntax) {
        return syntax.option(INTO, "DESIGN", "Put the noise of the part into this design and write it to --output FILE or --in-place.")
                .option(PART, "ID", "With --into: the part; may be left out where the design has one.")
                .flag(IN_PLACE, "With --into: write into the design file itself.")
                .flag(REPLACE, "With --into and --output: write over a file that is there already.");
    }

    /** What the command line names; empty where it names no design. Mistakes of the design are printed. */
    static Optional<PartInDesign> of(Syntax.Given given, Optional<Path> samples, Engine engine, Console console) throws Ending {
        if (given.option(INTO).isEmpty()) {
            for (String option : List.of(PART, IN_PLACE, REPLACE)) {
                if (given.flag(option)) {
                    throw Ending.badInput(option + " goes with " + INTO + " DESIGN.");
                }
            }
            return Optional.empty();
        }
        DesignSource source = DesignSource.open(given.option(INTO).get(), samples, Options.maxSize(given), engine);
        Path target = target(given, source, samples);
        if (!source.sound()) {
            source.print(console.err());
            console.err().println(Messages.count(source.problems()) + "; nothing was analysed and the file is untouched.");
            return Optional.of(new PartInDesign(source, "", target));
        }
        return Optional.of(new PartInDesign(source, part(given, source.design().orElseThrow()), target));
    }

    boolean sound() {
        return source.sound();
    }

    private static String part(Syntax.Given given, Design design) throws Ending {
        List<String> parts = design.airMovers().stream().map(AirMover::id).toList();
        Optional<String> named = given.option(PART);
        if (named.isPresent() && !parts.contains(named.get())) {
            throw Ending.badInput(PART + " " + named.get() + ": the design has no such part" + Spelling.nearest(named.get(), parts)
                    .map(near -> "; did you mean " + near + "?").orElse(parts.isEmpty() ? "; it has none at all." : "; it has "
                            + String.join(", ", parts) + "."));
        }
        if (named.isEmpty() && parts.size() != 1) {
            throw Ending.badInput(parts.isEmpty() ? "The design has no part whose noise this could be." : "The design has " + parts.size()
                    + " parts; name one with " + PART + ": " + String.join(", ", parts) + ".");
        }
        return named.orElseGet(parts::getFirst);
    }

    private static Path target(Syntax.Given given, DesignSource source, Optional<Path> samples) throws Ending {
        boolean in = given.flag(IN_PLACE);
        Optional<String> name = given.option(OUTPUT);
        if (in == name.isPresent()) {
            throw Ending.badInput(in ? "Choose one of " + OUTPUT + " and " + IN_PLACE + "." : INTO + " needs " + OUTPUT + " FILE or "
                    + IN_PLACE + ".");
        }
        if (in) {
            if (samples.filter(folder -> source.path().toAbsolutePath().startsWith(folder)).isPresent()) {
                throw Ending.badInput(IN_PLACE + ": " + source.name() + " is a sample, which is not written over; write to " + OUTPUT
                        + " FILE.");
            }
            return source.path();
        }
        Path target = Delivery.target(name.get(), source.path());
        if (Files.exists(target) && !given.flag(REPLACE)) {
            throw Ending.badInput(OUTPUT + " " + name.get() + ": there is a file of that name; " + REPLACE + " writes over it.");
        }
        return target;
    }

    /** The number of blades that the part states already; empty where it states none. */
    Optional<String> blades() {
        return source.design().flatMap(design -> design.airMover(part)).flatMap(mover -> mover.section(RecordedNoise.SECTION))
                .flatMap(noise -> noise instanceof Value.Tree tree ? tree.get("blades") : Optional.empty())
                .flatMap(value -> value instanceof Value.Num number ? Optional.of(number.literal()) : Optional.empty());
    }

    /** What does not go together of that number and one of the command line. */
    Optional<String> otherBlades(Optional<Integer> given) {
        return blades().filter(stated -> given.filter(each -> String.valueOf(each).equals(stated)).isEmpty())
                .map(stated -> "The design states " + stated + " blades of " + part + given.map(each -> ", the command line " + each
                + ": " + each + " is written.").orElse("; without --blades they are not kept in its new section."));
    }

    /** Writes the design with the noise of the part in it. */
    void put(Value.Tree noise, boolean quiet, Engine engine, Console console) throws Ending {
        Design design = source.design().orElseThrow();
        boolean before = design.airMover(part).flatMap(mover -> mover.section(RecordedNoise.SECTION)).isPresent();
        Design changed = design.withAirMovers(design.airMovers().stream().map(mover -> mover.id().equals(part) ? with(mover, noise)
                : mover).toList());
        List<Problem> mistakes = new ArrayList<>(engine.check(changed));
        mistakes.removeIf(problem -> !problem.isError());
        if (!mistakes.isEmpty()) {
            throw Ending.badInput("With this noise the design would have mistakes, the first: " + mistakes.getFirst().sentence()
                    + ". It was not written.");
        }
        try {
            DesignFile.save(changed, target);
        } catch (IOException failed) {
            throw Ending.broken("The design could not be written to " + target + ": " + failed.getMessage() + ".");
        }
        if (!quiet) {
            console.err().println("The design with the noise of " + part + " is written to " + target + (before
                    ? "; what the part said of its noise before is replaced." : "."));
        }
    }

    private static AirMover with(AirMover part, Value.Tree noise) {
        Value.Tree sections = part.more().tree(Noun.SECTIONS).orElse(Value.Tree.EMPTY).with(RecordedNoise.SECTION, noise);
        return new AirMover(part.id(), part.maker(), part.type(), part.width(), part.height(), part.depth(), part.rotorDiameter(),
                part.openArea(),
                part.ratedSpeed(), part.motor(), part.noLoadSpeed(), part.category(), part.lockedLoss(), part.freewheelingLoss(),
                part.ratedPower(), part.fixedLoss(), part.datasheet(), part.curves(), part.more().with(Noun.SECTIONS, sections));
    }
}
