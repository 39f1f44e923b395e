package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.airflow.AirPathModel;
import tramontane.airflow.AirPathSolution;
import tramontane.airflow.AirPathSolver;
import tramontane.airflow.Feed;
import tramontane.analysis.Figure;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.SpeedLaws;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FormReader;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.physics.Air;
import tramontane.physics.AirState;

/**
 * What a solved air path says: its figures, and what else findings and traces need.
 *
 * @param design   the design
 * @param model    the air path in its condition
 * @param solver   the air path at its speeds
 * @param laws     the loaded speed laws, highest ranked first
 * @param feeds    what banks are fed with that are not fed as the condition says
 * @param speeds   speed of each bank's movers, rad/s
 * @param solution how it works; with an operating point
 * @param followed whether the solution was come to from another one and not from standstill
 * @param factors  factor on the pressure of banks and passages at equal flow, by id, where it is not as stated
 */
record AirflowReading(Design design, AirPathModel model, AirPathSolver solver, List<SpeedLaw> laws,
        Map<String, Feed> feeds, Map<String, Double> speeds, AirPathSolution solution, boolean followed, Map<String, Double> factors) {

    /** The least that a distance to the stall region is said to be. */
    private static final double DEEP_IN_STALL = -100;

    OperatingPoint point() {
        return solution.point().orElseThrow();
    }

    Condition condition() {
        return model.condition();
    }

    AirState outside() {
        return model.outside();
    }

    /** The same air path with factors on pressures, and how it works then. */
    AirflowReading with(AirPathSolver other, AirPathSolution there, Map<String, Double> pressure) {
        return new AirflowReading(design, model, other, laws, feeds, speeds, there, followed, pressure);
    }

    /** What a bank is fed with. */
    Feed feed(String bank) {
        Feed feed = feeds.get(bank);
        return feed == null ? model.feed(bank) : feed;
    }

    /** The same, for a speed law. */
    SpeedLaw.Supply supply(String bank) {
        return model.supply(bank, feed(bank));
    }

    /** The speed law that says how fast the movers of a bank turn; empty where none knows them. */
    Optional<SpeedLaw> law(String bank) {
        return SpeedLaws.answering(laws, supply(bank));
    }

    /** Temperature of each bay, K. */
    double[] temperatures() {
        return model.bays().stream().mapToDouble(bay -> point().bay(bay.id()).orElseThrow().temperature()).toArray();
    }

    /** The air in a bay, or outside. */
    AirState air(String bay) {
        return isAsOutside(bay) ? outside() : outside().heatedTo(point().bay(bay).orElseThrow().temperature());
    }

    /** Whether the air in a bay is that outside. */
    boolean isAsOutside(String bay) {
        return point().bay(bay).orElseThrow().temperature() == outside().temperature();
    }

    /** The bay from which air comes into a passage; its first one where none flows. */
    String inlet(OperatingPoint.PassageFlow flow) {
        return flow.massFlow() >= 0 ? passage(flow).from() : passage(flow).to();
    }

    /** The bay from which air comes into a bank. */
    String inlet(OperatingPoint.BankPoint bank) {
        return inlet(point().passage(bank.bank()).orElseThrow());
    }

    /** A bank as it was read for this condition. */
    Bank bank(String id) {
        Passage passage = model.passage(id);
        return Bank.of(FormReader.read(new BankKind().form(), passage.parameters(), "", new ArrayList<>()),
                new PassageKind.Setting(design, condition(), passage));
    }

    /** The passage of a flow. */
    Passage passage(OperatingPoint.PassageFlow flow) {
        return model.passage(flow.passage());
    }

    static boolean fromOutsideToOutside(Passage passage) {
        return passage.from().equals(Bay.OUTSIDE) && passage.to().equals(Bay.OUTSIDE);
    }

    /**
     * Mass flow of all air that comes in from outside, kg/s. What comes back through a bank against its direction, because it
     * stands still or is overpowered, does not count: it cuts short to the banks that draw it.
     */
    double intake() {
        double sum = 0;
        for (OperatingPoint.PassageFlow flow : point().passages()) {
            Passage passage = passage(flow);
            if (fromOutsideToOutside(passage)) {
                sum += Math.abs(flow.massFlow());
            } else if (passage.from().equals(Bay.OUTSIDE)) {
                sum += Math.max(0, flow.massFlow());
            } else if (passage.to().equals(Bay.OUTSIDE) && !passage.isBank()) {
                sum += Math.max(0, -flow.massFlow());
            }
        }
        return sum;
    }

    /** Heat of all sources in this condition, W. */
    double heat() {
        return design.heatSources().stream().mapToDouble(condition()::heat).sum();
    }

    /** The smallest mean rise of the air that a requirement allows in this condition, K. */
    OptionalDouble allowedRise() {
        return design.requirements().stream().filter(requirement -> requirement.figure().equals(Figures.AIR_RISE.id()))
                .filter(requirement -> requirement.appliesIn(condition().id())).flatMap(requirement -> requirement.atMost().stream()).mapToDouble(Quantity::si)
                .filter(rise -> rise > 0).min();
    }

    /** Mean rise of the air, K. */
    OptionalDouble rise() {
        double intake = intake();
        return heat() > 0 && intake > 0 ? OptionalDouble.of(heat() / (intake * outside().specificHeat()))
                : OptionalDouble.empty();
    }

    /** Flow from outside that keeps the rise that is allowed, m³/s at the density outside. */
    OptionalDouble flowNeeded() {
        OptionalDouble allowed = allowedRise();
        return allowed.isPresent() && heat() > 0
                ? OptionalDouble.of(heat() / (outside().density() * outside().specificHeat() * allowed.getAsDouble()))
                : OptionalDouble.empty();
    }

    /**
     * The volume flow at the inlet of the only bank that is the flow needed, m³/s: the same mass of the air in the bay from which
     * the bank is to draw.
     */
    OptionalDouble inletFlowNeeded() {
        OptionalDouble needed = flowNeeded();
        if (needed.isEmpty() || point().banks().size() != 1 || !(point().banks().getFirst().speed() > 0)) {
            return OptionalDouble.empty();
        }
        String from = model.passage(point().banks().getFirst().bank()).from();
        return isAsOutside(from) ? needed : OptionalDouble.of(needed.getAsDouble() * outside().density() / air(from).density());
    }

    /** What the only bank still gives at the flow needed, Pa. */
    OptionalDouble pressureAvailable() {
        OptionalDouble needed = inletFlowNeeded();
        if (needed.isEmpty()) {
            return OptionalDouble.empty();
        }
        String bank = point().banks().getFirst().bank();
        AirState air = air(model.passage(bank).from());
        return solver.bankPressure(bank, needed.getAsDouble(), air.density(), air.viscosity());
    }

    /** Overall static efficiency; empty where no power is stated or no air power comes out. */
    static OptionalDouble efficiency(OperatingPoint.BankPoint bank) {
        double air = bank.flow() * bank.pressure();
        return bank.flow() > 0 && air > 0 && bank.power().isPresent() && bank.power().getAsDouble() > 0
                ? OptionalDouble.of(air / bank.power().getAsDouble()) : OptionalDouble.empty();
    }

    /** Flow of a mover at the pressure peak right of the dip of its curve, m³/s. */
    OptionalDouble peakFlow(OperatingPoint.BankPoint point) {
        return point.speed() > 0 ? bank(point.bank()).characteristic(point.speed()).peakFlow() : OptionalDouble.empty();
    }

    /**
     * Distance of the mover with the least flow to its pressure peak over its flow, (q - q_peak)/q; below 0 in the stall region,
     * and no less than {@link #DEEP_IN_STALL}. A curve that falls all the way has no stall region: 1, where a requirement asks.
     */
    OptionalDouble stallMargin(OperatingPoint.BankPoint point) {
        OptionalDouble peak = peakFlow(point);
        OptionalDouble least = point.movers().stream().filter(OperatingPoint.MoverPoint::running)
                .mapToDouble(OperatingPoint.MoverPoint::flow).min();
        if (least.isEmpty()) {
            return OptionalDouble.empty();
        }
        if (peak.isEmpty()) {
            return design.requirements().stream().anyMatch(requirement -> requirement.figure().equals(Figures.STALL_MARGIN.id()))
                    ? OptionalDouble.of(1) : OptionalDouble.empty();
        }
        return OptionalDouble.of(least.getAsDouble() > 0 ? Math.max(DEEP_IN_STALL,
                (least.getAsDouble() - peak.getAsDouble()) / least.getAsDouble()) : DEEP_IN_STALL);
    }

    /** Where its movers work best. */
    Optional<MoverCharacteristic.Best> best(OperatingPoint.BankPoint point) {
        return point.speed() > 0 ? bank(point.bank()).characteristic(point.speed()).bestEfficiency(point.density())
                .map(best -> new MoverCharacteristic.Best(best.flow(), best.efficiency() * factors.getOrDefault(point.bank(), 1.0)))
                : Optional.empty();
    }

    /** Share of the air that a bank draws that has been through it before; empty where there is none. */
    OptionalDouble drawnBack(OperatingPoint.BankPoint point) {
        OptionalDouble share = point.speed() > 0 ? Recirculation.of(point(), point.bank(), model::passage)
                : OptionalDouble.empty();
        return share.isPresent() && share.getAsDouble() > 1e-6 ? share : OptionalDouble.empty();
    }

    /** Leaks. */
    List<OperatingPoint.PassageFlow> gaps() {
        return point().passages().stream().filter(flow -> passage(flow).kind().equals(PassageKind.GAP)).toList();
    }

    /** Flow through gaps, kg/s: in from outside, out, or inside, whichever is most, so that no air counts twice. */
    double gapFlow() {
        double in = 0;
        double out = 0;
        double inside = 0;
        for (OperatingPoint.PassageFlow gap : gaps()) {
            Passage passage = passage(gap);
            boolean begins = passage.from().equals(Bay.OUTSIDE);
            if (begins == passage.to().equals(Bay.OUTSIDE)) {
                inside += begins ? 0 : Math.abs(gap.massFlow());
            } else if (begins == gap.massFlow() > 0) {
                in += Math.abs(gap.massFlow());
            } else {
                out += Math.abs(gap.massFlow());
            }
        }
        return Math.max(inside, Math.max(in, out));
    }

    /** Flow through gaps over that from outside. */
    OptionalDouble gapShare() {
        double intake = intake();
        return intake > 0 && !gaps().isEmpty() ? OptionalDouble.of(gapFlow() / intake) : OptionalDouble.empty();
    }

    /** Whether a passage is a filter. */
    boolean filters(Passage passage) {
        return passage.kind().equals(PassageKind.FILTER) || passage.kind().equals("measured resistance")
                && FormReader.read(new MeasuredResistanceKind().form(), passage.parameters(), "", new ArrayList<>()).on("filter");
    }

    /** All figures that do not ask what would be if. */
    List<Figure> figures() {
        List<Figure> figures = new ArrayList<>();
        for (OperatingPoint.BankPoint bank : point().banks()) {
            figures.add(Figure.of(Figures.BANK_FLOW, bank.bank(), bank.flow()));
            figures.add(Figure.of(Figures.BANK_STANDARD_FLOW, bank.bank(), bank.massFlow() / Air.STANDARD_DENSITY));
            figures.add(Figure.of(Figures.BANK_PRESSURE, bank.bank(), bank.pressure()));
            figures.add(Figure.of(Figures.BANK_SPEED, bank.bank(), bank.speed()));
            bank.power().ifPresent(power -> figures.add(Figure.of(Figures.BANK_POWER, bank.bank(), power)));
            efficiency(bank).ifPresent(eta -> figures.add(Figure.of(Figures.BANK_EFFICIENCY, bank.bank(), eta)));
            best(bank).ifPresent(best -> {
                figures.add(Figure.of(Figures.BEST_EFFICIENCY, bank.bank(), best.efficiency()));
                figures.add(Figure.of(Figures.BEST_FLOW, bank.bank(), best.flow()));
            });
            stallMargin(bank).ifPresent(margin -> figures.add(Figure.of(Figures.STALL_MARGIN, bank.bank(), margin)));
            drawnBack(bank).ifPresent(share -> figures.add(Figure.of(Figures.DRAWN_BACK, bank.bank(), share)));
        }
        for (OperatingPoint.PassageFlow flow : point().passages()) {
            if (!passage(flow).isBank()) {
                figures.add(Figure.of(Figures.PASSAGE_FLOW, flow.passage(), flow.flow()));
                figures.add(Figure.of(Figures.PASSAGE_DROP, flow.passage(), flow.drop()));
            }
        }
        for (OperatingPoint.BayState bay : point().bays()) {
            if (!bay.bay().equals(Bay.OUTSIDE)) {
                figures.add(Figure.of(Figures.BAY_PRESSURE, bay.bay(), bay.pressure()));
            }
        }
        figures.add(Figure.of(Figures.TOTAL_FLOW, "", intake() / outside().density()));
        gapShare().ifPresent(share -> figures.add(Figure.of(Figures.GAP_SHARE, "", share)));
        figures.add(Figure.of(Figures.AIR_DENSITY, "", outside().density()));
        rise().ifPresent(rise -> figures.add(Figure.of(Figures.AIR_RISE, "", rise)));
        flowNeeded().ifPresent(flow -> figures.add(Figure.of(Figures.FLOW_NEEDED, "", flow)));
        pressureAvailable().ifPresent(pressure -> figures.add(
                Figure.of(Figures.PRESSURE_AVAILABLE, point().banks().getFirst().bank(), pressure)));
        return figures;
    }
}
