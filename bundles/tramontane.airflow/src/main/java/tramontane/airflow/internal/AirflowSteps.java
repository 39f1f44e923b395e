package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.airflow.Feed;
import tramontane.airflow.NetworkSolver;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Relation;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.Trace;
import tramontane.model.Bay;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.physics.Air;
import tramontane.physics.AirState;
import tramontane.physics.units.QuantityKind;

/** Says where the figures of the air-flow analysis come from. */
final class AirflowSteps {

    private static final String DENSITY = Figures.AIR_DENSITY.id();
    private static final String PRESSURE = "airflow.air.pressure";
    /** The figure that says how warm the air in a bay is, where it is not as outside. */
    private static final String BAY_TEMPERATURE = "thermal.air.temperature";

    private final AirflowReading reading;
    private final Trace trace;
    private final String condition;

    private AirflowSteps(AirflowReading reading, Trace trace) {
        this.reading = reading;
        this.trace = trace;
        condition = "condition " + reading.condition().id();
    }

    static void record(AirflowReading reading, Trace trace) {
        AirflowSteps steps = new AirflowSteps(reading, trace);
        steps.air();
        steps.airInBays();
        reading.point().passages().forEach(steps::stack);
        reading.point().banks().forEach(steps::bank);
        reading.point().passages().forEach(steps::passage);
        reading.point().bays().forEach(steps::bay);
        steps.whole();
    }

    private void step(String figure, String place, Relation relation, double value, Trace.Term... inputs) {
        trace.step(new Trace.Step(figure, place, relation, value, List.of(inputs)));
    }

    private static Trace.Term term(String name, QuantityKind quantity, double value, String from) {
        return new Trace.Term(name, quantity, value, from);
    }

    private void air() {
        AirState air = reading.outside();
        boolean given = reading.condition().pressure().isPresent();
        if (!given) {
            step(PRESSURE, Bay.OUTSIDE, Relations.ATMOSPHERE, air.pressure(),
                    term("altitude", QuantityKind.LENGTH, reading.condition().altitudeMetres(), condition));
        }
        step(DENSITY, "", Relations.DENSITY, air.density(),
                term("pressure", QuantityKind.PRESSURE, air.pressure(), given ? condition : PRESSURE),
                term("temperature", QuantityKind.TEMPERATURE, air.temperature(), condition),
                term("relative humidity", QuantityKind.FRACTION, air.humidity(), condition));
    }

    /** The density in each bay whose air is not that outside. */
    private void airInBays() {
        boolean given = reading.condition().pressure().isPresent();
        for (Bay bay : reading.model().bays()) {
            if (!reading.isAsOutside(bay.id())) {
                AirState air = reading.air(bay.id());
                step(densityFrom(reading, bay.id()), bay.id(), Relations.DENSITY, air.density(),
                        term("pressure", QuantityKind.PRESSURE, air.pressure(), given ? condition : PRESSURE),
                        term("temperature in " + bay.id(), QuantityKind.TEMPERATURE, air.temperature(), BAY_TEMPERATURE),
                        term("amount fraction of water vapour x", QuantityKind.FRACTION,
                                Air.vapourFraction(air.pressure(), air.temperature(), air.humidity()), condition));
            }
        }
    }

    /** Where the density in a bay comes from: that outside, or a step of its own. */
    static String densityFrom(AirflowReading reading, String bay) {
        return reading.isAsOutside(bay) ? DENSITY : "air density in " + bay;
    }

    /** The density of the air that comes into a bank. */
    static Trace.Term inletDensity(AirflowReading reading, OperatingPoint.BankPoint point) {
        return term("density at the inlet", QuantityKind.DENSITY, point.density(), densityFrom(reading, reading.inlet(point)));
    }

    /** The density of the air in a bay, called by the bay. */
    private Trace.Term density(String bay) {
        return term(bay.equals(Bay.OUTSIDE) ? "density outside" : "density in " + bay, QuantityKind.DENSITY,
                reading.air(bay).density(), densityFrom(reading, bay));
    }

    /** What the weight of the air in a passage adds to the pressures between which it lies; empty where that is nothing. */
    private Optional<Trace.Term> buoyancy(OperatingPoint.PassageFlow flow) {
        double pressure = (reading.outside().density() - reading.air(reading.inlet(flow)).density()) * NetworkSolver.GRAVITY
                * rise(reading.passage(flow));
        return pressure == 0 ? Optional.empty() : Optional.of(term("buoyancy of the air in " + flow.passage(),
                QuantityKind.PRESSURE, pressure, "buoyancy in " + flow.passage()));
    }

