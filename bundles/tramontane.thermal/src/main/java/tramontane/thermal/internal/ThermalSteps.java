package tramontane.thermal.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import tramontane.analysis.LinkKind;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Relation;
import tramontane.analysis.Sections;
import tramontane.analysis.Trace;
import tramontane.model.Bay;
import tramontane.model.HeatSource;
import tramontane.model.Passage;
import tramontane.physics.units.QuantityKind;
import tramontane.thermal.PartState;
import tramontane.thermal.ThermalState;

/** Says where the figures of temperatures come from. */
final class ThermalSteps {

    private static final Relation MIXING = new Relation("energy balance of a bay",
            "T = (Σ m cp T of the air that comes in + heat put into it and into the bay - heat through walls)/(Σ m cp)",
            "first law for steady flow: F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer, eq. (1.11d)",
            "bays are mixed; specific heat does not change with temperature");
    private static final Relation ALONG = new Relation("air along a place", "T = T of the air that comes + Σ w q/(m cp)",
            "energy balance; w is 1/2 for heat spread evenly along the way and for a row's own, the wake factor for earlier rows: common practice", "");
    private static final Relation CHAIN = new Relation("chain of thermal resistances", "T = T air + q Σ R",
            "F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer, ch. 3.1", "heat goes one way, from junction to air");
    private static final Relation STEP = new Relation("thermal resistance", "ΔT = q R", "F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass"
            + " Transfer, ch. 3.1", "");
    private static final Relation UNSAID = new Relation("resistance of its kind", "R = f(air)", "the link kind does not say", "");
    private static final Relation MARGIN = new Relation("margin", "ΔT = limit - T", "by definition", "");
    private static final Relation WHOLE = new Relation("heat of all", "Σ heat of sources + Σ electrical input of movers", "by definition",
            "all electrical input of a mover becomes heat in its air");
    private static final Relation MOVERS = new Relation("heat of the movers", "Σ electrical input of movers", "by definition",
            "all of it becomes heat in their air");
    private static final Relation EXHAUST = new Relation("mean exhaust temperature", "T = T outside + heat to air/(m cp)", "energy balance", "");
    private static final Relation NEEDED = new Relation("flow that just meets the limits",
            "all speeds times one factor, at which the least margin is 0; flow and temperatures in agreement there", "by root search", "");
    private static final Relation ESTIMATE = new Relation("first estimate of the flow", "Q = P/(ρ cp ΔT), ΔT = limit - outside",
            "energy balance; common practice", "a part as warm as the air that leaves; a lower bound as a rule");
    private static final Relation SETTING = new Relation("control law", "setting = law(T of its sensor), both in agreement, warming up from cold",
            "the design", "");

    /** Difference of settings up to which a law is the one that asks. */
    private static final double SAME_SETTING = 1e-6;

    private final ThermalAnalysis.Reading reading;
    private final Trace trace;
    private final String condition;

    private ThermalSteps(ThermalAnalysis.Reading reading, Trace trace) {
        this.reading = reading;
        this.trace = trace;
        condition = "condition " + reading.model.condition().id();
    }

    static void record(ThermalAnalysis.Reading reading, Trace trace) {
        ThermalSteps steps = new ThermalSteps(reading, trace);
        steps.bays();
        for (int k = 0; k < reading.state.parts().size(); k++) {
            steps.part(k);
        }
        steps.whole();
    }

    private void step(String figure, String place, Relation relation, double value, List<Trace.Term> inputs) {
        trace.step(new Trace.Step(figure, place, relation, value, inputs));
    }

    private static Trace.Term term(String name, QuantityKind quantity, double value, String from) {
        return new Trace.Term(name, quantity, value, from);
    }

    private double temperature(String bay) {
        return reading.state.point().bays().stream().filter(each -> each.bay().equals(bay)).findFirst().map(each -> bay.equals(Bay.OUTSIDE)
                ? reading.model.condition().temperature() : own(bay)).orElse(Double.NaN);
    }

    private double own(String bay) {
        for (int i = 0; i < reading.design.airPath().bays().size(); i++) {
            if (reading.design.airPath().bays().get(i).id().equals(bay)) {
                return reading.state.temperatures().get(i);
            }
        }
        return Double.NaN;
    }

