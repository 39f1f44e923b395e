package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.Amount;
import tramontane.analysis.Analysis;
import tramontane.analysis.Better;
import tramontane.analysis.Cases;
import tramontane.analysis.Engine;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Input;
import tramontane.analysis.Needs;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Overview;
import tramontane.analysis.Relation;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.analysis.Severity;
import tramontane.analysis.Table;
import tramontane.analysis.Trace;
import tramontane.drive.DriveState;
import tramontane.drive.EnergyUse;
import tramontane.drive.Supplies;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.MissionPhase;
import tramontane.model.Quantity;
import tramontane.physics.units.QuantityKind;

/** Energy and cost of a year, and what speed control saves of them; in noise and life what others say. */
@Component(service = Analysis.class)
public final class EnergyAnalysis implements Analysis<EnergyUse> {

    static final FigureKind YEAR = new FigureKind("drive.energy", "energy in a year", QuantityKind.ENERGY, Better.LOWER,
            "What all movers take in a year, losses of their supplies included.");
    static final FigureKind FULL = new FigureKind("drive.energy.full", "energy at full speed", QuantityKind.ENERGY, Better.LOWER,
            "The same with all banks at full speed.");
    static final FigureKind SAVED = new FigureKind("drive.energy.saved", "energy saved", QuantityKind.ENERGY, Better.HIGHER,
            "What speed control saves of the energy at full speed.");
    static final FigureKind COST = new FigureKind("drive.cost", "cost in a year", QuantityKind.NUMBER, Better.LOWER,
            "What the energy of a year costs, in the currency of the design.");
    static final FigureKind COST_SAVED = new FigureKind("drive.cost.saved", "cost saved", QuantityKind.NUMBER, Better.HIGHER,
            "What speed control saves of the cost at full speed, in the currency of the design.");

    static final Relation SUM = new Relation("energy in a year", "E = Σ P t", "definition", "P steady through each phase");
    static final Relation DIFFERENCE = new Relation("energy saved", "E_full - E", "definition", "");
    static final Relation PRICE = new Relation("cost", "C = c E", "definition", "one price the year through");

    /** Figures of other analyses that speed control changes: noise at a listener, and life. */
    static final String NOISE = "acoustics.level";
    static final String LIFE = "reliability.life";
    private static final double HOURS_OF_A_YEAR = 8784;

    private final Decoding decoding = new Decoding();

    @Override
    public String id() {
        return "drive.energy";
    }

    @Override
    public String label() {
        return "energy";
    }

    @Override
    public Scope scope() {
        return Scope.DESIGN;
    }

    @Override
    public Class<EnergyUse> gives() {
        return EnergyUse.class;
    }

    @Override
    public Needs needs() {
        return Needs.results(DriveState.class, OperatingPoint.class);
    }

    @Override
    public List<FigureKind> figures() {
        return List.of(YEAR, FULL, SAVED, COST, COST_SAVED);
    }

    /** A phase with how its cases are asked about. */
    private record Phase(EnergyUse.Phase use, Optional<Condition> now, Optional<Condition> full) {
    }

    @Override
    public Result<EnergyUse> run(Input input, Run run) {
        Design design = input.design();
        Map<String, DriveState> states = input.results(DriveState.class);
        Supplies supplies = decoding.supplies(design);
        if (states.values().stream().allMatch(state -> state.banks().isEmpty())) {
            return Result.of(new EnergyUse(List.of(), supplies.price(), supplies.currency()));
        }
        if (design.mission().isEmpty()) {
            return Result.of(new EnergyUse(List.of(), supplies.price(), supplies.currency())).with(Finding.of(Severity.NOTE, "",
                    "the energy of a year is not computed: the design has no mission").remedy("state how long each condition lasts in a year"));
        }
        Design uncontrolled = design.withControlLaws(List.of());
        List<Phase> phases = new ArrayList<>();
        for (int i = 0; i < design.mission().size(); i++) {
            run.check();
            run.progress(i / (double) design.mission().size(), design.mission().get(i).condition());
            phases.add(phase(design, uncontrolled, design.mission().get(i), states, run));
        }
        EnergyUse use = new EnergyUse(phases.stream().map(Phase::use).toList(), supplies.price(), supplies.currency());
        Result<EnergyUse> result = new Result<>(Optional.of(use), figures(use, run), findings(design, use, states))
                .with(new Overview(table(use), List.of(YEAR.id(), FULL.id(), SAVED.id(), COST.id(), COST_SAVED.id())));
        Optional<Overview> others = others(design, uncontrolled, phases, run);
        return others.isPresent() ? result.with(others.get()) : result;
    }