    /** By how much a passage leads upwards, m; one from or to the outside ends at the height of its bay. */
    private double rise(Passage passage) {
        return passage.from().equals(Bay.OUTSIDE) || passage.to().equals(Bay.OUTSIDE) ? 0 : height(passage.to()) - height(passage.from());
    }

    private double height(String bay) {
        return reading.model().bays().stream().filter(each -> each.id().equals(bay)).findFirst().orElseThrow().height()
                .map(Quantity::si).orElse(0.0);
    }

    private void stack(OperatingPoint.PassageFlow flow) {
        buoyancy(flow).ifPresent(buoyancy -> {
            Passage passage = reading.passage(flow);
            step(buoyancy.from(), flow.passage(), Relations.STACK, buoyancy.value(), density(Bay.OUTSIDE),
                    density(reading.inlet(flow)),
                    term("height of " + passage.from(), QuantityKind.LENGTH, height(passage.from()), "bay " + passage.from()),
                    term("height of " + passage.to(), QuantityKind.LENGTH, height(passage.to()), "bay " + passage.to()));
        });
    }

    private void bank(OperatingPoint.BankPoint point) {
        String id = point.bank();
        Bank bank = reading.bank(id);
        double speed = reading.speeds().get(id);
        speed(bank, speed);
        Trace.Term density = inletDensity(reading, point);
        List<Trace.Term> curve = new ArrayList<>();
        if (point.speed() > 0) {
            MoverCharacteristic mover = bank.characteristic(speed);
            curve.add(term("speed", QuantityKind.ROTATIONAL_SPEED, speed, Figures.BANK_SPEED.id()));
            for (int i = 0; i < mover.shares().size(); i++) {
                curve.addAll(share(bank, mover.shares().get(i), mover.shares().size() == 1 ? "the curve" : "curve " + (i + 1)));
            }
            curve.addAll(fitting(bank));
            curve.add(term("movers side by side", QuantityKind.COUNT, bank.columns(), "bank " + id));
            curve.add(term("movers one behind another", QuantityKind.COUNT, bank.series(), "bank " + id));
            for (int i = 0; i < mover.points(); i++) {
                curve.add(term("flow " + (i + 1) + " of the curve at this speed and size", QuantityKind.FLOW, mover.flow(i),
                        "air mover " + bank.mover().id()));
                curve.add(term("pressure " + (i + 1) + " of the curve at this speed, size and stated density", QuantityKind.PRESSURE,
                        mover.pressure(i), "air mover " + bank.mover().id()));
            }
            for (OperatingPoint.MoverPoint position : point.movers()) {
                curve.add(term("flow through position " + position.position() + (position.running() ? "" : ", which stands still"),
                        QuantityKind.FLOW, position.flow(), "bank " + id));
            }
        }
        curve.add(density);
        curve.add(term("flow", QuantityKind.FLOW, point.flow(), Figures.BANK_FLOW.id()));
        trace.step(new Trace.Step(Figures.BANK_PRESSURE.id(), id, Relations.FAN_LAWS, point.pressure(), curve));
        step(Figures.BANK_FLOW.id(), id, Relations.DUTY_POINT, point.flow(),
                term("fan static pressure", QuantityKind.PRESSURE, point.pressure(), Figures.BANK_PRESSURE.id()), density);
        step(Figures.BANK_STANDARD_FLOW.id(), id, Relations.STANDARD_FLOW, point.massFlow() / Air.STANDARD_DENSITY,
                term("mass flow", QuantityKind.MASS_FLOW, point.massFlow(), Figures.BANK_FLOW.id()));
        List<Trace.Term> input = new ArrayList<>(curve);
        bank.mover().fixedLoss().ifPresent(loss -> input.add(term("fixed loss of each mover P0", QuantityKind.POWER, loss.si(),
                "air mover " + bank.mover().id())));
        bank.mover().ratedPower().ifPresent(rated -> input.add(term("rated power of each mover", QuantityKind.POWER, rated.si(),
                "air mover " + bank.mover().id())));
        point.power().ifPresent(power -> trace.step(new Trace.Step(Figures.BANK_POWER.id(), id,
                bank.mover().fixedLoss().isPresent() ? Relations.FIXED_LOSS : Relations.FAN_LAWS, power, input)));
        AirflowReading.efficiency(point).ifPresent(eta -> step(Figures.BANK_EFFICIENCY.id(), id, Relations.EFFICIENCY, eta,
                term("flow", QuantityKind.FLOW, point.flow(), Figures.BANK_FLOW.id()),
                term("fan static pressure", QuantityKind.PRESSURE, point.pressure(), Figures.BANK_PRESSURE.id()),
                term("electrical power", QuantityKind.POWER, point.power().orElseThrow(), Figures.BANK_POWER.id())));
    }