    private Trace.Term air(String bay) {
        return term("temperature in " + bay, QuantityKind.TEMPERATURE, temperature(bay), bay.equals(Bay.OUTSIDE) ? condition
                : Figures.AIR.id() + Trace.AT + bay);
    }

    private void bays() {
        for (Bay bay : reading.design.airPath().bays()) {
            List<Trace.Term> inputs = new ArrayList<>();
            for (OperatingPoint.PassageFlow flow : reading.state.point().passages()) {
                Passage passage = reading.model.path().passage(flow.passage());
                if (passage.to().equals(bay.id())) {
                    comes(passage, flow, 1, inputs);
                }
                if (passage.from().equals(bay.id())) {
                    comes(passage, flow, -1, inputs);
                }
            }
            heat(bay.id(), inputs);
            inputs.add(specificHeat());
            for (ThermalState.WallState wall : reading.state.walls()) {
                if (wall.bay().equals(bay.id())) {
                    inputs.add(term("heat through a wall", QuantityKind.POWER, wall.heat(), "heat through wall "
                            + (reading.state.walls().indexOf(wall) + 1)));
                }
            }
            step(Figures.AIR.id(), bay.id(), MIXING, own(bay.id()), inputs);
        }
    }

    /** What comes by a passage in one direction, 1 or -1; by a bank in that of each of its columns. */
    private void comes(Passage passage, OperatingPoint.PassageFlow flow, int direction, List<Trace.Term> inputs) {
        Optional<OperatingPoint.BankPoint> bank = reading.state.point().bank(passage.id());
        double[] flows = bank.map(reading.model.path()::columnFlows).orElse(new double[] {flow.massFlow()});
        double mass = 0;
        double all = 0;
        double power = 0;
        for (int c = 0; c < flows.length; c++) {
            all += Math.abs(flows[c]);
            if (flows[c] * direction > 0) {
                mass += Math.abs(flows[c]);
                int series = bank.isPresent() ? bank.get().movers().size() / flows.length : 0;
                for (int i = 0; i < series; i++) {
                    power += bank.get().movers().get(c * series + i).power().orElse(0);
                }
            }
        }
        double put = mass > 0 ? mass / all : all > 0 ? 0 : 0.5;
        if (mass > 0) {
            inputs.add(term("mass flow through " + passage.id(), QuantityKind.MASS_FLOW, mass, bank.isPresent() ? "airflow.bank.flow" : "airflow.passage.flow"));
            inputs.add(air(direction > 0 ? passage.from() : passage.to()));
        }
        heat(passage.id(), put, inputs);
        if (power > 0) {
            inputs.add(term("electrical input of " + passage.id(), QuantityKind.POWER, power, "airflow.bank.power"));
        }
    }

    private Trace.Term specificHeat() {
        return term("specific heat in J/(kg K)", QuantityKind.NUMBER, reading.model.path().outside().specificHeat(), "ASHRAE Fundamentals 2017, ch. 1");
    }

    /** The heat that sources put into a place. */
    private void heat(String place, List<Trace.Term> inputs) {
        heat(place, 1, inputs);
    }

    private void heat(String place, double part, List<Trace.Term> inputs) {
        for (Parts.Part each : reading.model.parts().list()) {
            HeatSource source = each.source();
            for (int i = 0; i < source.into().size(); i++) {
                if (source.into().get(i).place().equals(place) && each.heat() > 0 && part > 0) {
                    inputs.add(term("heat of " + source.id() + " into " + place, QuantityKind.POWER, part * each.heat() * source.share(i),
                            "heat source " + source.id() + ", " + condition));
                }
            }
        }
    }

