package tramontane.acoustics.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.acoustics.Emission;
import tramontane.acoustics.NoiseScene;
import tramontane.acoustics.NoiseState;
import tramontane.acoustics.internal.path.Listening;
import tramontane.acoustics.internal.path.Opening;
import tramontane.analysis.FigureKind;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Relation;
import tramontane.analysis.Trace;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.DeclaredLevel;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.NoiseCriterion;
import tramontane.physics.sound.NoiseRating;
import tramontane.physics.sound.Rating;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.ToneInNoise;
import tramontane.physics.sound.Weighting;
import tramontane.physics.units.QuantityKind;

/** Says where each figure of noise comes from. */
final class NoiseSteps {

    private static final String MOVER = "sound power of a mover";
    private static final String PART = "level of a part";
    private static final String SCENE = "noise section of the design";

    private final NoiseModel model;
    private final NoiseState state;
    private final OperatingPoint point;
    private final Trace trace;

    NoiseSteps(NoiseModel model, NoiseState state, OperatingPoint point, Trace trace) {
        this.model = model;
        this.state = state;
        this.point = point;
        this.trace = trace;
    }

    void record() {
        state.banks().forEach(this::bank);
        openings();
        state.positions().stream().filter(position -> Double.isFinite(position.level())).forEach(this::position);
        if (state.silent()) {
            state.positions().forEach(position -> step(Figures.LEVEL.id(), position.position(), Figures.SILENCE, NoiseAnalysis.SILENCE,
                    List.of(new Trace.Term("movers that run", QuantityKind.COUNT, 0, "operating point"))));
            step(Figures.POWER.id(), "", Figures.SILENCE, NoiseAnalysis.SILENCE, List.of(new Trace.Term("movers that run", QuantityKind.COUNT, 0,
                    "operating point")));
        }
    }

    private void bank(NoiseState.BankNoise bank) {
        List<OperatingPoint.MoverPoint> running = point.bank(bank.bank()).stream().flatMap(each -> each.movers().stream())
                .filter(mover -> mover.running() && mover.speed() > 0).toList();
        String section = "noise section of air mover " + model.source(bank.bank()).part().id();
        List<Trace.Term> sum = new ArrayList<>();
        for (int from = 0; from < bank.movers().size();) {
            Emission emission = bank.movers().get(from);
            int to = from + 1;
            while (to < bank.movers().size() && bank.movers().get(to).equals(emission)) {
                to++;
            }
            int first = running.get(from).position();
            int last = running.get(to - 1).position();
            String place = bank.bank() + " " + first + (to > from + 1 ? " to " + last : "");
            Emission.Terms terms = emission.terms();
            step(MOVER, place, Figures.SOURCE, emission.level(), List.of(level("measured, A-weighted", terms.stated(), section),
                    level("from pressure to power" + (emission.assumed().contains(Emission.Assumed.FREE_FIELD) ? ", a free field assumed" : ""),
                            terms.conversion(), section),
                    level("for the speed: k lg(n/n_measured), or between speeds that were measured; bands moved with it", terms.speed(),
                            "airflow.bank.speed" + Trace.AT + bank.bank()),
                    level("for the size", terms.size(), section), level("for the density", terms.density(), "operating point"),
                    level("for the flow ΔL(flow)", terms.flow(), "airflow.bank.flow" + Trace.AT + bank.bank()),
                    level("for what stands near ΔL(obstacle)", terms.obstacle(), "noise section of " + bank.bank())));
            int alike = to - from;
            sum.add(level(alike == 1 ? "mover " + first : "movers " + first + " to " + last + ", " + alike + " alike and so 10 lg " + alike + " more",
                    emission.level() + Levels.of(alike), MOVER + Trace.AT + place));
            from = to;
        }
        if (!sum.isEmpty()) {
            step(Figures.POWER_BANK.id(), bank.bank(), Figures.SUM, bank.total().level(Weighting.A), sum);
        }
        bank.bladeFrequency().ifPresent(frequency -> step(Figures.BLADES.id(), bank.bank(), Figures.PASSING, frequency, List.of(
                new Trace.Term("number of blades B", QuantityKind.COUNT, bank.blades().orElseThrow(), section),
                new Trace.Term("speed n", QuantityKind.ROTATIONAL_SPEED, bank.speed(), "airflow.bank.speed"))));
    }

