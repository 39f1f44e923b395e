package tramontane.acoustics.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tramontane.acoustics.Emission;
import tramontane.acoustics.MoverNoise;
import tramontane.acoustics.NoiseState;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Sentence;
import tramontane.analysis.Severity;
import tramontane.physics.sound.Levels;
import tramontane.physics.units.QuantityKind;

/** What an engineer should know of the noise of a condition. */
final class NoiseFindings {

    /** From this rise off the best point on it is worth a caution, dB. */
    private static final double RISE = 1;
    /** Beyond this ratio of speeds the sound law carries far. */
    private static final double FAR = 2;
    /** Tones closer than this beat rather than sound rough, Hz; common practice. */
    private static final double BEAT = 20;
    private static final double SLOWEST_BEAT = 0.2;
    private static final double AS_LOUD = 10;
    /** A tone this far below what makes it prominent is heard, but disturbs nobody, dB. */
    private static final double FAINT = -6;
    /** Lower exposure action value of Directive 2003/10/EC, a mean over 8 hours, dB. */
    private static final double HEARING = 80;

    private final NoiseModel model;
    private final NoiseState state;
    private final OperatingPoint point;
    private final List<Finding> findings = new ArrayList<>();

    private NoiseFindings(NoiseModel model, NoiseState state, OperatingPoint point) {
        this.model = model;
        this.state = state;
        this.point = point;
    }

    static List<Finding> of(NoiseModel model, NoiseState state, OperatingPoint point) {
        NoiseFindings all = new NoiseFindings(model, state, point);
        state.unknown().forEach(all::unknown);
        state.banks().stream().filter(bank -> !bank.movers().isEmpty()).forEach(all::bank);
        if (state.unknown().isEmpty() && !state.banks().isEmpty()) {
            all.findings.addAll(model.path().findings());
            all.findings.addAll(model.listening().findings());
            all.findings.addAll(model.listening().findings(model.path().openings()));
        }
        state.positions().forEach(all::position);
        return List.copyOf(all.findings);
    }

    private void unknown(String bank) {
        NoiseModel.Source source = model.source(bank);
        boolean said = source.stated().isPresent();
        findings.add(Finding.of(Severity.NOT_JUDGED, bank, said ? "the noise section of " + source.part().id() + " has no level that belongs to a speed"
                : "nothing is stated of the noise of " + source.part().id(), ", so that no level can be computed anywhere")
                .remedy(said ? "state soundPower, soundPressure or band levels, and the speed" : "give the part a section noise: a sound power level, band"
                        + " levels, or a recording"));
    }

    private void bank(NoiseState.BankNoise bank) {
        NoiseModel.Source source = model.source(bank.bank());
        String part = source.part().id();
        Emission worst = bank.movers().stream().max(Comparator.comparingDouble(each -> each.terms().flow())).orElseThrow();
        if (assumed(bank, Emission.Assumed.FREE_DELIVERY)) {
            freeDelivery(bank, source);
        }
        if (assumed(bank, Emission.Assumed.EFFICIENCY) && worst.terms().flow() >= RISE) {
            findings.add(Finding.caution(bank.bank(), "works left of its best point, where movers are louder: by some ",
                    new Amount(worst.terms().flow(), QuantityKind.LEVEL), " as its efficiency falls")
                    .remedy("lower the resistance, or choose a mover whose best point is here").source("ASHRAE Handbook, HVAC Applications, from memory"));
        }
        if (assumed(bank, Emission.Assumed.FLOW)) {
            findings.add(Finding.caution(bank.bank(), "works beyond the flows at which the noise of " + part + " was measured; the level of the nearest is"
                    + " carried on").remedy("measure noise at this flow, or look at the bounds"));
        }
        if (assumed(bank, Emission.Assumed.FREE_FIELD)) {
            findings.add(Finding.note(bank.bank(), "the field in which the sound pressure of " + part + " was measured is not stated; a free field is"
                    + " assumed, a half-space would give 3 dB less power").remedy("state the field").source("ISO 3744, ISO 3745"));
        }
        if (assumed(bank, Emission.Assumed.SPECTRUM)) {
            findings.add(Finding.note(bank.bank(), "no band levels of " + part + " are stated; the spectrum of its type of fan is assumed, so that octaves,"
                    + " NR, NC and C-weighted levels are estimates to some ", new Amount(SoundSource.SHAPE, QuantityKind.LEVEL))
                    .remedy("state octave or third-octave levels").source("VDI 2081-1:2019, as quoted second-hand; constants from memory"));
        }
        speed(bank, source);
        if (assumed(bank, Emission.Assumed.OBSTACLE)) {
            findings.add(Finding.caution(bank.bank(), "an obstacle stands near its rotor, ", nearest(source.obstacles()), " away; some ",
                    new Amount(worst.terms().obstacle(), QuantityKind.LEVEL), " are added for it, twice that on tones")
                    .remedy("leave one rotor diameter free").source("common practice"));
        }
        tones(bank, source);
    }

    private void freeDelivery(NoiseState.BankNoise bank, NoiseModel.Source source) {
        Optional<Double> share = Characteristic.of(source.part(), bank.speed()).flatMap(curve -> point.bank(bank.bank()).map(works ->
                works.movers().stream().filter(OperatingPoint.MoverPoint::running).mapToDouble(OperatingPoint.MoverPoint::flow).average().orElse(0)
                        / (bank.speed() * curve.free())));
        Object[] where = share.map(free -> new Object[] {"but it works at ", new Amount(Math.max(0, free), QuantityKind.FRACTION), " of its free flow"})
                .orElse(new Object[] {"but it works elsewhere"});
        findings.add(Finding.caution(bank.bank(), "the noise of " + source.part().id() + " holds for free delivery, ",
                Sentence.of(where), "; installed it is commonly several dB louder, and the upper bound counts ",
                new Amount(SoundSource.INSTALLED, QuantityKind.LEVEL)).remedy("have it measured in a test plenum at this flow (ISO 10302-1)")
                .source("common practice"));
    }