    private void speed(Bank bank, double speed) {
        Feed feed = reading.feed(bank.id());
        Optional<SpeedLaw> law = reading.law(bank.id());
        Optional<SpeedLaw.Origin> origin = law.flatMap(answered -> answered.origin(reading.supply(bank.id())));
        List<Trace.Term> inputs = new ArrayList<>();
        if (origin.isPresent()) {
            origin.get().inputs().forEach(input -> inputs.add(atInlet(bank.id(), feed, input)));
        } else {
            inputs.add(term("rated speed", QuantityKind.ROTATIONAL_SPEED, bank.ratedSpeed(), "air mover " + bank.mover().id()));
        }
        inputs.add(term("speed setting", QuantityKind.FRACTION, feed.setting(), feed.from()));
        Relation relation = origin.map(SpeedLaw.Origin::relation).orElse(law.isEmpty() ? Relations.SPEED : Relations.SPEED_LAW);
        trace.step(new Trace.Step(Figures.BANK_SPEED.id(), bank.id(), relation, speed, inputs));
    }

    /** An input of a speed law; one of the air at the inlet with where it comes from. */
    private Trace.Term atInlet(String bank, Feed feed, Trace.Term input) {
        if (!input.from().equals(SpeedLaw.INLET)) {
            return input;
        }
        boolean outside = feed.temperature() == reading.outside().temperature();
        String bay = reading.model().passage(bank).from();
        return term(input.name(), input.quantity(), input.value(), input.quantity() == QuantityKind.TEMPERATURE
                ? outside ? condition : BAY_TEMPERATURE + Trace.AT + bay : outside ? DENSITY : densityFrom(reading, bay));
    }

    /** A measured curve and how it counts. */
    private static List<Trace.Term> share(Bank bank, MoverCharacteristic.Share share, String which) {
        String part = "air mover " + bank.mover().id();
        List<Trace.Term> terms = new ArrayList<>(List.of(
                term("speed of " + which, QuantityKind.ROTATIONAL_SPEED, share.speed(), part),
                term("density of " + which, QuantityKind.DENSITY, share.curve().statedDensity(), part)));
        double size = MoverCharacteristic.sizeRatio(bank.mover(), share.curve());
        if (size != 1) {
            terms.add(term("rotor diameter over that of " + which, QuantityKind.NUMBER, size, part));
        }
        if (share.weight() != 1) {
            terms.add(term("how much " + which + " counts", QuantityKind.FRACTION, share.weight(), "distance in speed"));
        }
        return terms;
    }

    /** What the fitting of a bank changes, where it changes anything. */
    private static List<Trace.Term> fitting(Bank bank) {
        String place = "bank " + bank.id();
        Bank.Fitting fitting = bank.fitting();
        List<Trace.Term> terms = new ArrayList<>();
        if (!fitting.derating().equals(MoverCharacteristic.Derating.NONE)) {
            terms.add(term("flow derating", QuantityKind.FRACTION, fitting.derating().flow(), place));
            terms.add(term("pressure derating", QuantityKind.FRACTION, fitting.derating().pressure(), place));
        }
        if (bank.series() > 1) {
            terms.add(term("stage factor", QuantityKind.FRACTION, fitting.stage(), place));
        }
        fitting.flap().ifPresent(flap -> terms.addAll(List.of(
                term("loss coefficient of an open flap", QuantityKind.NUMBER, flap.loss(), place),
                term("pressure that lifts a flap", QuantityKind.PRESSURE, flap.lifting(), place),
                term("leak of a shut flap over the open area", QuantityKind.FRACTION, flap.leak(), place),
                term("open area", QuantityKind.AREA, bank.openArea().orElseThrow(), "air mover " + bank.mover().id()))));
        return terms;
    }

