package tramontane.thermal.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.analysis.LinkKind;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Relation;
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
    private static final Relation WHOLE = new Relation("heat balance", "Σ heat of sources + Σ electrical input of movers = heat to air + heat through walls",
            "first law", "all electrical input of a mover becomes heat in its air");
    private static final Relation EXHAUST = new Relation("mean exhaust temperature", "T = T outside + heat to air/(m cp)", "energy balance", "");
    private static final Relation NEEDED = new Relation("flow that just meets the limits",
            "all speeds times one factor, at which the least margin is 0; flow and temperatures in agreement there", "by root search", "");
    private static final Relation ESTIMATE = new Relation("first estimate of the flow", "Q = P/(ρ cp ΔT), ΔT = limit - outside",
            "energy balance; common practice", "a part as warm as the air that leaves; a lower bound as a rule");
    private static final Relation SETTING = new Relation("control law", "setting = law(T of its sensor), both in agreement, warming up from cold",
            "the design", "");

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
                    inputs.add(term("heat through a wall", QuantityKind.POWER, wall.heat(), "enclosure of " + bay.id()));
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
        List<Trace.Term> along = new ArrayList<>();
        Optional<OperatingPoint.PassageFlow> flow = reading.state.point().passage(place);
        if (part.places().getFirst() >= reading.model.parts().bays() && flow.isPresent()) {
            Passage passage = reading.model.path().passage(place);
            along.add(air(flow.get().massFlow() >= 0 ? passage.from() : passage.to()));
            along.add(term("mass flow through " + place, QuantityKind.MASS_FLOW, Math.abs(flow.get().massFlow()), "airflow.passage.flow"));
        } else {
            along.add(air(place));
        }
        heat(place, along);
        along.add(specificHeat());
        step(Figures.LOCAL.id(), id, ALONG, state.air(), along);
        step(Figures.ARRIVING.id(), id, MARGIN_OF_AIR, state.arriving() - outside, List.of(
                term("temperature of the air that comes", QuantityKind.TEMPERATURE, state.arriving(), Figures.AIR.id()),
                term("temperature outside", QuantityKind.TEMPERATURE, outside, condition)));
        step(Figures.ALONG.id(), id, ALONG, state.air() - state.arriving(), along);
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
            if (state.links().stream().anyMatch(link -> link.step() == step)) {
                step(Figures.STEPS.get(step).id(), id, STEP, state.rise(step), chain);
            }
        }
        step(Figures.JUNCTION.id(), id, CHAIN, state.junction().orElseThrow(), chain);
        Optional.ofNullable(reading.limits().get(id)).ifPresent(limit -> step(Figures.MARGIN.id(), id, MARGIN, limit - state.junction().orElseThrow(),
                List.of(term("limit", QuantityKind.TEMPERATURE, limit, "heat source " + id),
                        term("junction temperature", QuantityKind.TEMPERATURE, state.junction().orElseThrow(), Figures.JUNCTION.id()))));
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
        heat.add(term("heat to air", QuantityKind.POWER, balance.toAir(), Figures.EXHAUST.id()));
        heat.add(term("heat through walls", QuantityKind.POWER, balance.toWalls(), Figures.WALL_HEAT.id()));
        heat.add(term("what does not close", QuantityKind.POWER, balance.error(), "rounding"));
        step(Figures.HEAT.id(), "", WHOLE, balance.sources() + balance.movers(), heat);
        step(Figures.MOVER_HEAT.id(), "", WHOLE, balance.movers(), heat);
        step(Figures.WALL_HEAT.id(), "", WHOLE, balance.toWalls(), heat);
        double leaving = reading.model.balancing().leaving(reading.state.point());
        if (leaving > 0) {
            step(Figures.EXHAUST.id(), "", EXHAUST, reading.model.condition().temperature() + balance.toAir()
                    / (leaving * reading.model.path().outside().specificHeat()), List.of(
                    term("temperature outside", QuantityKind.TEMPERATURE, reading.model.condition().temperature(), condition),
                    term("heat to air", QuantityKind.POWER, balance.toAir(), Figures.AIR.id()),
                    term("mass flow that leaves to outside", QuantityKind.MASS_FLOW, leaving, "airflow.passage.flow"), specificHeat()));
        }
        reading.backwards.flatMap(Backwards.Found::answer).ifPresent(this::needed);
        reading.own.ifPresent(state -> reading.model.controls().laws().forEach(control -> control.banks().forEach(bank ->
                Controls.sensor(control.law(), state, reading.model).ifPresent(sensor -> step(Figures.SETTING.id(), bank, SETTING,
                        state.feeds().get(bank).setting(), List.of(term("temperature of " + control.law().sensor(), QuantityKind.TEMPERATURE,
                                sensor, "control law " + control.law().id())))))));
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