    private void speed(NoiseState.BankNoise bank, NoiseModel.Source source) {
        if (!assumed(bank, Emission.Assumed.SPEED)) {
            return;
        }
        double nearest = source.stated().stream().flatMap(noise -> noise.measurements().stream()).flatMap(each -> each.speed()
                .or(source.part()::ratedSpeedSi).stream()).min(Comparator.comparingDouble(speed -> Math.abs(Math.log(speed / bank.speed()))))
                .orElse(bank.speed());
        double ratio = Math.max(nearest / bank.speed(), bank.speed() / nearest);
        if (ratio > FAR) {
            findings.add(Finding.caution(bank.bank(), "its noise is carried from ", new Amount(nearest, QuantityKind.ROTATIONAL_SPEED), " to ",
                    new Amount(bank.speed(), QuantityKind.ROTATIONAL_SPEED), " by the sound law; so far off, bearing and motor are heard as well")
                    .remedy("have it measured near this speed").source("common practice"));
        }
    }

    private static Object nearest(SoundSource.Obstacles obstacles) {
        return new Amount(Math.min(obstacles.inlet(), obstacles.outlet()), QuantityKind.LENGTH);
    }

    private static boolean assumed(NoiseState.BankNoise bank, Emission.Assumed what) {
        return bank.movers().stream().anyMatch(each -> each.assumed().contains(what));
    }

    private void tones(NoiseState.BankNoise bank, NoiseModel.Source source) {
        if (source.sound().orElseThrow().tonesUnknown()) {
            findings.add(Finding.note(bank.bank(), "nothing is stated of the tones of " + source.part().id() + "; whether its blades are heard is not judged")
                    .remedy("state tones in its noise section, or take them from a recording"));
        }
    }

    private void position(NoiseState.PositionNoise position) {
        if (position.level() >= HEARING) {
            findings.add(Finding.caution(position.position(), "the level of ", new Amount(position.level(), QuantityKind.LEVEL), " is one at which hearing"
                    + " has to be protected where people stay for long; local rules come first").remedy("make it quieter, or keep people away")
                    .source("Directive 2003/10/EC, article 3, lower action value of 80 dB(A) over 8 hours"));
        }
        for (NoiseState.Heard tone : position.tones()) {
            if (!Double.isFinite(tone.excess())) {
                findings.add(Finding.caution(position.position(), "the tone at ", new Amount(tone.frequency(), QuantityKind.FREQUENCY), " ("
                        + NoiseTables.from(state, tone.frequency()) + ") stands alone: of noise around it nothing is known, and no tone is rated here")
                        .remedy("state levels of the bands around its frequency").source("ECMA-418-1"));
            } else if (tone.prominent()) {
                findings.add(Finding.caution(position.position(), "the tone at ", new Amount(tone.frequency(), QuantityKind.FREQUENCY), " ("
                        + NoiseTables.from(state, tone.frequency()) + ") is prominent, ", new Amount(tone.excess(), QuantityKind.LEVEL), " above the criterion")
                        .remedy("another number of blades or speed, more room at the inlet, or a lining").source("ECMA-418-1"));
            }
        }
        beats(position);
    }

    /** Tones of movers that run at nearly one speed, heard nearly alike; two such count as one tone in the noise. */
    private void beats(NoiseState.PositionNoise position) {
        List<Emission.Tone> tones = NoiseModel.tones(position.parts());
        for (int i = 0; i < tones.size(); i++) {
            Emission.Tone low = tones.get(i);
            for (Emission.Tone high : tones.subList(i + 1, tones.size())) {
                double apart = high.frequency() - low.frequency();
                if (apart >= SLOWEST_BEAT && apart <= BEAT && Math.abs(Levels.of(high.power() / low.power())) <= AS_LOUD && heard(position, low, high)) {
                    findings.add(Finding.caution(position.position(), "the tones at ", new Amount(low.frequency(), QuantityKind.FREQUENCY), " ("
                            + NoiseTables.from(state, low.frequency()) + ") and ", new Amount(high.frequency(), QuantityKind.FREQUENCY), " ("
                            + NoiseTables.from(state, high.frequency()) + ") beat ", new Amount(apart, QuantityKind.FREQUENCY), " apart")
                            .remedy("run these movers at one speed, or well apart").source("common practice"));
                }
            }
        }
        for (NoiseState.BankNoise bank : state.banks()) {
            boolean audible = bank.tones().stream().anyMatch(own -> own.order() > 0 && heard(position, own, own));
            if (bank.movers().size() > 1 && audible) {
                findings.add(Finding.note(bank.bank(), "its movers run at one speed here; in truth they run a few per cent apart, and their tones may beat at "
                        + position.position()).remedy("control them to one speed").source("common practice"));
            }
        }
    }

    /** Whether what two tones together are counted as is loud enough to be noticed. */
    private static boolean heard(NoiseState.PositionNoise position, Emission.Tone low, Emission.Tone high) {
        return position.tones().stream().filter(tone -> tone.frequency() >= low.frequency() - 1 && tone.frequency() <= high.frequency() + 1)
                .anyMatch(tone -> tone.excess() > FAINT);
    }
}
