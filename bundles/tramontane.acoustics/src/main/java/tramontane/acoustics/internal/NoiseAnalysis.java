package tramontane.acoustics.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import org.osgi.service.component.annotations.ReferenceCardinality;
import org.osgi.service.component.annotations.ReferencePolicyOption;
import tramontane.acoustics.NoiseScene;
import tramontane.acoustics.NoiseState;
import tramontane.analysis.Analysis;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Input;
import tramontane.analysis.Kinds;
import tramontane.analysis.Needs;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.model.Design;
import tramontane.physics.sound.DeclaredLevel;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.NoiseCriterion;
import tramontane.physics.sound.NoiseRating;
import tramontane.physics.sound.Rating;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.Weighting;

/** How loud a design is in one condition: at its sources, where sound leaves, and where somebody listens. */
@Component(service = Analysis.class)
public final class NoiseAnalysis implements Analysis<NoiseState> {

    /** What stands for the level of silence, dB. */
    static final double SILENCE = 0;

    private final List<PassageKind> kinds;

    /**
     * Made by the framework.
     *
     * @param kinds the loaded passage kinds, which know how large passages are
     */
    @Activate
    public NoiseAnalysis(@Reference(cardinality = ReferenceCardinality.MULTIPLE, policyOption = ReferencePolicyOption.GREEDY)
            List<PassageKind> kinds) {
        this.kinds = Kinds.byName(kinds, PassageKind::form);
    }

    @Override
    public String id() {
        return "acoustics";
    }

    @Override
    public String label() {
        return "noise";
    }

    @Override
    public Scope scope() {
        return Scope.CONDITION;
    }

    @Override
    public Class<NoiseState> gives() {
        return NoiseState.class;
    }

    @Override
    public Needs needs() {
        return Needs.results(OperatingPoint.class);
    }

    @Override
    public List<FigureKind> figures() {
        return Figures.ALL;
    }

    @Override
    public boolean mayBeBrief() {
        return true;
    }

    @Override
    public Design reads(Design design) {
        return design.withHeatSources(List.of()).withMission(List.of()).withControlLaws(List.of()).withRequirements(List.of())
                .withMore(design.only(List.of(MoverNoiseSection.NAME)));
    }

    @Override
    public Result<NoiseState> run(Input input, Run run) {
        if (!NoiseModel.asked(input.design())) {
            return Result.of(NoiseState.NONE);
        }
        NoiseModel model = NoiseModel.of(input.design(), input.condition(), kinds);
        run.check();
        NoiseState state = model.at(input.result(OperatingPoint.class));
        run.check();
        List<Figure> figures = figures(model, state);
        if (run.trace().recording()) {
            new NoiseSteps(model, state, input.result(OperatingPoint.class), run.trace()).record();
        }
        return run.brief() ? new Result<>(Optional.of(state), figures, List.of())
                : new Result<>(Optional.of(state), figures, NoiseFindings.of(model, state, input.result(OperatingPoint.class)),
                        NoiseTables.of(model, state, input.result(OperatingPoint.class)));
    }

    private static List<Figure> figures(NoiseModel model, NoiseState state) {
        List<Figure> figures = new ArrayList<>();
        for (NoiseState.BankNoise bank : state.banks()) {
            double level = bank.total().level(Weighting.A);
            if (Double.isFinite(level)) {
                figures.add(Figure.of(Figures.POWER_BANK, bank.bank(), level).within(level - bank.below(), level + bank.above()));
            }
            bank.bladeFrequency().ifPresent(frequency -> figures.add(Figure.of(Figures.BLADES, bank.bank(), frequency)));
        }
        openings(model.scene(), state, figures);
        for (NoiseState.PositionNoise position : state.positions()) {
            if (Double.isFinite(position.level())) {
                position(model.scene(), position, figures);
                tones(state, position, figures);
            }
        }
        if (state.silent()) {
            figures.add(Figure.of(Figures.POWER, "", SILENCE).within(SILENCE, SILENCE));
            state.positions().forEach(position -> figures.add(Figure.of(Figures.LEVEL, position.position(), SILENCE).within(SILENCE, SILENCE)));
        }
        return figures;
    }

