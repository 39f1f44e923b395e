package tramontane.acoustics.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import tramontane.acoustics.Emission;
import tramontane.acoustics.NoiseState;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Sentence;
import tramontane.analysis.Severity;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.ToneInNoise;
import tramontane.physics.units.QuantityKind;

/** What an engineer should know of the noise of a condition. */
final class NoiseFindings {

    /** From this rise off the best point on it is worth a caution, dB. */
    private static final double RISE = 1;
    /** From this ratio of speeds on it is said that the sound law carries. */
    private static final double NEAR = 1.1;
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

    private static final int MOST_NAMED = 6;

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
        Map<String, List<NoiseState.BankNoise>> byPart = new LinkedHashMap<>();
        state.banks().stream().filter(bank -> !bank.movers().isEmpty()).forEach(bank -> {
            all.bank(bank);
            byPart.computeIfAbsent(model.source(bank.bank()).part().id(), id -> new ArrayList<>()).add(bank);
        });
        byPart.values().forEach(all::part);
        if (state.silent()) {
            all.findings.add(Finding.note("", "no mover runs, so that nothing is heard of them; levels of 0 dB stand for silence"));
        } else if (state.unknown().isEmpty() && !state.banks().isEmpty()) {
            all.findings.addAll(model.path().findings());
            all.findings.addAll(model.listening().findings());
            all.findings.addAll(model.listening().findings(model.path().openings()));
        }
        all.positions();
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

    /** What comes of where a bank works. */
    private void bank(NoiseState.BankNoise bank) {
        NoiseModel.Source source = model.source(bank.bank());
        String part = source.part().id();
        Emission worst = bank.movers().stream().max(Comparator.comparingDouble(each -> each.terms().flow())).orElseThrow();
        if (assumed(bank, Emission.Assumed.EFFICIENCY) && worst.terms().flow() >= RISE) {
            findings.add(Finding.caution(bank.bank(), "bank ", bank.bank(), " works left of its best point, where movers are louder: by some ",
                    new Amount(worst.terms().flow(), QuantityKind.LEVEL), " as its efficiency falls")
                    .remedy("lower the resistance, or choose a mover whose best point is here").source("ASHRAE Handbook, HVAC Applications, from memory"));
        }
        if (assumed(bank, Emission.Assumed.FLOW)) {
            findings.add(Finding.caution(bank.bank(), "bank " + bank.bank() + " works beyond the flows at which the noise of " + part + " was measured; the level of the nearest is"
                    + " carried on").remedy("measure noise at this flow, or look at the bounds"));
        }
        speed(bank, source);
        if (assumed(bank, Emission.Assumed.OBSTACLE)) {
            double nearest = Math.min(source.obstacles().inlet(), source.obstacles().outlet());
            findings.add(Finding.caution(bank.bank(), "an obstacle stands ", nearest > 0 ? "near the rotor of bank " + bank.bank() + ", " : "", nearest > 0
                    ? new Amount(nearest, QuantityKind.LENGTH) : "at the rotor of bank " + bank.bank(), nearest > 0 ? " away; some " : "; some ",
                    new Amount(worst.terms().obstacle(), QuantityKind.LEVEL), " are added for it, twice that on tones")
                    .remedy("leave one rotor diameter free").source("common practice"));
        }
    }

    /** What comes of the data of a part, told once for all its banks. */
    private void part(List<NoiseState.BankNoise> banks) {
        NoiseModel.Source source = model.source(banks.getFirst().bank());
        String part = source.part().id();
        String place = banks.size() == 1 ? banks.getFirst().bank() : "";
        if (assumed(banks, Emission.Assumed.FREE_DELIVERY)) {
            freeDelivery(banks, place);
        }
        if (assumed(banks, Emission.Assumed.FREE_FIELD)) {
            findings.add(Finding.note(place, "the field in which the sound pressure of " + part + " was measured is not stated; a free field is"
                    + " assumed, a half-space would give 3 dB less power").remedy("state the field").source("ISO 3744, ISO 3745"));
        }
        if (assumed(banks, Emission.Assumed.SPECTRUM)) {
            findings.add(Finding.note(place, "no band levels of " + part + " are stated; the spectrum of its type of fan is assumed, so that octaves,"
                    + " NR, NC and C-weighted levels are estimates to some ", new Amount(SoundSource.SHAPE, QuantityKind.LEVEL))
                    .remedy("state octave or third-octave levels").source("VDI 2081-1:2019, as quoted second-hand; constants from memory"));
        }
        if (assumed(banks, Emission.Assumed.SIZE)) {
            findings.add(Finding.caution(place, "the noise of " + part + " was measured on a rotor whose diameter is stated, but that of the part is not; the"
                    + " size does not count").remedy("state the rotorDiameter of the part"));
        }
        if (assumed(banks, Emission.Assumed.OBSTACLE_SIZE)) {
            findings.add(Finding.caution(place, "what stands near the rotor of " + part + " does not count, since neither its rotor nor its frame is stated")
                    .remedy("state the rotorDiameter, or width and height, of the part"));
        }
        if (banks.stream().anyMatch(bank -> !bank.tonal())) {
            boolean none = banks.stream().allMatch(bank -> bank.tones().isEmpty());
            findings.add(Finding.note(place, (none ? "nothing is stated of the tones of " : "the tone of the blades is not among those stated of ") + part
                    + "; whether its blades are heard is not judged")
                    .remedy("state tones in its noise section (an empty list for none), or take them from a recording"));
        }
    }

