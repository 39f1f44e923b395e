package tramontane.acoustics.internal;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.acoustics.Emission;
import tramontane.acoustics.MoverNoise;
import tramontane.acoustics.NoiseScene;
import tramontane.acoustics.NoiseState;
import tramontane.acoustics.PassageNoise;
import tramontane.acoustics.internal.path.Listening;
import tramontane.acoustics.internal.path.Opening;
import tramontane.acoustics.internal.path.SoundPath;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Sections;
import tramontane.model.AirMover;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.model.Value;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.ToneInNoise;
import tramontane.physics.sound.Weighting;

/** From the movers of a design at work to what is heard of them. */
final class NoiseModel {

    private static final MoverNoiseSection MOVER = new MoverNoiseSection();
    private static final NoiseSceneSection SCENE = new NoiseSceneSection();
    private static final PassageNoiseSection PASSAGE = new PassageNoiseSection();
    private static final double SAME_FREQUENCY = 0.01;
    /** How far an order may be off a multiple of the blades. */
    private static final double NEAR_ORDER = 0.02;

    private final Design design;
    private final Map<String, Source> sources = new LinkedHashMap<>();
    private final NoiseScene scene;
    private final SoundPath path;
    private final Listening listening;

    /** A bank with its part and, where something is known, its sound. */
    record Source(Passage bank, AirMover part, Optional<MoverNoise> stated, Optional<SoundSource> sound, SoundSource.Obstacles obstacles) {
    }

    private NoiseModel(Design design, NoiseScene scene, SoundPath path, Listening listening) {
        this.design = design;
        this.scene = scene;
        this.path = path;
        this.listening = listening;
    }

    /** Whether a design says anything of noise: of a part that it uses, or of a place where somebody listens. */
    static boolean asked(Design design) {
        return design.section(MoverNoiseSection.NAME).isPresent() || design.airPath().passages().stream().filter(Passage::isBank)
                .anyMatch(bank -> design.airMover(Banks.mover(bank)).filter(part -> part.section(MoverNoiseSection.NAME).isPresent()).isPresent());
    }

    /**
     * The model of a design in a condition.
     *
     * @param kinds the loaded passage kinds
     */
    static NoiseModel of(Design design, Condition condition, Collection<? extends PassageKind> kinds) {
        NoiseModel model = new NoiseModel(design, Sections.decode(SCENE, design).orElse(NoiseScene.NONE), SoundPath.of(design, condition, kinds),
                Listening.of(design));
        Map<String, Optional<MoverNoise>> stated = new HashMap<>();
        Map<String, Optional<SoundSource>> sounds = new HashMap<>();
        for (Passage bank : design.airPath().passages()) {
            Optional<AirMover> part = bank.isBank() ? design.airMover(Banks.mover(bank)) : Optional.empty();
            part.ifPresent(mover -> {
                Optional<MoverNoise> noise = stated.computeIfAbsent(mover.id(), id -> Sections.decode(MOVER, mover));
                Optional<SoundSource> sound = sounds.computeIfAbsent(mover.id(), id -> noise.flatMap(known -> SoundSource.of(mover, known)));
                model.sources.put(bank.id(), new Source(bank, mover, noise, sound, obstacles(bank)));
            });
        }
        return model;
    }

    /** What stands near the movers of a bank. */
    static SoundSource.Obstacles obstacles(Passage bank) {
        Optional<PassageNoise> own = Sections.decode(PASSAGE, bank);
        return new SoundSource.Obstacles(own.flatMap(PassageNoise::inletObstacle).orElseGet(() -> Banks.inletClearance(bank)),
                own.flatMap(PassageNoise::outletObstacle).orElse(Double.POSITIVE_INFINITY));
    }

    Design design() {
        return design;
    }

    NoiseScene scene() {
        return scene;
    }

    SoundPath path() {
        return path;
    }

    Listening listening() {
        return listening;
    }

    Source source(String bank) {
        return sources.get(bank);
    }

    /** What is heard at an operating point. */
    NoiseState at(OperatingPoint point) {
        List<NoiseState.BankNoise> banks = new ArrayList<>();
        List<String> unknown = new ArrayList<>();
        for (OperatingPoint.BankPoint bank : point.banks()) {
            Source source = sources.get(bank.bank());
            if (source == null) {
                continue;
            }
            if (source.sound().isPresent()) {
                banks.add(bank(source, bank));
            } else if (bank.movers().stream().anyMatch(OperatingPoint.MoverPoint::running)) {
                unknown.add(bank.bank());
            }
        }
        return unknown.isEmpty() ? new NoiseState(banks, unknown, openings(banks), positions(banks))
                : new NoiseState(banks, unknown, List.of(), List.of());
    }

