package tramontane.thermal.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Sections;
import tramontane.analysis.Severity;
import tramontane.model.ControlLaw;
import tramontane.model.Link;
import tramontane.physics.Air;
import tramontane.physics.units.QuantityKind;
import tramontane.thermal.Loop;
import tramontane.thermal.PartState;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalState;

/** What an engineer should know about temperatures beyond their figures. */
public final class ThermalFindings {

    /** Temperature above which a number tells no temperature any more, K: 1000 °C, where all that equipment is made of has failed. */
    public static final double ABSURD = 1273.15;
    /** Temperature above which more is amiss than that a touch would burn, K. */
    private static final double MELTS = 773.15;
    /** Kinds of links that take all air of their place where they say nothing else. */
    private static final Set<String> WHOLE_SINKS = Set.of("plate fins", "pin fins", "measured sink");
    /** Temperature of a surface from which a touch may burn, K; for bare metal touched for some seconds, from memory of ISO 13732-1. */
    private static final double BURNS = 273.15 + 60;
    /** Gain over the best one below which a change is not worth a word. */
    private static final double SLIGHT = 0.05;
    /** Tolerances that are named, the ones that count most. */
    private static final int MOST_NAMED = 3;
    /** Difference of temperatures that is not worth a word, K. */
    private static final double LITTLE = 0.05;
    /** Rise between what the first estimate leaves out and the whole from which it is worth a word. */
    private static final double WORTH = 1.02;

    private final ThermalAnalysis.Reading reading;
    private final List<Finding> findings = new ArrayList<>();

    private ThermalFindings(ThermalAnalysis.Reading reading) {
        this.reading = reading;
    }

    static List<Finding> of(ThermalAnalysis.Reading reading) {
        ThermalFindings all = new ThermalFindings(reading);
        if (!reading.state.balance().unbounded().isEmpty()) {
            all.findings.add(unbounded(reading.state.balance().unbounded()));
        }
        all.faults();
        all.sinks();
        all.rows();
        all.sun();
        all.limits();
        all.hottest();
        all.needed();
        all.dew();
        all.touch();
        all.absurd();
        all.links();
        all.movers();
        all.controls();
        all.bounds();
        return List.copyOf(all.findings);
    }

    private static Amount kelvin(double difference) {
        return new Amount(difference, QuantityKind.TEMPERATURE_DIFFERENCE);
    }

    private static Amount celsius(double temperature) {
        return new Amount(temperature, QuantityKind.TEMPERATURE);
    }

    /** Bays whose temperature has no bound. */
    public static Finding unbounded(List<String> bays) {
        boolean one = bays.size() == 1;
        return Finding.of(Severity.NOT_MET, bays.getFirst(), (one ? "bay " : "bays ") + names(bays) + (one ? " gets" : " get")
                + " heat that neither air nor walls carry off: the air there would be more than ", kelvin(Balancing.HIGHEST), " warmer than outside")
                .remedy("give " + (one ? "it" : "each of them") + " a way in and a way out, or walls in its enclosure");
    }

    /** Sources that stand nowhere. */
    public static Finding nowhere(List<String> sources) {
        return Finding.of(Severity.NOT_JUDGED, sources.getFirst(), (sources.size() == 1 ? "heat source " : "heat sources ") + names(sources)
                + (sources.size() == 1 ? " goes" : " go") + " nowhere; without a place for all heat no temperature can be told")
                .remedy("say into which bays or passages the heat goes");
    }

    /** A loop that does not come to rest. */
    public static Finding hunting(ThermalModel model, Loop loop) {
        List<Object> words = new ArrayList<>();
        Optional<ControlLaw> law = loop.law().flatMap(id -> model.design().controlLaws().stream().filter(each -> each.id().equals(id)).findFirst());
        boolean several = loop.cycle().size() > 1;
        words.add(law.isPresent() ? "control law " + law.get().id() + (several ? " hunts: it goes to and fro between " : " never comes to rest; last it was at ")
                : "flow and temperature never come to rest" + (several ? ": they go to and fro between " : "; last they were at "));
        for (int i = 0; i < loop.cycle().size(); i++) {
            words.add(i == 0 ? "" : i == loop.cycle().size() - 1 ? ", and " : ", ");
            words.addAll(state(model, law, loop.cycle().get(i)));
        }
        return Finding.of(Severity.NOT_JUDGED, "", words.toArray()).remedy(law.isEmpty()
                ? "where heat goes into air that hardly moves, or rises against what the movers drive, give that air a way; where the curve of a bank"
                        + " has a dip, move its duty point away from there"
                : "draw the rise of the law over more kelvin, or take a hysteresis wider than what a switch changes at the sensor");
    }