    private static void openings(NoiseScene scene, NoiseState state, List<Figure> figures) {
        double sum = 0;
        double lower = 0;
        double upper = 0;
        for (NoiseState.OpeningNoise opening : state.openings()) {
            double power = opening.power().power(Weighting.A);
            if (power > 0) {
                double level = Levels.of(power);
                figures.add(Figure.of(Figures.POWER_OPENING, opening.passage(), level).within(level - opening.below(), level + opening.above()));
                sum += power;
                lower += power * Levels.power(-opening.below());
                upper += power * Levels.power(opening.above());
            }
        }
        if (sum > 0) {
            double level = Levels.of(sum);
            double below = level - Levels.of(lower);
            double above = Levels.of(upper) - level;
            figures.add(Figure.of(Figures.POWER, "", level).within(level - below, level + above));
            scene.declaration().ifPresent(batch -> {
                DeclaredLevel declared = new DeclaredLevel(level, DeclaredLevel.adder(batch.reproducibility(), batch.production()));
                figures.add(Figure.of(Figures.POWER_DECLARED, "", declared.limit()).within(declared.limit() - below, declared.limit() + above));
            });
        }
    }

    private static void position(NoiseScene scene, NoiseState.PositionNoise position, List<Figure> figures) {
        String place = position.position();
        double below = position.level() - position.lower();
        double above = position.upper() - position.level();
        figures.add(Figure.of(Figures.LEVEL, place, position.level()).within(position.lower(), position.upper()));
        double c = position.weightedC();
        figures.add(Figure.of(Figures.LEVEL_C, place, c).within(c - below - position.shape(), c + above + position.shape()));
        NoiseModel.background(scene).ifPresent(background -> figures.add(Figure.of(Figures.LEVEL_TOTAL, place, Levels.sum(position.level(), background))
                .within(Levels.sum(position.lower(), background), Levels.sum(position.upper(), background))));
        Spectrum softer = position.total().gained(-below - position.shape());
        Spectrum louder = position.total().gained(above + position.shape());
        rated(Figures.RATING_NR, place, NoiseRating.of(softer), position.noiseRating(), NoiseRating.of(louder)).ifPresent(figures::add);
        rated(Figures.RATING_NC, place, NoiseCriterion.of(softer), position.noiseCriterion(), NoiseCriterion.of(louder)).ifPresent(figures::add);
    }

    private static void tones(NoiseState state, NoiseState.PositionNoise position, List<Figure> figures) {
        double below = position.level() - position.lower() + position.shape();
        double above = position.upper() - position.level() + position.shape();
        loudest(state, position).ifPresent(tone -> {
            figures.add(Figure.of(Figures.TO_NOISE, position.position(), tone.toNoise()).within(tone.toNoise() - below, tone.toNoise() + above));
            figures.add(Figure.of(Figures.PROMINENCE, position.position(), tone.prominence()).within(tone.prominence() - below, tone.prominence() + above));
            figures.add(Figure.of(Figures.EXCESS, position.position(), tone.excess()).within(tone.excess() - below, tone.excess() + above));
        });
    }

    private static Optional<Figure> rated(FigureKind kind, String place, Optional<Rating> softer, Optional<Rating> rating, Optional<Rating> louder) {
        return rating.map(value -> Figure.of(kind, place, value.value()).within(softer.map(Rating::value).orElse(value.value()),
                louder.map(Rating::value).orElse(value.value())));
    }

    /**
     * The tone that stands out most; empty where one stands alone, and where tones are not stated and none of those that are is prominent, so
     * that figures of another are not taken for the worst.
     */
    static Optional<NoiseState.Heard> loudest(NoiseState state, NoiseState.PositionNoise position) {
        boolean all = state.banks().stream().allMatch(bank -> bank.movers().isEmpty() || bank.tonal());
        return position.tones().stream().max(Comparator.comparingDouble(NoiseState.Heard::excess)).filter(tone -> Double.isFinite(tone.toNoise())
                && Double.isFinite(tone.prominence())).filter(tone -> all || tone.prominent());
    }
}