    private Phase phase(Design design, Design uncontrolled, MissionPhase phase, Map<String, DriveState> states, Run run) {
        List<Engine.Case> cases = Cases.of(design, Set.of(phase.condition())).of(phase.condition());
        List<Optional<Double>> now = cases.stream().map(each -> Optional.ofNullable(states.get(each.concrete().id()))
                .flatMap(DriveState::power)).toList();
        List<Optional<Double>> full = new ArrayList<>();
        for (Engine.Case each : cases) {
            Condition fast = each.concrete().withSpeed(Quantity.of(1));
            full.add(run.ask(uncontrolled, fast, DriveState.class).flatMap(DriveState::power));
        }
        return new Phase(new EnergyUse.Phase(phase.condition(), phase.timePerYear().si(), mean(now), mean(full)),
                cases.stream().findFirst().map(Engine.Case::concrete), cases.stream().findFirst().map(each -> each.concrete()
                        .withSpeed(Quantity.of(1))));
    }

    private static Optional<Double> mean(List<Optional<Double>> all) {
        return all.isEmpty() || all.stream().anyMatch(Optional::isEmpty) ? Optional.empty()
                : Optional.of(all.stream().mapToDouble(Optional::get).average().orElseThrow());
    }

    private static List<Figure> figures(EnergyUse use, Run run) {
        List<Figure> figures = new ArrayList<>();
        use.energy().ifPresent(energy -> {
            figures.add(Figure.of(YEAR, "", energy));
            use.cost(energy).ifPresent(cost -> figures.add(Figure.of(COST, "", cost)));
            step(run.trace(), YEAR, SUM, energy, terms(use, false));
            use.cost(energy).ifPresent(cost -> step(run.trace(), COST, PRICE, cost, price(use, energy, YEAR)));
        });
        use.fullEnergy().ifPresent(full -> {
            figures.add(Figure.of(FULL, "", full));
            step(run.trace(), FULL, SUM, full, terms(use, true));
            use.energy().ifPresent(energy -> {
                figures.add(Figure.of(SAVED, "", saved(full, energy)));
                step(run.trace(), SAVED, DIFFERENCE, saved(full, energy), List.of(new Trace.Term("energy at full speed E_full",
                        QuantityKind.ENERGY, full, FULL.id()),
                        new Trace.Term("energy in a year E", QuantityKind.ENERGY, energy, YEAR.id())));
                use.cost(saved(full, energy)).ifPresent(saved -> {
                    figures.add(Figure.of(COST_SAVED, "", saved));
                    step(run.trace(), COST_SAVED, PRICE, saved, price(use, saved(full, energy), SAVED));
                });
            });
        });
        return figures;
    }

    /** What is saved, but for what is rounding. */
    private static double saved(double full, double energy) {
        return Math.abs(full - energy) <= 1e-9 * full ? 0 : full - energy;
    }

    private static List<Trace.Term> terms(EnergyUse use, boolean full) {
        List<Trace.Term> terms = new ArrayList<>();
        for (EnergyUse.Phase phase : use.phases()) {
            terms.add(new Trace.Term("power in " + phase.condition() + (full ? " at full speed" : ""), QuantityKind.POWER,
                    (full ? phase.full() : phase.power()).orElse(0.0), full ? "what if, without control" : "drive.power"));
            terms.add(new Trace.Term("time in " + phase.condition(), QuantityKind.TIME, phase.time(), "mission"));
        }
        return terms;
    }

    private static List<Trace.Term> price(EnergyUse use, double energy, FigureKind from) {
        return List.of(new Trace.Term("price of a kilowatt-hour c", QuantityKind.NUMBER, use.price().orElse(0.0), "drive section of the design"),
                new Trace.Term("energy E", QuantityKind.ENERGY, energy, from.id()));
    }

    private static void step(Trace trace, FigureKind kind, Relation relation, double value, List<Trace.Term> terms) {
        if (trace.recording()) {
            trace.step(new Trace.Step(kind.id(), "", relation, value, terms));
        }
    }