    /** One of the states that it goes to and fro between. */
    private static List<Object> state(ThermalModel model, Optional<ControlLaw> law, ThermalState state) {
        List<Object> words = new ArrayList<>();
        law.ifPresent(control -> {
            model.controls().laws().stream().filter(each -> each.law().id().equals(control.id())).flatMap(each -> each.banks().stream()).findFirst()
                    .map(state.drive().settings()::get)
                    .ifPresent(setting -> words.addAll(List.of(new Amount(setting, QuantityKind.FRACTION), " speed with ")));
            Controls.sensor(control, state, model).ifPresent(sensor -> words.addAll(List.of(control.sensor() + " at ", celsius(sensor), " and ")));
        });
        for (int i = 0; i < state.point().banks().size(); i++) {
            OperatingPoint.BankPoint bank = state.point().banks().get(i);
            words.addAll(List.of(i == 0 ? "" : ", ", flow(bank.flow()), " through " + bank.bank()));
        }
        Backwards.worst(model, state).ifPresent(part -> words.addAll(List.of(" (" + part.source() + " ", celsius(part.junction().orElseThrow()), ")")));
        return words;
    }

    private void faults() {
        for (PartState part : reading.state.parts()) {
            part.fault().ifPresent(fault -> findings.add(Finding.of(Severity.NOT_JUDGED, part.source(), "the temperature of "
                    + part.source() + " cannot be told: " + fault)));
        }
        List<String> bare = reading.state.parts().stream().filter(part -> part.fault().isEmpty() && part.links().isEmpty()
                && reading.limits().containsKey(part.source())).map(PartState::source).toList();
        if (!bare.isEmpty()) {
            findings.add(Finding.note(bare.getFirst(), names(bare) + (bare.size() == 1 ? " has no chain: its limit is" : " have no chain: their limits are")
                    + " judged by the air at " + (bare.size() == 1 ? "it" : "them")).remedy("give the thermal resistances from junction to air"));
        }
    }

    /** Parts that each have the whole of one sink. */
    private void sinks() {
        Map<String, List<String>> onPlace = new LinkedHashMap<>();
        for (Parts.Part part : reading.model.parts().list()) {
            if (!part.chain().isEmpty() && part.heat() > 0) {
                Link last = part.chain().getLast().link();
                if (WHOLE_SINKS.contains(last.kind()) && part.places().getFirst() >= reading.model.parts().bays()
                        && last.parameters().get("flowShare").isEmpty()) {
                    onPlace.computeIfAbsent(part.source().into().getFirst().place(), place -> new ArrayList<>()).add(part.source().id());
                }
            }
        }
        onPlace.forEach((place, sources) -> {
            if (sources.size() > 1) {
                findings.add(Finding.caution(place, names(sources) + " each count with a heat sink and all air of " + place
                        + "; if it is one sink they share, each is taken too cold, since none feels what the others put into it")
                        .remedy("take them as one source, or give each its flowShare of the air"));
            }
        });
    }

    /** Rows that air meets from behind. */
    private void rows() {
        Set<String> turned = new LinkedHashSet<>();
        for (Parts.Part part : reading.model.parts().list()) {
            String place = part.source().into().getFirst().place();
            if (part.source().row().isPresent() && reading.state.point().passage(place).filter(flow -> flow.massFlow() < 0).isPresent()) {
                turned.add(place);
            }
        }
        turned.forEach(place -> findings.add(Finding.caution(place, "air goes through " + place + " against its direction, while rows count along"
                + " it: the first rows are taken too cold").remedy("turn the passage round, or leave out the rows")));
    }

    /** Sunshine on nothing. */
    private void sun() {
        double sun = Sections.decode(new SunSection(), reading.model.condition()).map(section -> section.irradiance().si()).orElse(0.0);
        boolean lit = reading.model.balancing().enclosures().stream().flatMap(enclosure -> enclosure.walls().stream())
                .anyMatch(wall -> wall.sunlit() > 0);
        if (sun > 0 && !lit) {
            findings.add(Finding.caution("", "the sun of this condition falls on no wall").remedy("say with sunlit at walls what part of it falls on each"));
        }
    }

    private static String names(List<String> ids) {
        return ids.size() == 1 ? ids.getFirst() : String.join(", ", ids.subList(0, ids.size() - 1)) + " and " + ids.getLast();
    }

    private void limits() {
        double outside = reading.model.condition().temperature();
        reading.limits().forEach((source, limit) -> {
            if (limit < outside) {
                findings.add(Finding.caution(source, "the limit of " + source + ", ", celsius(limit), ", lies below the air outside, ",
                        celsius(outside), ": air alone cannot cool below outside")
                        .remedy("cool it by other means, or keep the equipment from such air"));
            }
        });
    }