    private static NoiseState.BankNoise bank(Source source, OperatingPoint.BankPoint point) {
        List<Emission> movers = new ArrayList<>();
        double[] noise = new double[Bands.THIRDS];
        List<Emission.Tone> tones = new ArrayList<>();
        double lower = 0;
        double upper = 0;
        double sum = 0;
        double speed = 0;
        OperatingPoint.MoverPoint before = null;
        for (OperatingPoint.MoverPoint mover : point.movers()) {
            if (!mover.running() || mover.speed() <= 0) {
                continue;
            }
            speed = mover.speed();
            Emission emission = before != null && before.flow() == mover.flow() && before.speed() == mover.speed() ? movers.getLast()
                    : source.sound().orElseThrow().at(mover.speed(), mover.flow(), point.density(), source.obstacles());
            before = mover;
            movers.add(emission);
            for (int i = 0; i < noise.length; i++) {
                noise[i] += emission.noise().power(i);
            }
            emission.tones().forEach(tone -> join(tones, tone));
            double power = emission.total().power(Weighting.A);
            sum += power;
            lower += power * Levels.power(-emission.below());
            upper += power * Levels.power(emission.above());
        }
        tones.sort(Comparator.comparingDouble(Emission.Tone::frequency));
        return new NoiseState.BankNoise(point.bank(), movers, Spectrum.of(noise), tones, sum > 0 ? Levels.of(sum / lower) : 0,
                sum > 0 ? Levels.of(upper / sum) : 0, tonal(source), source.stated().flatMap(MoverNoise::blades), speed);
    }

    /** Whether the tones of a part are stated: none at all, or among others that of its blades, where their number is stated. */
    private static boolean tonal(Source source) {
        Value.Tree section = source.part().section(MoverNoiseSection.NAME).filter(Value.Tree.class::isInstance).map(Value.Tree.class::cast)
                .orElse(Value.Tree.EMPTY);
        List<Value> lists = new ArrayList<>(section.get("tones").stream().toList());
        section.get("points").filter(Value.Items.class::isInstance).ifPresent(points -> ((Value.Items) points).values().stream()
                .filter(Value.Tree.class::isInstance).flatMap(point -> ((Value.Tree) point).get("tones").stream()).forEach(lists::add));
        if (lists.isEmpty()) {
            return false;
        }
        MoverNoise noise = source.stated().orElse(MoverNoise.NONE);
        List<MoverNoise.Tone> tones = noise.measurements().stream().flatMap(each -> each.tones().stream()).toList();
        if (tones.isEmpty() || noise.blades().isEmpty()) {
            return true;
        }
        return noise.measurements().stream().anyMatch(each -> each.tones().stream().filter(tone -> !tone.fixed()).anyMatch(tone -> {
            double order = tone.order().orElseGet(() -> tone.frequency().orElse(0.0) * 2 * Math.PI
                    / each.speed().or(source.part()::ratedSpeedSi).orElse(Double.NaN)) / noise.blades().get();
            return Math.abs(order - Math.rint(order)) < NEAR_ORDER && order > 0.5;
        }));
    }

    private static void join(List<Emission.Tone> tones, Emission.Tone tone) {
        for (int i = 0; i < tones.size(); i++) {
            if (Math.abs(tones.get(i).frequency() - tone.frequency()) < SAME_FREQUENCY) {
                tones.set(i, new Emission.Tone(tones.get(i).frequency(), tones.get(i).power() + tone.power(), tones.get(i).order()));
                return;
            }
        }
        tones.add(tone);
    }

    private List<NoiseState.OpeningNoise> openings(List<NoiseState.BankNoise> banks) {
        List<NoiseState.OpeningNoise> openings = new ArrayList<>();
        for (Opening opening : path.openings()) {
            Spectrum power = Spectrum.SILENCE;
            double lower = 0;
            double upper = 0;
            for (NoiseState.BankNoise bank : banks) {
                Spectrum leaves = bank.total().times(path.share(bank.bank(), opening));
                power = power.plus(leaves);
                lower += leaves.power(Weighting.A) * Levels.power(-bank.below() - opening.tolerance());
                upper += leaves.power(Weighting.A) * Levels.power(bank.above() + opening.tolerance());
            }
            double sum = power.power(Weighting.A);
            openings.add(new NoiseState.OpeningNoise(opening.id(), power, sum > 0 ? Levels.of(sum / lower) : 0, sum > 0 ? Levels.of(upper / sum) : 0));
        }
        return openings;
    }