    private void part(int k) {
        PartState state = reading.state.parts().get(k);
        Parts.Part part = reading.model.parts().list().get(k);
        if (state.fault().isPresent()) {
            return;
        }
        String id = state.source();
        String place = part.source().into().getFirst().place();
        double outside = reading.model.condition().temperature();
        along(k, state, part, place);
        boolean passage = part.places().getFirst() >= reading.model.parts().bays();
        step(Figures.ARRIVING.id(), id, MARGIN_OF_AIR, state.arriving() - outside, List.of(
                term("temperature of the air that comes to " + place, QuantityKind.TEMPERATURE, state.arriving(), passage
                        ? upstream(place) : "the mean of what comes to it"),
                term("temperature outside", QuantityKind.TEMPERATURE, outside, condition)));
        step(Figures.ALONG.id(), id, BETWEEN, state.air() - state.arriving(), List.of(
                term("air at it", QuantityKind.TEMPERATURE, state.air(), Figures.LOCAL.id()),
                term("temperature of the air that comes to " + place, QuantityKind.TEMPERATURE, state.arriving(), passage
                        ? upstream(place) : "the mean of what comes to it")));
        List<Trace.Term> chain = new ArrayList<>(List.of(term("air at it", QuantityKind.TEMPERATURE, state.air(), Figures.LOCAL.id()),
                term("heat q through the chain", QuantityKind.POWER, state.chainHeat(), "heat source " + id + ", " + condition)));
        for (int i = 0; i < state.links().size(); i++) {
            PartState.LinkState link = state.links().get(i);
            String name = "resistance of link " + (i + 1) + ", " + link.kind();
            Parts.Item item = part.chain().get(i);
            Optional<PassageKind.Origin> origin = state.stream().flatMap(stream -> item.kind().origin(item.values(), item.setting(), stream));
            List<Trace.Term> inputs = new ArrayList<>(origin.map(PassageKind.Origin::inputs).orElse(List.of()));
            step(name, id, origin.map(PassageKind.Origin::relation).orElse(UNSAID), link.resistance(), inputs);
            chain.add(term("resistance of " + link.kind(), QuantityKind.THERMAL_RESISTANCE, link.resistance(), name));
        }
        for (LinkKind.Step step : LinkKind.Step.values()) {
            List<Trace.Term> inputs = new ArrayList<>(List.of(chain.get(1)));
            for (int i = 0; i < state.links().size(); i++) {
                if (state.links().get(i).step() == step) {
                    inputs.add(chain.get(2 + i));
                }
            }
            if (inputs.size() > 1) {
                step(Figures.STEPS.get(step).id(), id, STEP, state.rise(step), inputs);
            }
        }
        step(Figures.JUNCTION.id(), id, CHAIN, state.junction().orElseThrow(), chain);
        Optional.ofNullable(reading.limits().get(id)).ifPresent(limit -> step(Figures.MARGIN.id(), id, MARGIN, limit - state.junction().orElseThrow(),
                List.of(term("limit", QuantityKind.TEMPERATURE, limit, "heat source " + id),
                        term("junction temperature", QuantityKind.TEMPERATURE, state.junction().orElseThrow(), Figures.JUNCTION.id()))));
    }

    /** The air at a part: the mean of its bay, or what comes to its place warmed on the way, each heat with its weight. */
    private void along(int k, PartState state, Parts.Part part, String place) {
        Optional<double[]> weights = reading.model.parts().along(k);
        boolean passage = part.places().getFirst() >= reading.model.parts().bays();
        if (weights.isEmpty()) {
            step(Figures.LOCAL.id(), state.source(), MEAN, state.air(), List.of(air(place)));
            return;
        }
        List<Trace.Term> inputs = new ArrayList<>(List.of(term("temperature of the air that comes to " + place, QuantityKind.TEMPERATURE,
                state.arriving(), passage ? upstream(place) : "the mean of what comes to it")));
        double counted = 0;
        for (int j = 0; j < weights.get().length; j++) {
            Parts.Part other = reading.model.parts().list().get(j);
            double heat = weights.get()[j] * other.heat();
            counted += heat;
            if (heat > 0) {
                inputs.add(term("heat of " + other.source().id() + " that counts, w q", QuantityKind.POWER, heat, "heat source "
                        + other.source().id() + ", " + condition));
            }
        }
        if (counted > 0) {
            inputs.add(term("m cp of the air through " + place + " in W/K", QuantityKind.NUMBER, counted / (state.air() - state.arriving()),
                    "airflow.passage.flow"));
        }
        step(Figures.LOCAL.id(), state.source(), ALONG, state.air(), inputs);
    }