    private void hottest() {
        reading.improvements.ifPresent(found -> {
            PartState part = found.part();
            Optional<Double> margin = Optional.ofNullable(reading.limits().get(part.source()))
                    .map(limit -> limit - part.junction().orElseThrow());
            List<Object> words = new ArrayList<>(List.of((margin.isEmpty() ? "the hottest part is " : margin.get() < 0 ? "farthest above its limit is "
                    : "nearest to its limit is ") + part.source()));
            margin.ifPresent(kelvin -> words.addAll(List.of(", ", kelvin(Math.abs(kelvin)), kelvin < 0 ? " above it," : " below it,")));
            words.addAll(List.of(" with ", celsius(part.junction().orElseThrow())));
            List<Object> remedy = new ArrayList<>();
            double best = found.gains().stream().mapToDouble(Improvements.Gain::kelvin).max().orElse(0);
            List<Improvements.Gain> gains = found.gains().stream().filter(gain -> gain.kelvin() > 0 && gain.kelvin() >= SLIGHT * best).toList();
            for (int i = 0; i < gains.size(); i++) {
                remedy.addAll(List.of(i == 0 ? "what would cool it most: " : "; ", gains.get(i).change() + ", by ", kelvin(gains.get(i).kelvin())));
            }
            findings.add(Finding.note(part.source(), words.toArray()).remedy(remedy.toArray()));
        });
    }

    private void needed() {
        if (reading.backwards.isEmpty()) {
            return;
        }
        Backwards.Found found = reading.backwards.get();
        boolean runs = reading.state.point().banks().stream().anyMatch(bank -> bank.speed() > 0);
        switch (found.end()) {
            case TOO_HOT -> findings.add((runs ? Finding.caution("", "no speed of the movers would do: even at ",
                    new Amount(Backwards.FASTEST, QuantityKind.NUMBER), " times theirs a part is above its limit")
                    : Finding.caution("", "no flow would do: however much air goes along these ways a part is above its limit"))
                    .remedy("lower the resistance of its chain, or the heat"));
            case ALWAYS_MET -> findings.add(runs ? Finding.note("", "every part would stay below its limit even with movers at ",
                    new Amount(Backwards.SLOWEST, QuantityKind.FRACTION), " of their speed")
                    : Finding.note("", "every part would stay below its limit even with next to no air"));
            default -> {
                // an answer, or nothing that could be found
            }
        }
        found.answer().filter(answer -> answer.estimate() > 0 && answer.flow() > WORTH * answer.estimate()).ifPresent(this::estimated);
    }

    /** What the first estimate of the flow leaves out. */
    private void estimated(Backwards answer) {
        double outside = reading.model.condition().temperature();
        PartState worst = answer.worst();
        double sources = answer.state().balance().sources();
        double movers = answer.state().balance().movers();
        double mean = sources / (answer.flow() * reading.model.path().outside().density() * reading.model.path().outside().specificHeat());
        double chain = worst.junction().orElseThrow() - worst.air();
        List<Object> words = new ArrayList<>(List.of("the limits need ", flow(answer.flow()), answer.speeds().isEmpty() ? ", " : ", which ",
                new Amount(answer.factor(), QuantityKind.FRACTION), answer.speeds().isEmpty() ? " of what there is without movers" : " of the present speed gives",
                "; a first estimate by the heat of the sources and the ", kelvin(worst.junction().orElseThrow() - outside),
                " from outside to the limit of " + worst.source() + " is ", flow(answer.estimate())));
        List<List<Object>> left = new ArrayList<>();
        if (chain > LITTLE) {
            left.add(List.of("the ", kelvin(chain), " from the air to its junction"));
        }
        if (worst.air() - outside - mean > LITTLE) {
            left.add(List.of("that the air at it is ", kelvin(worst.air() - outside - mean), " warmer than what leaves on average"));
        }
        if (movers > (WORTH - 1) * sources) {
            left.add(List.of("the ", new Amount(movers, QuantityKind.POWER), " of the movers"));
        }
        for (int i = 0; i < left.size(); i++) {
            words.add(i == 0 ? ": it leaves out " : i == left.size() - 1 ? " and " : ", ");
            words.addAll(left.get(i));
        }
        findings.add(Finding.note("", words.toArray()));
    }

    private static Amount flow(double flow) {
        return new Amount(flow, QuantityKind.FLOW);
    }

    /** Surfaces on which water would settle. */
    private void dew() {
        OptionalDouble dew = Air.dewPoint(reading.model.condition().temperature(), reading.model.condition().relativeHumidity());
        if (dew.isEmpty()) {
            return;
        }
        for (ThermalState.WallState wall : reading.state.walls()) {
            if (wall.inner() <= dew.getAsDouble()) {
                wet("the inner face of a wall of bay " + wall.bay(), wall.bay(), wall.inner(), dew.getAsDouble());
            } else if (wall.outer() <= dew.getAsDouble()) {
                wet("the outer face of a wall of bay " + wall.bay(), wall.bay(), wall.outer(), dew.getAsDouble());
            }
        }
        for (PartState part : reading.state.parts()) {
            if (part.fault().isEmpty() && part.surface() <= dew.getAsDouble()) {
                wet("the surface of " + part.source(), part.source(), part.surface(), dew.getAsDouble());
            }
        }
    }

