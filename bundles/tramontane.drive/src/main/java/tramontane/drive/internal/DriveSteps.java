package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Relation;
import tramontane.analysis.Trace;
import tramontane.drive.DriveState;
import tramontane.drive.Supplies;
import tramontane.model.Condition;
import tramontane.physics.units.QuantityKind;

/** Says where the figures of the drive come from. */
final class DriveSteps {

    private final Trace trace;
    private final Feeds feeds;
    private final Condition condition;

    DriveSteps(Trace trace, Feeds feeds, Condition condition) {
        this.trace = trace;
        this.feeds = feeds;
        this.condition = condition;
    }

    void of(List<Feeds.Bank> banks, DriveState state) {
        banks.forEach(this::bank);
        for (DriveState.Load load : state.supplies()) {
            supply(feeds.supplies().source(load.supply()).orElseThrow(), load, Feeds.of(feeds.supplies().source(load.supply()).orElseThrow(), banks));
        }
        state.power().ifPresent(power -> step(Figures.POWER, "", Figures.TAKEN, power, banks.stream().flatMap(bank ->
                List.of(new Trace.Term("power of " + bank.passage().id() + " P_bank", QuantityKind.POWER, bank.feed().power().orElse(0.0),
                        "airflow.bank.power" + Trace.AT + bank.passage().id()),
                        new Trace.Term("that with what wires and resistors lose", QuantityKind.POWER, bank.feed().drawn().orElse(0.0), "bank "
                                + bank.passage().id()),
                        new Trace.Term("efficiency of its supply", QuantityKind.FRACTION, DriveAnalysis.efficiency(feeds, bank),
                                bank.drive().supply().map(name -> "supply " + name).orElse("none stated"))).stream()).toList()));
    }

    private void bank(Feeds.Bank bank) {
        String id = bank.passage().id();
        String part = "air mover " + bank.mover().id();
        DriveState.BankFeed feed = bank.feed();
        step(Figures.SETTING, id, Figures.GIVEN, feed.feeding().setting(), List.of());
        Optional<Double> power = feed.power();
        Wiring wiring = Wiring.of(bank.drive(), bank.part().supply().current());
        feed.current().ifPresent(amps -> {
            List<Trace.Term> inputs = new ArrayList<>();
            boolean byPower = power.isPresent() && feed.terminals().isPresent();
            if (byPower) {
                inputs.add(new Trace.Term("power of a mover P", QuantityKind.POWER, power.get() / feed.running(),
                        "airflow.bank.power" + Trace.AT + id + ", over " + feed.running()));
                inputs.add(new Trace.Term("voltage U", QuantityKind.VOLTAGE, feed.terminals().get(), Figures.VOLTAGE.id()));
                bank.part().supply().powerFactor().ifPresent(factor -> inputs.add(new Trace.Term("power factor cosφ", QuantityKind.FRACTION,
                        factor, part)));
            } else {
                bank.part().supply().rated().ifPresent(rated -> inputs.add(new Trace.Term("rated current", QuantityKind.CURRENT, rated, part)));
                inputs.add(new Trace.Term("speed n", QuantityKind.ROTATIONAL_SPEED, bank.point().speed(), "airflow.bank.speed"));
                inputs.add(new Trace.Term("density ρ", QuantityKind.DENSITY, bank.point().density(), "air at the inlet"));
            }
            step(Figures.CURRENT, id, byPower ? Figures.BY_POWER : Figures.BY_LOAD, amps, inputs);
        });
        feed.terminals().ifPresent(volts -> {
            List<Trace.Term> inputs = new ArrayList<>();
            feed.feeding().sent().ifPresent(sent -> inputs.add(new Trace.Term("voltage sent U_sent", QuantityKind.VOLTAGE, sent, from(bank))));
            feed.current().ifPresent(amps -> inputs.add(new Trace.Term("current I", QuantityKind.CURRENT, amps, Figures.CURRENT.id())));
            inputs.add(new Trace.Term("resistance of its own R_own", QuantityKind.RESISTANCE, wiring.perMover(), "bank " + id));
            inputs.add(new Trace.Term("shared resistance R_shared", QuantityKind.RESISTANCE, wiring.together(), "bank " + id));
            inputs.add(new Trace.Term("movers N", QuantityKind.COUNT, feed.running(), "condition " + condition.id()));
            step(Figures.VOLTAGE, id, Figures.OHM, volts, inputs);
            DriveAnalysis.lost(feed).ifPresent(share -> step(Figures.DROP, id, Figures.SHARE, share, List.of(
                    new Trace.Term("voltage sent U_sent", QuantityKind.VOLTAGE, feed.feeding().sent().orElse(volts), from(bank)),
                    new Trace.Term("voltage U", QuantityKind.VOLTAGE, volts, Figures.VOLTAGE.id()))));
        });
        feed.pulses().ifPresent(hertz -> step(Figures.PULSES, id, Figures.TACHO, hertz, List.of(
                new Trace.Term("pulses per revolution z", QuantityKind.COUNT, bank.part().signal().pulses(), part),
                new Trace.Term("speed n", QuantityKind.ROTATIONAL_SPEED, bank.point().speed(), "airflow.bank.speed"))));
    }

