package tramontane.thermal.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Severity;
import tramontane.model.ControlLaw;
import tramontane.physics.Air;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;
import tramontane.thermal.Loop;
import tramontane.thermal.PartState;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalState;

/** What an engineer should know about temperatures beyond their figures. */
final class ThermalFindings {

    /** Temperature of a surface from which a touch may burn, K; for bare metal touched for some seconds, from memory of ISO 13732-1. */
    private static final double BURNS = 273.15 + 60;
    /** Gain over the best one below which a change is not worth a word. */
    private static final double SLIGHT = 0.05;
    /** Flow needed over the first estimate from which it is worth a word. */
    private static final double WORTH = 1.02;
    /** Difference of temperatures that is worth a word, K. */
    private static final double NOTICED = 0.5;

    private final ThermalAnalysis.Reading reading;
    private final List<Finding> findings = new ArrayList<>();

    private ThermalFindings(ThermalAnalysis.Reading reading) {
        this.reading = reading;
    }

    static List<Finding> of(ThermalAnalysis.Reading reading) {
        ThermalFindings all = new ThermalFindings(reading);
        all.faults();
        all.limits();
        all.hottest();
        all.needed();
        all.dew();
        all.touch();
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
    static Finding unbounded(List<String> bays) {
        return Finding.of(Severity.NOT_MET, bays.getFirst(), bays.size() == 1 ? "bay " + bays.getFirst() + " gets"
                : "bays " + String.join(", ", bays) + " get", " heat that neither air nor walls carry off: the air temperature there has no bound")
                .remedy("give " + bays.getFirst() + " a way in and a way out, or walls in its enclosure");
    }

    /** A loop that does not come to rest. */
    static Finding hunting(ThermalModel model, Loop loop) {
        List<Object> words = new ArrayList<>();
        String law = loop.law().orElse("");
        words.add(law.isEmpty() ? "flow and temperature never come to rest: they go to and fro between "
                : "control law " + law + " hunts: it goes to and fro between ");
        for (ThermalState state : loop.cycle()) {
            if (!law.isEmpty()) {
                ControlLaw control = model.design().controlLaws().stream().filter(each -> each.id().equals(law)).findFirst().orElseThrow();
                Optional<Double> setting = model.controls().laws().stream().filter(each -> each.law().id().equals(law))
                        .flatMap(each -> each.banks().stream()).findFirst().map(state.drive().settings()::get);
                setting.ifPresent(value -> words.addAll(List.of(new Amount(value, QuantityKind.FRACTION), " speed, ")));
                OptionalDouble sensor = Controls.sensor(control, state, model);
                sensor.ifPresent(value -> words.addAll(List.of("at which " + control.sensor() + " comes to ", celsius(value), ", ")));
            }
            for (OperatingPoint.BankPoint bank : state.point().banks()) {
                words.addAll(List.of(bank.bank() + " ", new Amount(bank.flow(), QuantityKind.FLOW), " "));
            }
            Backwards.worst(model, state).ifPresent(part -> words.addAll(List.of("(" + part.source() + " ",
                    celsius(part.junction().orElseThrow()), ")")));
            words.add("; and ");
        }
        words.removeLast();
        return Finding.of(Severity.NOT_JUDGED, "", words.toArray()).remedy(law.isEmpty()
                ? "move the duty point away from where the curve of the bank has its dip"
                : "draw the rise of the law over more kelvin, or take a hysteresis wider than what a switch changes at the sensor");
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
            Amount junction = celsius(part.junction().orElseThrow());
            Object[] words = margin.isEmpty() ? new Object[] {"the hottest part is " + part.source() + " with ", junction}
                    : margin.get() >= 0 ? new Object[] {"nearest to its limit is " + part.source() + " with ", junction, ", ", kelvin(margin.get()), " below it"}
                    : new Object[] {part.source() + " is the farthest above its limit, by ", kelvin(-margin.get()), ", with ", junction};
            List<Object> remedy = new ArrayList<>();
            double best = found.gains().stream().mapToDouble(Improvements.Gain::kelvin).max().orElse(0);
            List<Improvements.Gain> gains = found.gains().stream().filter(gain -> gain.kelvin() > 0 && gain.kelvin() >= SLIGHT * best).toList();
            for (int i = 0; i < gains.size(); i++) {
                remedy.addAll(List.of(i == 0 ? "what would cool it most: " : ", ", gains.get(i).change() + " gains ", kelvin(gains.get(i).kelvin())));
            }
            findings.add(Finding.note(part.source(), words).remedy(remedy.toArray()));
        });
    }

    private void needed() {
        if (reading.backwards.isEmpty()) {
            return;
        }
        Backwards.Found found = reading.backwards.get();
        switch (found.end()) {
            case TOO_HOT -> findings.add(Finding.caution("", "no speed of the movers would do: even at ",
                    new Amount(Backwards.FASTEST, QuantityKind.NUMBER), " times theirs a part is above its limit")
                    .remedy("lower the resistance of its chain, or the heat"));
            case ALWAYS_MET -> findings.add(Finding.note("", "every part would stay below its limit even with movers at ",
                    new Amount(Backwards.SLOWEST, QuantityKind.FRACTION), " of their speed"));
            default -> {
                // an answer, or nothing that could be found
            }
        }
        found.answer().ifPresent(answer -> {
            double outside = reading.model.condition().temperature();
            PartState worst = answer.worst();
            if (!(answer.flow() > WORTH * answer.estimate() && answer.estimate() > 0)) {
                return;
            }
            ThermalState.Balance balance = answer.state().balance();
            double mean = balance.sources() / (answer.flow() * reading.model.path().outside().density()
                    * reading.model.path().outside().specificHeat());
            double air = worst.air() - outside;
            List<Object> words = new ArrayList<>(List.of("all limits are just met with ", flow(answer.flow()), " from outside, at ",
                    new Amount(answer.factor(), QuantityKind.FRACTION), " of the speed; the first estimate, P/(ρ cp ΔT) with the ",
                    kelvin(worst.junction().orElseThrow() - outside), " up to the limit of " + worst.source() + ", gives ", flow(answer.estimate()),
                    ": it leaves out "));
            List<List<Object>> missed = new ArrayList<>();
            if (!worst.links().isEmpty()) {
                missed.add(List.of("the ", kelvin(worst.junction().orElseThrow() - worst.air()), " of its chain"));
            }
            if (air - mean > NOTICED) {
                missed.add(List.of("that its air is ", kelvin(air), " warmer than outside where the mean is ", kelvin(mean)));
            }
            if (balance.movers() > SLIGHT * balance.sources()) {
                missed.add(List.of("the ", new Amount(balance.movers(), QuantityKind.POWER), " of the movers"));
            }
            for (int i = 0; i < missed.size(); i++) {
                words.add(i == 0 ? "" : i + 1 < missed.size() ? ", " : " and ");
                words.addAll(missed.get(i));
            }
            if (!missed.isEmpty()) {
                findings.add(Finding.note("", words.toArray()));
            }
        });
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
        reading.state.parts().stream().filter(part -> part.fault().isEmpty() && part.surface() > BURNS && !part.links().isEmpty())
                .max(Comparator.comparingDouble(PartState::surface)).ifPresent(part -> findings.add(Finding.note(part.source(),
                        "the surface of " + part.source() + " comes to ", celsius(part.surface()), ": it may burn who touches it")
                        .remedy("guard or mark it where hands reach; the safety standard of the equipment decides")
                        .source("common practice after ISO 13732-1; the threshold is from memory")));
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
                findings.add(Finding.note("", "the bounds of temperatures come from the tolerances of " + found.stated().entrySet().stream()
                        .limit(8).map(each -> each.getKey() + " (" + Units.format(each.getValue(), QuantityKind.FRACTION, UnitSystem.METRIC, 3) + ")")
                        .collect(Collectors.joining(", ")) + (found.stated().size() > 8 ? " and " + (found.stated().size() - 8) + " more" : ""))
                        .source("bounds add up as if each tolerance were at its worst at once; samples check them"));
            }
            if (found.without() > 0) {
                findings.add(Finding.caution("", "with some tolerances at their ends flow and temperature have no answer; the bounds leave them out"));
            }
        });
    }
}