    private void openings() {
        List<Trace.Term> all = new ArrayList<>();
        double power = 0;
        for (NoiseState.OpeningNoise opening : state.openings()) {
            double own = opening.power().power(Weighting.A);
            if (own <= 0) {
                continue;
            }
            power += own;
            List<Trace.Term> terms = new ArrayList<>();
            Optional<Opening> found = opening(opening.passage());
            found.ifPresent(exit -> terms.add(new Trace.Term("area that sound goes through S", QuantityKind.AREA, exit.area(),
                    "passage " + exit.id() + (exit.assumed() ? ", assumed" : ""))));
            for (NoiseState.BankNoise bank : state.banks()) {
                double whole = bank.total().power(Weighting.A);
                double leaves = found.map(exit -> bank.total().times(model.path().share(bank.bank(), exit)).power(Weighting.A)).orElse(0.0);
                if (leaves > 0) {
                    terms.add(level("sound power of " + bank.bank(), Levels.of(whole), Figures.POWER_BANK.id() + Trace.AT + bank.bank()));
                    terms.add(level("share of it that leaves here", Levels.of(leaves / whole), "areas and noise sections of passages and bays"));
                }
            }
            step(Figures.POWER_OPENING.id(), opening.passage(), Figures.LEAVES, Levels.of(own), terms);
            all.add(level("by " + opening.passage(), Levels.of(own), Figures.POWER_OPENING.id() + Trace.AT + opening.passage()));
        }
        if (power > 0) {
            double level = Levels.of(power);
            step(Figures.POWER.id(), "", Figures.SUM, level, all);
            model.scene().declaration().ifPresent(batch -> step(Figures.POWER_DECLARED.id(), "", Figures.DECLARED,
                    level + DeclaredLevel.adder(batch.reproducibility(), batch.production()), declared(level, batch)));
        }
    }

    private static List<Trace.Term> declared(double level, NoiseScene.Declaration batch) {
        return List.of(level("mean L_WA,m", level, Figures.POWER.id()), level("standard deviation of reproducibility s_R", batch.reproducibility(),
                SCENE), level("standard deviation of production s_P", batch.production(), SCENE));
    }

    private void position(NoiseState.PositionNoise position) {
        String place = position.position();
        List<Trace.Term> sum = new ArrayList<>();
        for (NoiseState.Part part : position.parts()) {
            String at = place + ": " + NoiseTables.name(part);
            double heard = part.total().level(Weighting.A);
            double power = state.bank(part.bank()).orElseThrow().total().level(Weighting.A);
            Optional<Opening> found = opening(part.opening());
            double leaving = found.map(exit -> state.bank(part.bank()).orElseThrow().total().times(model.path().share(part.bank(), exit))
                    .level(Weighting.A)).orElse(power);
            List<Trace.Term> terms = new ArrayList<>(List.of(level("sound power of " + part.bank() + " L_W", power,
                    Figures.POWER_BANK.id() + Trace.AT + part.bank()),
                    level("share of it that leaves by " + part.opening(), leaving - power, "areas and noise sections of passages and bays"),
                    level("from there to the listener", heard - leaving, SCENE)));
            found.ifPresent(exit -> model.listening().positions().stream().filter(each -> each.id().equals(place)).findFirst()
                    .ifPresent(listener -> way(exit, listener, terms)));
            step(PART, at, Figures.WAY, heard, terms);
            sum.add(level(NoiseTables.name(part), heard, PART + Trace.AT + at));
        }
        step(Figures.LEVEL.id(), place, Figures.SUM, position.level(), sum);
        step(Figures.LEVEL_C.id(), place, Figures.WEIGHTING_C, position.weightedC(), octaves(position.total()));
        NoiseModel.background(model.scene()).ifPresent(background -> step(Figures.LEVEL_TOTAL.id(), place, Figures.SUM,
                Levels.sum(position.level(), background), List.of(level("equipment", position.level(), Figures.LEVEL.id()),
                        level("background", background, SCENE))));
        rating(Figures.RATING_NR, Figures.RATING, place, position.noiseRating(), position.total(), NoiseRating.FIRST);
        rating(Figures.RATING_NC, Figures.CRITERION, place, position.noiseCriterion(), position.total(), NoiseCriterion.FIRST);
        NoiseAnalysis.loudest(state, position).ifPresent(tone -> tone(place, tone));
    }