    private List<NoiseState.PositionNoise> positions(List<NoiseState.BankNoise> banks) {
        List<NoiseState.PositionNoise> heard = new ArrayList<>();
        for (Listening.Position position : listening.positions()) {
            List<NoiseState.Part> parts = new ArrayList<>();
            for (Opening opening : path.openings()) {
                double[] transfer = listening.transfer(opening, position);
                for (NoiseState.BankNoise bank : banks) {
                    if (!bank.movers().isEmpty()) {
                        part(bank, opening, transfer).ifPresent(parts::add);
                    }
                }
            }
            heard.add(heard(position.id(), parts, banks));
        }
        return heard;
    }

    private Optional<NoiseState.Part> part(NoiseState.BankNoise bank, Opening opening, double[] transfer) {
        double[] factor = path.share(bank.bank(), opening).clone();
        boolean any = false;
        for (int i = 0; i < factor.length; i++) {
            factor[i] *= transfer[i];
            any |= factor[i] > 0;
        }
        if (!any) {
            return Optional.empty();
        }
        List<Emission.Tone> tones = bank.tones().stream().filter(tone -> within(tone.frequency())).map(tone -> new Emission.Tone(tone.frequency(),
                tone.power() * factor[Bands.third(tone.frequency())], tone.order())).toList();
        double loss = opening.tolerance();
        return Optional.of(new NoiseState.Part(bank.bank(), opening.id(), bank.noise().times(factor), tones, bank.below() + loss,
                bank.above() + loss));
    }

    private static boolean within(double frequency) {
        int third = Bands.third(frequency);
        return third >= 0 && third < Bands.THIRDS;
    }

    /** The tones of all parts, those of one frequency as one, from the lowest up. */
    static List<Emission.Tone> tones(List<NoiseState.Part> parts) {
        List<Emission.Tone> tones = new ArrayList<>();
        parts.forEach(part -> part.tones().forEach(tone -> join(tones, tone)));
        tones.sort(Comparator.comparingDouble(Emission.Tone::frequency));
        return tones;
    }

    private static NoiseState.PositionNoise heard(String position, List<NoiseState.Part> parts, List<NoiseState.BankNoise> banks) {
        double[] noise = new double[Bands.THIRDS];
        List<Emission.Tone> tones = tones(parts);
        double sum = 0;
        double lower = 0;
        double upper = 0;
        for (NoiseState.Part part : parts) {
            for (int i = 0; i < noise.length; i++) {
                noise[i] += part.noise().power(i);
            }
            double power = part.total().power(Weighting.A);
            sum += power;
            lower += power * Levels.power(-part.below());
            upper += power * Levels.power(part.above());
        }
        Spectrum alone = Spectrum.of(noise);
        Spectrum total = alone;
        for (Emission.Tone tone : tones) {
            total = total.plus(tone.frequency(), tone.power());
        }
        boolean shaped = banks.stream().flatMap(bank -> bank.movers().stream()).anyMatch(each -> each.assumed().contains(Emission.Assumed.SPECTRUM));
        return new NoiseState.PositionNoise(position, parts, alone, total, judged(alone, tones), Levels.of(sum), Levels.of(lower), Levels.of(upper),
                shaped ? SoundSource.SHAPE : 0);
    }

    private static List<NoiseState.Heard> judged(Spectrum noise, List<Emission.Tone> tones) {
        return ToneInNoise.judge(noise, tones.stream().map(tone -> new ToneInNoise.Tone(tone.frequency(), tone.power())).toList()).stream()
                .map(each -> new NoiseState.Heard(each.frequency(), each.level(), each.toneToNoise(), each.prominenceRatio(), excess(each)))
                .toList();
    }

    /** The prominence ratio of a tone that is lost in the noise is that of a hump of the noise, and tells nothing of the tone. */
    private static double excess(ToneInNoise.Prominence tone) {
        return tone.toneToNoise() < ToneInNoise.LEAST_RATIO ? tone.toneToNoiseExcess()
                : Math.max(tone.toneToNoiseExcess(), tone.prominenceRatioExcess());
    }

    /** A-weighted level of what is there without the equipment, dB. */
    static Optional<Double> background(NoiseScene scene) {
        return scene.background().flatMap(noise -> noise.weighted().or(() -> noise.levels().map(levels -> levels.spectrum().level(Weighting.A))));
    }
}
