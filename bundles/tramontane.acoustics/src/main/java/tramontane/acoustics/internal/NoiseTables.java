package tramontane.acoustics.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tramontane.acoustics.Emission;
import tramontane.acoustics.NoiseState;
import tramontane.analysis.Amount;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Overview;
import tramontane.analysis.Table;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.Rating;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.Weighting;
import tramontane.physics.units.QuantityKind;

/** What is heard, octave by octave, what makes it, and the tones in it. */
final class NoiseTables {

    private static final int FIRST = 1;
    private static final int LAST = 8;
    /** Parts below this share are left out where there are many. */
    private static final int MOST_PARTS = 6;
    private static final int MOST_OCTAVES = 3;
    private static final double LESS = 10;
    private static final double SLOWER = 0.9;

    private NoiseTables() {
    }

    static List<Overview> of(NoiseModel model, NoiseState state, OperatingPoint point) {
        List<NoiseState.PositionNoise> heard = state.positions().stream().filter(position -> Double.isFinite(position.level())).toList();
        if (heard.isEmpty()) {
            return List.of();
        }
        List<Overview> tables = new ArrayList<>();
        tables.add(new Overview(levels(heard), List.of(Figures.LEVEL.id(), Figures.LEVEL_C.id(), Figures.RATING_NR.id(), Figures.RATING_NC.id())));
        tables.add(new Overview(octaves(heard), List.of()));
        tables.add(new Overview(parts(heard, model.at(slower(point))), List.of()));
        if (heard.stream().anyMatch(position -> !position.tones().isEmpty())) {
            tables.add(new Overview(tones(state, heard), List.of(Figures.TO_NOISE.id(), Figures.PROMINENCE.id(), Figures.EXCESS.id())));
        }
        return tables;
    }

    /** All movers at like points of nine tenths of their speed. */
    private static OperatingPoint slower(OperatingPoint point) {
        return new OperatingPoint(point.banks().stream().map(bank -> new OperatingPoint.BankPoint(bank.bank(), bank.flow() * SLOWER, bank.massFlow() * SLOWER,
                bank.pressure() * SLOWER * SLOWER, bank.speed() * SLOWER, bank.power(), bank.temperature(), bank.density(), bank.stable(),
                bank.movers().stream().map(mover -> new OperatingPoint.MoverPoint(mover.position(), mover.running(), mover.flow() * SLOWER,
                        mover.pressure() * SLOWER * SLOWER, mover.speed() * SLOWER, mover.power())).toList(), bank.setting())).toList(), List.of(), List.of());
    }

    private static Table levels(List<NoiseState.PositionNoise> heard) {
        List<Table.Column> columns = List.of(new Table.Column("position", false), new Table.Column("A", true), new Table.Column("A, bounds", true),
                new Table.Column("C", true), new Table.Column("NR", true), new Table.Column("decided by", false), new Table.Column("NC", true),
                new Table.Column("decided by", false));
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (NoiseState.PositionNoise position : heard) {
            rows.add(List.of(new Table.Words(position.position()), level(position.level()), new Table.Range(new Amount(tenths(position.lower()),
                    QuantityKind.LEVEL), new Amount(tenths(position.upper()), QuantityKind.LEVEL)), level(position.weightedC()),
                    rating(position.noiseRating()), decides(position.noiseRating()), rating(position.noiseCriterion()), decides(position.noiseCriterion())));
        }
        return new Table("Noise", columns, rows);
    }

    private static Table octaves(List<NoiseState.PositionNoise> heard) {
        List<Table.Column> columns = new ArrayList<>(List.of(new Table.Column("position", false)));
        for (int octave = FIRST; octave <= LAST; octave++) {
            columns.add(new Table.Column(hertz(octave), true));
        }
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (NoiseState.PositionNoise position : heard) {
            List<Table.Cell> row = new ArrayList<>(List.of(new Table.Words(position.position())));
            for (int octave = FIRST; octave <= LAST; octave++) {
                row.add(level(position.total().octave(octave)));
            }
            rows.add(row);
        }
        return new Table("Noise in octaves", columns, rows);
    }

    private static Table.Cell decides(Optional<Rating> rating) {
        return new Table.Words(rating.map(value -> hertz(value.octave()) + (value.tabulated() ? "" : ", beyond the curves")).orElse(""));
    }

    private static double tenths(double level) {
        return Math.rint(10 * level) / 10;
    }

    private static Table.Cell rating(Optional<Rating> rating) {
        return rating.<Table.Cell>map(value -> new Amount(Math.rint(10 * value.value()) / 10, QuantityKind.NUMBER)).orElse(new Table.Empty());
    }

