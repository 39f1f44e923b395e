package tramontane.acoustics.internal;

import java.util.Collection;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.DoubleStream;
import tramontane.acoustics.internal.path.Opening;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Sections;
import tramontane.model.AirMover;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.Weighting;
import tramontane.selection.Arrangement;
import tramontane.selection.FigureBound;
import tramontane.selection.Placement;

/**
 * How quiet a design is at least with a part in one of its banks: the sound of that bank alone, all others silent, along the path that
 * it has with this part; at the speed and flow, in the range that the reduced design gives, at which it is softest.
 *
 * <p>Flows come from the reduced design only, and are widened by {@link #FLOW}; where some movers have failed, or a curve has a dip and those
 * side by side may share the flow unevenly, each may work anywhere on its curve as far as the mean of their flows allows.
 */
final class NoiseBound implements FigureBound.Bound {

    /** By how much exact flows may be off those of the reduced design, as a share. */
    private static final double FLOW = 0.05;
    /** By how much the air may be thinner than in the reduced design, as a share. */
    private static final double DENSITY = 0.01;

    private static final double[] EVENLY = DoubleStream.generate(() -> 1).limit(Bands.THIRDS).toArray();
    private static final MoverNoiseSection MOVER = new MoverNoiseSection();

    private final Design design;
    private final String bank;
    private final Collection<? extends PassageKind> kinds;
    private final Weighing weighing;
    private final SoundSource.Obstacles obstacles;
    private final boolean alone;
    private final Map<AirMover, Optional<SoundSource>> sources = Collections.synchronizedMap(new IdentityHashMap<>());
    private final Map<Crossing, double[][]> weights = new ConcurrentHashMap<>();

    /** What the thirds of a bank's sound power count for. */
    @FunctionalInterface
    interface Weighing {

        /** Rows of weights, A-weighting among them, of which the one counts by which it is loudest. */
        double[][] of(NoiseModel model, String bank);
    }

    /** What of a part the path of the sound depends on. */
    private record Crossing(String condition, int columns, Optional<Double> openArea, Optional<Double> width, Optional<Double> height) {
    }

    NoiseBound(Design design, String bank, Collection<? extends PassageKind> kinds, Weighing weighing) {
        this.design = design;
        this.bank = bank;
        this.kinds = kinds;
        this.weighing = weighing;
        Passage passage = design.airPath().passage(bank).orElseThrow();
        this.obstacles = NoiseModel.obstacles(passage);
        this.alone = design.airPath().banks().size() == 1;
    }

    /** By all that leaves the equipment. */
    static double[][] power(NoiseModel model, String bank) {
        double[] row = new double[Bands.THIRDS];
        for (Opening opening : model.path().openings()) {
            add(row, model.path().share(bank, opening), EVENLY);
        }
        return new double[][] {row};
    }

    /** By what is heard at each position. */
    static double[][] level(NoiseModel model, String bank) {
        return model.listening().positions().stream().map(position -> {
            double[] row = new double[Bands.THIRDS];
            for (Opening opening : model.path().openings()) {
                add(row, model.path().share(bank, opening), model.listening().transfer(opening, position));
            }
            return row;
        }).toArray(double[][]::new);
    }

    private static void add(double[] row, double[] share, double[] transfer) {
        for (int third = 0; third < row.length; third++) {
            row[third] += Weighting.A.factor(third) * share[third] * transfer[third];
        }
    }

    @Override
    public FigureBound.Best best(AirMover part, Arrangement arrangement, List<FigureBound.Duty> duties) {
        Optional<SoundSource> source = sources.computeIfAbsent(part, mover -> Sections.decode(MOVER, mover).flatMap(noise -> SoundSource.of(mover, noise)));
        if (source.isEmpty()) {
            return alone || runsAlways(duties) ? FigureBound.Best.MISSING : FigureBound.Best.OPEN;
        }
        double most = 0;
        for (FigureBound.Duty duty : duties) {
            double[] least = new LeastSound(source.get()).of(range(duty, arrangement, source.get().even()), duty.density() * (1 - DENSITY), obstacles, weights(part, arrangement, duty.condition()));
            for (double each : least) {
                most = Math.max(most, duty.running() * each);
            }
        }
        return most > 0 ? FigureBound.Best.of(Levels.of(most)) : FigureBound.Best.OPEN;
    }

    /** Whether it runs in all conditions; then a part of which nothing is known leaves none in which something could be said of the others. */
    private boolean runsAlways(List<FigureBound.Duty> duties) {
        return design.workingConditions().stream().allMatch(condition -> duties.stream().anyMatch(duty -> duty.condition().equals(condition.id())));
    }

    /** @param even flow over speed of a mover from which on they share a flow evenly */
    private static LeastSound.Range range(FigureBound.Duty duty, Arrangement arrangement, double even) {
        double fastest = Math.max(duty.speed(), duty.fullSpeed());
        double slow = duty.flow() / duty.speed() / arrangement.columns();
        double fast = duty.fullFlow() / fastest / arrangement.columns();
        double least = Math.min(slow, fast) * (1 - FLOW);
        double most = Math.max(slow, fast) * (1 + FLOW);
        boolean any = duty.running() < arrangement.movers();
        return new LeastSound.Range(duty.speed(), fastest, any ? 0 : least, any ? Double.POSITIVE_INFINITY : most,
                !any && arrangement.columns() > 1 && least < even);
    }

    private double[][] weights(AirMover part, Arrangement arrangement, String condition) {
        return weights.computeIfAbsent(new Crossing(condition, arrangement.columns(), part.openArea().map(Quantity::si), part.width().map(Quantity::si),
                part.height().map(Quantity::si)), key -> {
            Condition declared = design.workingConditions().stream().filter(each -> each.id().equals(condition)).findFirst().orElseThrow();
            return weighing.of(NoiseModel.of(Placement.of(design, bank, part, arrangement, 1), declared.with(declared.id(), List.of()), kinds), bank);
        });
    }
}