    private void freeDelivery(List<NoiseState.BankNoise> banks, String place) {
        NoiseModel.Source source = model.source(banks.getFirst().bank());
        double least = Double.POSITIVE_INFINITY;
        for (NoiseState.BankNoise bank : banks) {
            double free = Characteristic.of(source.part(), bank.speed()).map(curve -> bank.speed() * curve.free()).orElse(Double.NaN);
            double flow = point.bank(bank.bank()).stream().flatMap(each -> each.movers().stream()).filter(OperatingPoint.MoverPoint::running)
                    .mapToDouble(OperatingPoint.MoverPoint::flow).average().orElse(Double.NaN);
            least = Double.isNaN(flow / free) ? least : Math.min(least, Math.max(0, flow / free));
        }
        findings.add(Finding.caution(place, "the noise of " + source.part().id() + " holds for free delivery, but it works ",
                least < Double.POSITIVE_INFINITY ? "at " : "elsewhere", least < Double.POSITIVE_INFINITY ? new Amount(least, QuantityKind.FRACTION) : "",
                least < Double.POSITIVE_INFINITY ? " of its free flow" : "", "; installed it is commonly several dB louder, and the upper bound counts up to ",
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
        if (ratio > NEAR) {
            boolean far = ratio > FAR;
            findings.add(Finding.of(far ? Severity.CAUTION : Severity.NOTE, bank.bank(), "the noise of bank ", bank.bank(), " is carried from ",
                    new Amount(nearest, QuantityKind.ROTATIONAL_SPEED), " to ", new Amount(bank.speed(), QuantityKind.ROTATIONAL_SPEED),
                    " by the sound law", far ? "; so far off, bearing and motor are heard as well" : "")
                    .remedy("have it measured near this speed").source("common practice"));
        }
    }

    private static boolean assumed(List<NoiseState.BankNoise> banks, Emission.Assumed what) {
        return banks.stream().anyMatch(bank -> assumed(bank, what));
    }

    private static boolean assumed(NoiseState.BankNoise bank, Emission.Assumed what) {
        return bank.movers().stream().anyMatch(each -> each.assumed().contains(what));
    }

    /** What is heard, each thing once with the positions where it is. */
    private void positions() {
        Map<String, List<String>> alone = new LinkedHashMap<>();
        Map<String, List<NoiseState.Heard>> prominent = new LinkedHashMap<>();
        Map<String, List<String>> where = new LinkedHashMap<>();
        List<String> beyond = new ArrayList<>();
        for (NoiseState.PositionNoise position : state.positions()) {
            if (position.level() >= HEARING) {
                findings.add(Finding.caution(position.position(), "the level of ", new Amount(position.level(), QuantityKind.LEVEL), " is one at which"
                        + " hearing has to be protected where people stay for long; local rules come first").remedy("make it quieter, or keep people away")
                        .source("Directive 2003/10/EC, article 3, lower action value of 80 dB(A) over 8 hours"));
            }
            if (Stream.of(position.noiseRating(), position.noiseCriterion()).flatMap(Optional::stream).anyMatch(rating -> !rating.tabulated())) {
                beyond.add(position.position());
            }
            for (NoiseState.Heard tone : position.tones()) {
                String whose = NoiseTables.from(state, tone.frequency());
                if (!Double.isFinite(tone.excess())) {
                    alone.computeIfAbsent(tone.frequency() + whose, key -> new ArrayList<>()).add(position.position());
                    prominent.computeIfAbsent(tone.frequency() + whose, key -> new ArrayList<>()).add(tone);
                } else if (tone.prominent()) {
                    where.computeIfAbsent(tone.frequency() + whose, key -> new ArrayList<>()).add(position.position());
                    prominent.computeIfAbsent(tone.frequency() + whose, key -> new ArrayList<>()).add(tone);
                }
            }
        }
        alone.forEach((key, places) -> findings.add(Finding.caution(place(places), tone(prominent.get(key).getFirst().frequency()),
                " stands alone", at(places), ": of noise around it nothing is known, and no tone is rated there")
                .remedy("state levels of the bands around its frequency").source("ECMA-418-1")));
        where.forEach((key, places) -> findings.add(Finding.caution(place(places), tone(prominent.get(key).getFirst().frequency()), " is prominent",
                at(places), ", ", places.size() > 1 ? "up to " : "", new Amount(prominent.get(key).stream().mapToDouble(NoiseState.Heard::excess).max()
                        .orElseThrow(), QuantityKind.LEVEL), " above the criterion")
                .remedy("another number of blades or speed, more room at the inlet, or a lining").source("ECMA-418-1")));
        if (!beyond.isEmpty()) {
            findings.add(Finding.note(place(beyond), "NR or NC", at(beyond), " lies beyond the curves that are laid down (NR 0 to 130, NC 15 to 70) and is"
                    + " continued straight").source("ISO/R 1996; Beranek 1957"));
        }
        beats();
    }

    private Sentence tone(double frequency) {
        return Sentence.of("the tone at ", new Amount(frequency, QuantityKind.FREQUENCY), " (" + NoiseTables.from(state, frequency) + ")");
    }

    private static String place(List<String> places) {
        return places.size() == 1 ? places.getFirst() : "";
    }

    /** Where it is heard, if not at one place that the finding names itself. */
    private static String at(List<String> places) {
        int shown = Math.min(places.size(), MOST_NAMED);
        return places.size() == 1 ? "" : " at " + String.join(", ", places.subList(0, shown))
                + (places.size() > shown ? " and " + (places.size() - shown) + " more" : "");
    }

    /** Tones of movers that run at nearly one speed, heard nearly alike; two such count as one tone in the noise. */
    private void beats() {
        Map<String, List<String>> pairs = new LinkedHashMap<>();
        Map<String, double[]> frequencies = new LinkedHashMap<>();
        Map<String, List<String>> within = new LinkedHashMap<>();
        for (NoiseState.PositionNoise position : state.positions()) {
            List<Emission.Tone> tones = NoiseModel.tones(position.parts());
            for (int i = 0; i < tones.size(); i++) {
                Emission.Tone low = tones.get(i);
                for (int j = i + 1; j < tones.size() && tones.get(j).frequency() - low.frequency() <= BEAT; j++) {
                    Emission.Tone high = tones.get(j);
                    if (high.frequency() - low.frequency() >= SLOWEST_BEAT && Math.abs(Levels.of(high.power() / low.power())) <= AS_LOUD
                            && heard(position, low) && heard(position, high)) {
                        String key = low.frequency() + " " + high.frequency();
                        pairs.computeIfAbsent(key, pair -> new ArrayList<>()).add(position.position());
                        frequencies.putIfAbsent(key, new double[] {low.frequency(), high.frequency()});
                    }
                }
            }
            for (NoiseState.BankNoise bank : state.banks()) {
                if (bank.movers().size() > 1 && bank.tones().stream().anyMatch(own -> own.order() > 0 && tones.stream()
                        .anyMatch(tone -> Math.abs(tone.frequency() - own.frequency()) < 0.02 && heard(position, tone)))) {
                    within.computeIfAbsent(bank.bank(), id -> new ArrayList<>()).add(position.position());
                }
            }
        }
        pairs.forEach((key, places) -> {
            double low = frequencies.get(key)[0];
            double high = frequencies.get(key)[1];
            findings.add(Finding.caution(place(places), "the tones at ", new Amount(low, QuantityKind.FREQUENCY), " (" + NoiseTables.from(state, low) + ") and ",
                    new Amount(high, QuantityKind.FREQUENCY), " (" + NoiseTables.from(state, high) + ") beat", at(places), ", ",
                    new Amount(high - low, QuantityKind.FREQUENCY), " apart").remedy("run these movers at one speed, or well apart").source("common practice"));
        });
        within.forEach((bank, places) -> findings.add(Finding.note(bank, "the movers of bank " + bank + " run at one speed here; in truth they run a few per cent apart, and their"
                + " tones may beat at " + String.join(", ", places)).remedy("control them to one speed").source("common practice")));
    }

    /** Whether what a tone counts as, alone or with others near it, is loud enough to be noticed, and it is a good part of that. */
    private static boolean heard(NoiseState.PositionNoise position, Emission.Tone tone) {
        return position.tones().stream().anyMatch(counted -> counted.excess() > FAINT
                && Math.abs(counted.frequency() - tone.frequency()) <= ToneInNoise.mergeDistance(counted.frequency())
                && Levels.of(tone.power()) > counted.level() - AS_LOUD);
    }
}