    private void passage(OperatingPoint.PassageFlow flow) {
        if (reading.passage(flow).isBank()) {
            return;
        }
        List<Trace.Term> between = new ArrayList<>(List.of(pressure(reading.passage(flow).from()),
                pressure(reading.passage(flow).to())));
        Optional<Trace.Term> buoyancy = buoyancy(flow);
        buoyancy.ifPresent(between::add);
        trace.step(new Trace.Step(Figures.PASSAGE_FLOW.id(), flow.passage(),
                buoyancy.isPresent() ? Relations.NETWORK_STACK : Relations.NETWORK, flow.flow(), between));
        String inlet = reading.inlet(flow);
        Optional<PassageKind.Origin> origin = reading.model().origin(flow.passage());
        List<Trace.Term> inputs = new ArrayList<>(List.of(
                term("flow", QuantityKind.FLOW, flow.flow(), Figures.PASSAGE_FLOW.id()),
                density(inlet),
                term("viscosity", QuantityKind.VISCOSITY, reading.air(inlet).viscosity(), "ISO 2533:1975, eq. (22)")));
        origin.ifPresent(said -> inputs.addAll(said.inputs()));
        trace.step(new Trace.Step(Figures.PASSAGE_DROP.id(), flow.passage(),
                origin.map(PassageKind.Origin::relation).orElse(Relations.UNSAID), flow.drop(), inputs));
    }

    private Trace.Term pressure(String bay) {
        return term("pressure in " + bay, QuantityKind.PRESSURE, reading.point().bay(bay).orElseThrow().pressure(),
                bay.equals(Bay.OUTSIDE) ? "zero by definition" : Figures.BAY_PRESSURE.id());
    }

    private void bay(OperatingPoint.BayState bay) {
        if (!bay.bay().equals(Bay.OUTSIDE)) {
            List<Trace.Term> flows = new ArrayList<>();
            List<Trace.Term> buoyancy = new ArrayList<>();
            for (OperatingPoint.PassageFlow flow : reading.point().passages()) {
                if (reading.passage(flow).from().equals(bay.bay()) || reading.passage(flow).to().equals(bay.bay())) {
                    flows.add(term("flow of " + flow.passage(), QuantityKind.FLOW, flow.flow(), "passage " + flow.passage()));
                    buoyancy(flow).ifPresent(buoyancy::add);
                }
            }
            flows.addAll(buoyancy);
            trace.step(new Trace.Step(Figures.BAY_PRESSURE.id(), bay.bay(),
                    buoyancy.isEmpty() ? Relations.NETWORK : Relations.NETWORK_STACK, bay.pressure(), flows));
        }
    }

    private void whole() {
        double density = reading.outside().density();
        double specificHeat = reading.outside().specificHeat();
        Trace.Term outside = term("density outside", QuantityKind.DENSITY, density, DENSITY);
        Trace.Term heat = term("heat", QuantityKind.POWER, reading.heat(), "heat sources, " + condition);
        Trace.Term cp = term("specific heat in J/(kg K)", QuantityKind.NUMBER, specificHeat, "ASHRAE Fundamentals 2017, ch. 1");
        step(Figures.TOTAL_FLOW.id(), "", Relations.INTAKE, reading.intake() / density,
                term("mass flow from outside", QuantityKind.MASS_FLOW, reading.intake(), Figures.PASSAGE_FLOW.id()), outside);
        reading.rise().ifPresent(rise -> step(Figures.AIR_RISE.id(), "", Relations.AIR_RISE, rise, heat,
                term("mass flow from outside", QuantityKind.MASS_FLOW, reading.intake(), Figures.TOTAL_FLOW.id()), cp));
        OptionalDouble allowed = reading.allowedRise();
        reading.flowNeeded().ifPresent(flow -> step(Figures.FLOW_NEEDED.id(), "", Relations.FLOW_NEEDED, flow, heat, outside, cp,
                term("allowed rise", QuantityKind.TEMPERATURE_DIFFERENCE, allowed.orElseThrow(), "requirements")));
        reading.pressureAvailable().ifPresent(this::available);
    }

    private void available(double pressure) {
        OperatingPoint.BankPoint bank = reading.point().banks().getFirst();
        String from = reading.model().passage(bank.bank()).from();
        List<Trace.Term> inputs = new ArrayList<>(List.of(
                term("flow needed", QuantityKind.FLOW, reading.flowNeeded().orElseThrow(), Figures.FLOW_NEEDED.id()),
                density(Bay.OUTSIDE)));
        if (!reading.isAsOutside(from)) {
            inputs.add(density(from));
            inputs.add(term("flow needed at the inlet, of the same mass", QuantityKind.FLOW,
                    reading.inletFlowNeeded().orElseThrow(), Figures.FLOW_NEEDED.id()));
        }
        trace.step(new Trace.Step(Figures.PRESSURE_AVAILABLE.id(), bank.bank(), Relations.FAN_LAWS, pressure, inputs));
    }
}