    private String from(Feeds.Bank bank) {
        boolean stated = condition.supplyVoltage().isPresent() || bank.drive().supply().flatMap(feeds.levels()::of)
                .flatMap(level -> level.voltage()).isPresent();
        String source = stated ? "condition " + condition.id() : bank.drive().supply().map(name -> "supply " + name).orElse("air mover "
                + bank.mover().id());
        return source + (Banks.control(bank.part(), bank.drive()).onSupply() ? ", times the setting of " + Math.round(1000 * bank.feeding()
                .setting()) / 10.0 + " %" : "");
    }

    private void supply(Supplies.Source source, DriveState.Load load, List<Feeds.Bank> banks) {
        List<Trace.Term> currents = new ArrayList<>();
        List<Trace.Term> powers = new ArrayList<>();
        for (Feeds.Bank bank : banks) {
            String id = bank.passage().id();
            currents.add(new Trace.Term("movers running in " + id, QuantityKind.COUNT, bank.feed().running(), "condition " + condition.id()));
            bank.feed().current().ifPresent(amps -> currents.add(new Trace.Term("current of each", QuantityKind.CURRENT, amps,
                    Figures.CURRENT.id() + Trace.AT + id)));
            if (bank.feed().locked() > 0) {
                currents.add(new Trace.Term("movers held in " + id, QuantityKind.COUNT, bank.feed().locked(), "condition " + condition.id()));
                bank.part().supply().locked().ifPresent(amps -> currents.add(new Trace.Term("current of each held", QuantityKind.CURRENT, amps,
                        "air mover " + bank.mover().id())));
            }
            bank.feed().power().ifPresent(watts -> powers.add(new Trace.Term("power of " + id + " P_bank", QuantityKind.POWER, watts,
                    "airflow.bank.power" + Trace.AT + id)));
            bank.feed().drawn().ifPresent(watts -> powers.add(new Trace.Term("that with what wires and resistors lose", QuantityKind.POWER, watts,
                    "bank " + id)));
        }
        powers.add(new Trace.Term("efficiency η", QuantityKind.FRACTION, source.efficiency(), "supply " + source.id()));
        load.running().ifPresent(amps -> step(Figures.RUNNING, source.id(), Figures.SUM, amps, currents));
        List<Trace.Term> ends = new ArrayList<>(currents);
        ends.add(new Trace.Term("supply may be lower by", QuantityKind.FRACTION, source.below(), "supply " + source.id()));
        ends.add(new Trace.Term("supply may be higher by", QuantityKind.FRACTION, source.above(), "supply " + source.id()));
        load.fullest().ifPresent(amps -> step(Figures.FULLEST, source.id(), Figures.ALL_OUT, amps, ends));
        List<Trace.Term> starts = new ArrayList<>(currents);
        List<Trace.Term> peaks = new ArrayList<>(currents);
        banks.forEach(bank -> {
            bank.starting().ifPresent(amps -> starts.add(new Trace.Term("starting current of " + bank.mover().id(), QuantityKind.CURRENT, amps,
                    "air mover " + bank.mover().id())));
            bank.part().supply().inrush().ifPresent(amps -> peaks.add(new Trace.Term("inrush of " + bank.mover().id(), QuantityKind.CURRENT, amps,
                    "air mover " + bank.mover().id())));
            starts.add(new Trace.Term("interval", QuantityKind.TIME, bank.drive().interval(), "bank " + bank.passage().id()));
            peaks.add(new Trace.Term("interval", QuantityKind.TIME, bank.drive().interval(), "bank " + bank.passage().id()));
        });
        load.starting().ifPresent(amps -> step(Figures.STARTING, source.id(), Figures.START, amps, starts));
        load.inrush().ifPresent(amps -> step(Figures.INRUSH, source.id(), Figures.PEAK, amps, peaks));
        DriveAnalysis.share(load).ifPresent(share -> step(Figures.LOAD, source.id(), Figures.OVER, share, List.of(
                new Trace.Term("current I", QuantityKind.CURRENT, load.running().orElseThrow(), Figures.RUNNING.id()),
                new Trace.Term("most current I_most", QuantityKind.CURRENT, source.most().orElseThrow(), "supply " + source.id()),
                new Trace.Term("what is left of it", QuantityKind.FRACTION, feeds.derating(source), "supply " + source.id()),
                new Trace.Term("temperature T", QuantityKind.TEMPERATURE, feeds.temperature(source), source.place().orElse("outside")))));
        load.power().ifPresent(watts -> step(Figures.INPUT, source.id(), Figures.TAKEN, watts, powers));
    }

    private void step(FigureKind figure, String place, Relation relation, double value, List<Trace.Term> inputs) {
        trace.step(new Trace.Step(figure.id(), place, relation, value, inputs));
    }
}