    /** Sources and octaves, and what would be gained if one were changed. */
    private static Table parts(List<NoiseState.PositionNoise> heard, NoiseState slower) {
        List<Table.Column> columns = List.of(new Table.Column("position", false), new Table.Column("what makes it", false),
                new Table.Column("level", true), new Table.Column("share", true), new Table.Column("if changed", false), new Table.Column("gain", true));
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (NoiseState.PositionNoise position : heard) {
            double all = position.total().power(Weighting.A);
            List<NoiseState.Part> parts = position.parts().stream().sorted(Comparator.comparingDouble((NoiseState.Part part) ->
                    part.total().power(Weighting.A)).reversed()).toList();
            int shown = parts.size() > MOST_PARTS + 1 ? MOST_PARTS : parts.size();
            for (NoiseState.Part part : parts.subList(0, shown)) {
                double without = position.without(part);
                rows.add(row(position, name(part) + ", most at " + hertz(loudest(part)), part.total().power(Weighting.A), all, "silent",
                        without > Double.NEGATIVE_INFINITY ? Optional.of(position.level() - without) : Optional.empty()));
            }
            if (shown < parts.size()) {
                double rest = parts.subList(shown, parts.size()).stream().mapToDouble(part -> part.total().power(Weighting.A)).sum();
                rows.add(row(position, parts.size() - shown + " more", rest, all, "silent", Optional.of(position.level() - Levels.of(all - rest))));
            }
            slower.position(position.position()).filter(other -> Double.isFinite(other.level())).ifPresent(other -> rows.add(row(position, "all movers", all,
                    all, "10 % slower", Optional.of(position.level() - other.level()))));
            List<Integer> loudest = new ArrayList<>();
            for (int octave = 0; octave < Bands.OCTAVES; octave++) {
                loudest.add(octave);
            }
            loudest.sort(Comparator.comparingDouble((Integer octave) -> weighted(position, octave)).reversed());
            for (int octave : loudest.subList(0, MOST_OCTAVES)) {
                double own = weighted(position, octave);
                if (own > 0) {
                    rows.add(row(position, "octave of " + hertz(octave), own, all, "10 dB less in it",
                            Optional.of(position.level() - Levels.of(all - own + own * Levels.power(-LESS)))));
                }
            }
        }
        return new Table("What makes the noise", columns, rows);
    }

    private static List<Table.Cell> row(NoiseState.PositionNoise position, String what, double own, double all, String change, Optional<Double> gain) {
        return List.of(new Table.Words(position.position()), new Table.Words(what), level(Levels.of(own)),
                all > 0 ? new Amount(own / all, QuantityKind.FRACTION) : new Table.Empty(), new Table.Words(change),
                gain.<Table.Cell>map(NoiseTables::level).orElse(new Table.Words("all")));
    }

    static String name(NoiseState.Part part) {
        return part.bank().equals(part.opening()) ? part.bank() : part.bank() + " by " + part.opening();
    }

    private static int loudest(NoiseState.Part part) {
        int most = 0;
        for (int octave = 1; octave < Bands.OCTAVES; octave++) {
            most = weighted(part.total(), octave) > weighted(part.total(), most) ? octave : most;
        }
        return most;
    }

    private static double weighted(NoiseState.PositionNoise position, int octave) {
        return weighted(position.total(), octave);
    }

    private static double weighted(Spectrum spectrum, int octave) {
        return spectrum.octavePower(octave, Weighting.A);
    }

    private static Table tones(NoiseState state, List<NoiseState.PositionNoise> heard) {
        List<Table.Column> columns = List.of(new Table.Column("position", false), new Table.Column("tone", true), new Table.Column("of", false),
                new Table.Column("level", true), new Table.Column("to noise", true), new Table.Column("prominence", true),
                new Table.Column("above criterion", true), new Table.Column("prominent", false));
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (NoiseState.PositionNoise position : heard) {
            for (NoiseState.Heard tone : position.tones()) {
                rows.add(List.of(new Table.Words(position.position()), new Amount(tone.frequency(), QuantityKind.FREQUENCY),
                        new Table.Words(from(state, tone.frequency())), level(tone.level()), level(tone.toNoise()), level(tone.prominence()), level(tone.excess()),
                        new Table.Words(tone.prominent() ? "yes" : "no")));
            }
        }
        return new Table("Tones", columns, rows);
    }

    /** Whose tone it is: the bank, and the blades or the order. */
    static String from(NoiseState state, double frequency) {
        List<String> names = new ArrayList<>();
        for (NoiseState.BankNoise bank : state.banks()) {
            bank.tones().stream().filter(tone -> Math.abs(tone.frequency() - frequency) < 0.02).findFirst()
                    .ifPresent(tone -> names.add(bank.bank() + order(bank, tone)));
        }
        return String.join(", ", names);
    }

    private static String order(NoiseState.BankNoise bank, Emission.Tone tone) {
        if (tone.order() <= 0) {
            return ", fixed";
        }
        Optional<Double> harmonic = bank.blades().map(blades -> tone.order() / blades);
        if (harmonic.filter(times -> Math.abs(times - Math.rint(times)) < 0.02 && times >= 0.5).isPresent()) {
            long times = Math.round(harmonic.get());
            return times == 1 ? ", blades" : ", blades × " + times;
        }
        return ", order " + Math.round(10 * tone.order()) / 10.0;
    }

    static String hertz(int octave) {
        return Bands.octaveName(octave);
    }

    private static Table.Cell level(double level) {
        return Double.isFinite(level) ? new Amount(Math.rint(10 * level) / 10, QuantityKind.LEVEL) : new Table.Empty();
    }
}