    /** Where the temperature of the air that comes to a passage stands. */
    private String upstream(String passage) {
        Passage there = reading.model.path().passage(passage);
        String up = reading.state.point().passage(passage).filter(flow -> flow.massFlow() < 0).isPresent() ? there.to() : there.from();
        return up.equals(Bay.OUTSIDE) ? condition : Figures.AIR.id() + Trace.AT + up;
    }

    private static final Relation MEAN = new Relation("mean of the bay", "T = T of the bay", "bays are mixed", "");
    private static final Relation BETWEEN = new Relation("rise of the air along its place", "ΔT = T at it - T that comes", "by definition", "");
    private static final Relation WALL = new Relation("wall", "q/A = h (T bay - T inner) = (T inner - T outer) k/t = h' (T outer - T outside)"
            + " + ε σ (T outer⁴ - T outside⁴) - α s E; h forced and natural joined by third powers", "natural: S. W. Churchill, H. H. S. Chu, Int. J. Heat"
            + " Mass Transfer 18 (1975) 1323-1329, lying plates as in F. P. Incropera, D. P. DeWitt, ch. 9.6; joined: S. W. Churchill, AIChE J. 23 (1977)"
            + " 10-16", "faces inside do not radiate to each other; surroundings at the temperature outside");
    private static final Relation WALLS = new Relation("heat through walls", "sum over all walls", "by definition", "");

    /** Each wall, by the number that it has among all. */
    private void walls() {
        List<Trace.Term> all = new ArrayList<>();
        double sun = Sections.decode(new SunSection(), reading.model.condition()).map(section -> section.irradiance().si()).orElse(0.0);
        int number = 0;
        for (ThermalState.WallState wall : reading.state.walls()) {
            String name = "heat through wall " + ++number;
            List<Trace.Term> inputs = new ArrayList<>(List.of(air(wall.bay()),
                    term("temperature of the inner face", QuantityKind.TEMPERATURE, wall.inner(), "balance of the wall"),
                    term("temperature of the outer face", QuantityKind.TEMPERATURE, wall.outer(), "balance of the wall"),
                    term("temperature outside", QuantityKind.TEMPERATURE, reading.model.condition().temperature(), condition)));
            if (sun > 0) {
                inputs.add(term("irradiance E in W/m²", QuantityKind.NUMBER, sun, "section sun of " + condition));
            }
            step(name, wall.bay(), WALL, wall.heat(), inputs);
            all.add(term("heat through a wall of " + wall.bay(), QuantityKind.POWER, wall.heat(), name + Trace.AT + wall.bay()));
        }
        if (!all.isEmpty()) {
            step(Figures.WALL_HEAT.id(), "", WALLS, reading.state.balance().toWalls(), all);
        }
    }

    private static final Relation MARGIN_OF_AIR = new Relation("rise of the air", "ΔT = T - T outside", "by definition", "");

    private void whole() {
        ThermalState.Balance balance = reading.state.balance();
        List<Trace.Term> heat = new ArrayList<>();
        for (Parts.Part part : reading.model.parts().list()) {
            heat.add(term("heat of " + part.source().id(), QuantityKind.POWER, part.heat(), "heat source " + part.source().id() + ", " + condition));
        }
        for (OperatingPoint.BankPoint bank : reading.state.point().banks()) {
            bank.power().ifPresent(power -> heat.add(term("electrical input of " + bank.bank(), QuantityKind.POWER, power, "airflow.bank.power")));
        }
        step(Figures.HEAT.id(), "", WHOLE, balance.sources() + balance.movers(), heat);
        step(Figures.MOVER_HEAT.id(), "", MOVERS, balance.movers(), heat.subList(reading.model.parts().list().size(), heat.size()));
        walls();
        double leaving = reading.model.balancing().leaving(reading.state.point());
        if (leaving > 0) {
            step(Figures.EXHAUST.id(), "", EXHAUST, reading.model.condition().temperature() + balance.toAir()
                    / (leaving * reading.model.path().outside().specificHeat()), List.of(
                    term("temperature outside", QuantityKind.TEMPERATURE, reading.model.condition().temperature(), condition),
                    term("heat to air", QuantityKind.POWER, balance.toAir(), Figures.AIR.id()),
                    term("mass flow that leaves to outside", QuantityKind.MASS_FLOW, leaving, "airflow.passage.flow"), specificHeat()));
        }
        reading.backwards.flatMap(Backwards.Found::answer).ifPresent(this::needed);
        if (reading.backwards.filter(found -> found.answer().isEmpty()).isPresent()) {
            Backwards.estimate(reading.model).ifPresent(flow -> step(Figures.FLOW_ESTIMATE.id(), "", ESTIMATE, flow, List.of(
                    term("heat of the sources", QuantityKind.POWER, balance.sources(), "heat sources, " + condition),
                    term("density outside", QuantityKind.DENSITY, reading.model.path().outside().density(), "airflow.air.density"), specificHeat(),
                    term("lowest limit", QuantityKind.TEMPERATURE, reading.limits().values().stream().min(Double::compare).orElseThrow(), "heat sources"),
                    term("temperature outside", QuantityKind.TEMPERATURE, reading.model.condition().temperature(), condition))));
        }
        reading.own.ifPresent(state -> reading.model.controls().laws().forEach(control -> control.banks().forEach(bank ->
                setting(state, control, bank))));
    }