    private static List<Finding> findings(Design design, EnergyUse use, Map<String, DriveState> states) {
        List<Finding> findings = new ArrayList<>();
        List<String> unknown = use.phases().stream().filter(phase -> phase.power().isEmpty()).map(EnergyUse.Phase::condition).toList();
        if (!unknown.isEmpty()) {
            List<String> silent = states.values().stream().flatMap(state -> state.banks().stream()).filter(bank -> bank.power().isEmpty())
                    .map(DriveState.BankFeed::bank).distinct().toList();
            findings.add(Finding.of(Severity.NOT_JUDGED, "", "the energy of a year is not known: nothing says what the movers take in "
                    + String.join(", ", unknown) + (silent.isEmpty() ? "" : ", those of " + String.join(", ", silent)))
                    .remedy("give the power with the curves of the part, or its ratedPower"));
        }
        double hours = use.phases().stream().mapToDouble(EnergyUse.Phase::time).sum() / 3600;
        if (hours > HOURS_OF_A_YEAR) {
            findings.add(Finding.caution("", "the mission lasts ", new Amount(hours * 3600, QuantityKind.TIME), ", longer than a year")
                    .remedy("correct the times of its phases"));
        }
        return findings;
    }

    private static Table table(EnergyUse use) {
        boolean priced = use.price().isPresent();
        List<Table.Column> columns = new ArrayList<>(List.of(new Table.Column("condition", false), new Table.Column("time in a year", true),
                new Table.Column("power", true), new Table.Column("at full speed", true), new Table.Column("energy", true),
                        new Table.Column("saved", true)));
        if (priced) {
            String money = use.currency().isEmpty() ? "" : " " + use.currency();
            columns.add(new Table.Column("cost" + money, true));
            columns.add(new Table.Column("saved" + money, true));
        }
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (EnergyUse.Phase phase : use.phases()) {
            Optional<Double> energy = phase.power().map(watts -> watts * phase.time());
            Optional<Double> saved = energy.flatMap(some -> phase.full().map(watts -> saved(watts * phase.time(), some)));
            rows.add(row(phase.condition(), Optional.of(phase.time()), phase.power(), phase.full(), energy, saved, use));
        }
        double time = use.phases().stream().mapToDouble(EnergyUse.Phase::time).sum();
        Optional<Double> saved = use.energy().flatMap(energy -> use.fullEnergy().map(full -> saved(full, energy)));
        rows.add(row("year", Optional.of(time), Optional.empty(), Optional.empty(), use.energy(), saved, use));
        return new Table("Energy", columns, rows);
    }

    private static List<Table.Cell> row(String name, Optional<Double> time, Optional<Double> power, Optional<Double> full, Optional<Double> energy,
            Optional<Double> saved, EnergyUse use) {
        List<Table.Cell> row = new ArrayList<>(List.of(new Table.Words(name), cell(time, QuantityKind.TIME), cell(power, QuantityKind.POWER),
                cell(full, QuantityKind.POWER), cell(energy, QuantityKind.ENERGY), cell(saved, QuantityKind.ENERGY)));
        if (use.price().isPresent()) {
            row.add(cell(energy.flatMap(use::cost), QuantityKind.NUMBER));
            row.add(cell(saved.flatMap(use::cost), QuantityKind.NUMBER));
        }
        return row;
    }

    private static Table.Cell cell(Optional<Double> value, QuantityKind kind) {
        return value.<Table.Cell>map(number -> new Amount(number, kind)).orElse(new Table.Empty());
    }

    /** What control changes in noise and life, where something loaded tells them. */
    private static Optional<Overview> others(Design design, Design uncontrolled, List<Phase> phases, Run run) {
        List<Table.Column> columns = List.of(new Table.Column("condition", false), new Table.Column("figure", false),
                new Table.Column("place", false),
                new Table.Column("with control", true), new Table.Column("at full speed", true));
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (Phase phase : phases) {
            for (String id : List.of(NOISE, LIFE)) {
                if (phase.now().isEmpty()) {
                    continue;
                }
                Map<String, Figure> now = byPlace(run.figures(design, phase.now().get(), id));
                Map<String, Figure> full = byPlace(run.figures(uncontrolled, phase.full().orElseThrow(), id));
                now.forEach((place, figure) -> rows.add(List.of(new Table.Words(phase.use().condition()), new Table.Words(figure.kind().label()),
                        new Table.Words(place), new Amount(figure.value(), figure.kind().quantity()), full.containsKey(place)
                                ? new Amount(full.get(place).value(), figure.kind().quantity()) : new Table.Empty())));
            }
        }
        return rows.isEmpty() ? Optional.empty() : Optional.of(new Overview(new Table("What control changes in noise and life", columns,
                rows), List.of()));
    }

    private static Map<String, Figure> byPlace(List<Figure> figures) {
        Map<String, Figure> all = new LinkedHashMap<>();
        figures.forEach(figure -> all.put(figure.place(), figure));
        return all;
    }
}