    private void wet(String what, String place, double temperature, double dew) {
        findings.add(Finding.caution(place, what + ", ", celsius(temperature), ", is no warmer than the dew point of the air, ", celsius(dew),
                ": water settles on it").remedy("keep it warm, or the air dry"));
    }

    /** Surfaces that burn. */
    private void touch() {
        reading.state.parts().stream().filter(part -> part.fault().isEmpty() && part.surface() > BURNS
                && part.surface() < MELTS && !part.links().isEmpty())
                .max(Comparator.comparingDouble(PartState::surface)).ifPresent(part -> findings.add(Finding.note(part.source(),
                        "the surface of " + part.source() + " comes to ", celsius(part.surface()), ": touching it may burn")
                        .remedy("guard or mark it where hands reach; the safety standard of the equipment decides")
                        .source("common practice after ISO 13732-1; the threshold is from memory")));
    }

    /** Numbers that are no temperatures any more. */
    private void absurd() {
        List<PartState> hot = reading.state.parts().stream().filter(part -> part.junction().orElse(0) > ABSURD)
                .sorted(Comparator.comparingDouble((PartState part) -> part.junction().orElseThrow()).reversed()).toList();
        if (!hot.isEmpty()) {
            PartState worst = hot.getFirst();
            String others = hot.size() == 1 ? "" : "; so it is with " + names(hot.stream().skip(1).map(PartState::source).toList());
            findings.add(Finding.caution(worst.source(), "the temperature of " + worst.source() + ", ", celsius(worst.junction().orElseThrow()),
                    ", tells no more than that its heat hardly leaves it: nothing is whole at that" + others)
                    .remedy("give the air at it a way; where it stands in still air on purpose, state its resistance there with a link of"
                            + " kind resistance or surface, since sinks count without natural convection"));
        }
    }

    private void links() {
        List<Parts.Part> parts = reading.model.parts().list();
        for (int k = 0; k < parts.size(); k++) {
            PartState state = reading.state.parts().get(k);
            if (state.fault().isPresent() || state.stream().isEmpty()) {
                continue;
            }
            for (Parts.Item item : parts.get(k).chain()) {
                try {
                    findings.addAll(item.kind().findings(item.values(), item.setting(), state.stream().get()));
                } catch (RuntimeException | LinkageError e) { // whoever made the kind should hear of it, not we
                    findings.add(Finding.caution(state.source(), "link kind " + item.link().kind() + " failed at its findings: "
                            + e.getClass().getSimpleName() + (e.getMessage() == null ? "" : ": " + e.getMessage())));
                }
            }
        }
    }

    /** Movers whose heat is not known. */
    private void movers() {
        List<String> silent = reading.state.point().banks().stream().filter(bank -> bank.speed() > 0 && bank.power().isEmpty())
                .map(OperatingPoint.BankPoint::bank).toList();
        if (!silent.isEmpty()) {
            findings.add(Finding.note(silent.getFirst(), "the heat of the movers of " + names(silent)
                    + " is left out, as their curves state no power").remedy("give their power"));
        }
    }

    private void controls() {
        if (reading.model.controls().idle()) {
            findings.add(Finding.note("", "control laws do not act here, as the condition states a speed setting"));
        }
    }

    private void bounds() {
        reading.bounds.ifPresent(found -> {
            if (!found.stated().isEmpty()) {
                List<Map.Entry<String, Bounds.Effect>> largest = found.stated().entrySet().stream().sorted(Comparator.comparingDouble(
                        each -> -each.getValue().kelvin())).limit(MOST_NAMED).toList();
                int more = found.stated().size() - largest.size();
                List<Object> words = new ArrayList<>(List.of("the bounds of temperatures come from " + (more > 0 ? found.stated().size()
                        + " tolerances, most from that of " : largest.size() == 1 ? "the tolerance of " : "the tolerances of ")));
                for (int i = 0; i < largest.size(); i++) {
                    Bounds.Effect effect = largest.get(i).getValue();
                    words.addAll(List.of(i == 0 ? "" : i == largest.size() - 1 ? " and " : ", ", largest.get(i).getKey() + " (",
                            new Amount(effect.tolerance(), QuantityKind.FRACTION), ", up to ", kelvin(effect.kelvin()), ")"));
                }
                findings.add(Finding.note("", words.toArray())
                        .source("bounds add up as if each tolerance were at its worst at once; samples check them"));
            }
            if (found.without() > 0) {
                findings.add(Finding.caution("", "with some tolerances at their ends flow and temperature have no answer; the bounds leave them out"));
            }
        });
    }
}