    /** Where the setting of a bank comes from: the law that asks for it, of several the one that asks for most. */
    private void setting(ThermalState state, Controls.Control control, String bank) {
        double setting = state.feeds().get(bank).setting();
        Controls.sensor(control.law(), state, reading.model).ifPresent(sensor -> {
            boolean asks = IntStream.range(0, control.curve().stages()).anyMatch(stage ->
                    Math.abs(control.curve().setting(stage, sensor) - setting) <= SAME_SETTING);
            if (asks) {
                List<Trace.Term> inputs = new ArrayList<>();
                String law = "control law " + control.law().id();
                String from = reading.state.part(control.law().sensor()).isPresent() ? Figures.JUNCTION.id() + Trace.AT + control.law().sensor()
                        : reading.design.airPath().bays().stream().anyMatch(each -> each.id().equals(control.law().sensor()))
                                ? Figures.AIR.id() + Trace.AT + control.law().sensor() : law;
                inputs.add(term("temperature of " + control.law().sensor(), QuantityKind.TEMPERATURE, sensor, from));
                for (int i = 0; i < control.law().temperature().size(); i++) {
                    inputs.add(term("temperature " + (i + 1), QuantityKind.TEMPERATURE, control.law().temperature().toArray()[i], law));
                    inputs.add(term("setting " + (i + 1), QuantityKind.FRACTION, control.law().speed().toArray()[i], law));
                }
                step(Figures.SETTING.id(), bank, SETTING, setting, inputs);
            }
        });
    }

    private void needed(Backwards answer) {
        PartState worst = answer.worst();
        double limit = Backwards.limit(reading.model, worst.source()).orElseThrow();
        List<Trace.Term> inputs = List.of(term("limit of " + worst.source(), QuantityKind.TEMPERATURE, limit, "heat source " + worst.source()),
                term("its junction temperature there", QuantityKind.TEMPERATURE, worst.junction().orElseThrow(), "flow and temperatures in agreement at those speeds"),
                term("factor on all speeds", QuantityKind.FRACTION, answer.factor(), "root search"));
        step(Figures.FLOW_NEEDED.id(), "", NEEDED, answer.flow(), inputs);
        answer.speeds().forEach((bank, speed) -> step(Figures.SPEED_NEEDED.id(), bank, NEEDED, speed, inputs));
        step(Figures.FLOW_ESTIMATE.id(), "", ESTIMATE, answer.estimate(), List.of(
                term("heat of the sources", QuantityKind.POWER, reading.state.balance().sources(), "heat sources, " + condition),
                term("density outside", QuantityKind.DENSITY, reading.model.path().outside().density(), "airflow.air.density"), specificHeat(),
                term("limit of " + worst.source(), QuantityKind.TEMPERATURE, limit, "heat source " + worst.source()),
                term("temperature outside", QuantityKind.TEMPERATURE, reading.model.condition().temperature(), condition)));
    }
}