    private Optional<Opening> opening(String passage) {
        return model.path().openings().stream().filter(each -> each.id().equals(passage)).findFirst();
    }

    /** How far it is, and what the room adds in the octave where it is heard most, for who wants to do it again. */
    private void way(Opening exit, Listening.Position listener, List<Trace.Term> terms) {
        double[] distances = model.listening().distances(exit, listener);
        for (int i = 0; i < distances.length; i++) {
            terms.add(new Trace.Term("distance r" + (distances.length > 1 ? " to the " + (i + 1) + ". of " + distances.length + " points, whose mean counts"
                    : ""), QuantityKind.LENGTH, distances[i], SCENE));
        }
        model.listening().room().ifPresent(room -> terms.add(new Trace.Term("room constant R at 1 kHz", QuantityKind.AREA,
                room.constant(Bands.third(1000)), SCENE)));
    }

    private void tone(String place, NoiseState.Heard tone) {
        Trace.Term frequency = new Trace.Term("frequency", QuantityKind.FREQUENCY, tone.frequency(), "tones of the noise sections");
        Trace.Term own = level("level of the tone L_t", tone.level(), "tones of the noise sections");
        step(Figures.TO_NOISE.id(), place, Figures.TONES, tone.toNoise(), List.of(frequency, own,
                level("level of the noise in the critical band L_n", tone.level() - tone.toNoise(), Figures.LEVEL.id())));
        step(Figures.PROMINENCE.id(), place, Figures.TONES, tone.prominence(), List.of(frequency, own));
        step(Figures.EXCESS.id(), place, Figures.ABOVE, tone.excess(), List.of(frequency,
                level("tone-to-noise ratio", tone.toNoise(), Figures.TO_NOISE.id()),
                level("its criterion TNR_c", ToneInNoise.toneToNoiseCriterion(tone.frequency()), "ECMA-418-1"),
                level("prominence ratio", tone.prominence(), Figures.PROMINENCE.id()),
                level("its criterion PR_c", ToneInNoise.prominenceRatioCriterion(tone.frequency()), "ECMA-418-1")));
    }

    private void rating(FigureKind kind, Relation relation, String place, Optional<Rating> rating, Spectrum spectrum, int first) {
        rating.ifPresent(value -> {
            List<Trace.Term> terms = new ArrayList<>();
            for (int octave = first; octave <= NoiseRating.LAST; octave++) {
                if (Double.isFinite(spectrum.octave(octave))) {
                    terms.add(level("octave of " + NoiseTables.hertz(octave) + (octave == value.octave() ? ", which decides" : ""),
                            spectrum.octave(octave), Figures.LEVEL.id()));
                }
            }
            step(kind.id(), place, relation, value.value(), terms);
        });
    }

    private static List<Trace.Term> octaves(Spectrum spectrum) {
        List<Trace.Term> terms = new ArrayList<>();
        for (int octave = 0; octave < Bands.OCTAVES; octave++) {
            if (Double.isFinite(spectrum.octave(octave))) {
                terms.add(level("octave of " + NoiseTables.hertz(octave), spectrum.octave(octave), Figures.LEVEL.id()));
            }
        }
        return terms;
    }

    private static Trace.Term level(String name, double level, String from) {
        return new Trace.Term(name, QuantityKind.LEVEL, level, from);
    }

    private void step(String figure, String place, Relation relation, double value, List<Trace.Term> terms) {
        trace.step(new Trace.Step(figure, place, relation, value, terms));
    }
}
