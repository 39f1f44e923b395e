package tramontane.thermal.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.Amount;
import tramontane.analysis.Analysis;
import tramontane.analysis.Cases;
import tramontane.analysis.Engine;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Input;
import tramontane.analysis.LinkKind;
import tramontane.analysis.Needs;
import tramontane.analysis.Overview;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.analysis.Table;
import tramontane.model.Design;
import tramontane.model.HeatSource;
import tramontane.physics.units.QuantityKind;
import tramontane.thermal.Budget;
import tramontane.thermal.PartState;
import tramontane.thermal.Temperatures;
import tramontane.thermal.ThermalModels;

/** The temperature budget: each step from outside to the junctions in kelvin, in every condition, the worst marked. */
@Component(service = Analysis.class)
public final class BudgetAnalysis implements Analysis<Budget> {

    /** Margins that differ less than this are alike, K. */
    private static final double ALIKE = 1e-6;
    private static final String MARK = "> ";

    @Override
    public String id() {
        return "thermal.budget";
    }

    @Override
    public String label() {
        return "temperature budget";
    }

    @Override
    public Scope scope() {
        return Scope.DESIGN;
    }

    @Override
    public Class<Budget> gives() {
        return Budget.class;
    }

    @Override
    public Needs needs() {
        return Needs.results(Temperatures.class);
    }

    @Override
    public List<FigureKind> figures() {
        return List.of();
    }

    @Override
    public Design reads(Design design) {
        return ThermalModels.reads(design, List.of());
    }

    /** One line of the table. */
    private record Line(String condition, String inCase, Temperatures in, PartState part) {
        Optional<Double> margin() {
            return in.margin(part);
        }

        /** By which the worst of several is found: the margin, or how cold it is where there is no limit. */
        double room() {
            return margin().orElse(-part.junction().orElseThrow());
        }
    }

    @Override
    public Result<Budget> run(Input input, Run run) {
        Map<String, Temperatures> temperatures = input.results(Temperatures.class);
        List<Engine.Case> cases = Cases.of(input.design(), Set.of()).list();
        List<Line> lines = new ArrayList<>();
        for (HeatSource source : input.design().heatSources()) {
            Map<String, Line> worst = new LinkedHashMap<>();
            for (Engine.Case each : cases) {
                Optional.ofNullable(temperatures.get(each.concrete().id())).ifPresent(in -> in.part(source.id())
                        .filter(part -> part.fault().isEmpty()).ifPresent(part -> worst.merge(each.declared(),
                                new Line(each.declared(), each.concrete().id(), in, part), (a, b) -> b.room() < a.room() - ALIKE ? b : a)));
            }
            lines.addAll(worst.values());
        }
        if (lines.isEmpty()) {
            return Result.of(new Budget(List.of()));
        }
        Optional<Line> least = lines.stream().filter(line -> line.margin().isPresent())
                .reduce((a, b) -> b.room() < a.room() - ALIKE ? b : a);
        List<Budget.Row> rows = lines.stream().map(line -> new Budget.Row(line.part().source(), line.inCase(),
                least.filter(line::equals).isPresent())).toList();
        return Result.of(new Budget(rows)).with(new Overview(table(lines, rows, temperatures.size() > 1), shown()));
    }

    private static List<String> shown() {
        List<String> shown = new ArrayList<>(List.of(Figures.JUNCTION.id(), Figures.ARRIVING.id(), Figures.ALONG.id(), Figures.LOCAL.id()));
        Figures.STEPS.values().forEach(kind -> shown.add(kind.id()));
        return shown;
    }

    /** Short, so that all of it stands side by side. */
    private static String heading(LinkKind.Step step) {
        return switch (step) {
            case SURFACE -> "surface";
            case SPREADING -> "spread";
            case INTERFACE -> "interface";
            case PACKAGE -> "case";
        };
    }

    private static Table table(List<Line> lines, List<Budget.Row> rows, boolean several) {
        List<LinkKind.Step> steps = new ArrayList<>();
        for (LinkKind.Step step : List.of(LinkKind.Step.SURFACE, LinkKind.Step.SPREADING, LinkKind.Step.INTERFACE, LinkKind.Step.PACKAGE)) {
            if (lines.stream().flatMap(line -> line.part().links().stream()).anyMatch(link -> link.step() == step)) {
                steps.add(step);
            }
        }
        List<Table.Column> columns = new ArrayList<>(List.of(new Table.Column("heat source", false)));
        if (several) {
            columns.add(new Table.Column("condition", false));
        }
        columns.add(new Table.Column("outside", true));
        columns.add(new Table.Column("air", true));
        steps.forEach(step -> columns.add(new Table.Column(heading(step), true)));
        columns.add(new Table.Column("junction", true));
        columns.add(new Table.Column("margin", true));
        List<List<Table.Cell>> cells = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            cells.add(row(lines.get(i), rows.get(i), steps, several));
        }
        boolean marked = rows.stream().anyMatch(Budget.Row::worst);
        return new Table("Temperature budget: kelvin from outside to junction" + (marked && rows.size() > 1 ? " (" + MARK + "the worst)" : ""),
                columns, cells);
    }

    private static List<Table.Cell> row(Line line, Budget.Row row, List<LinkKind.Step> steps, boolean several) {
        PartState part = line.part();
        double outside = line.in().outside();
        String mark = row.worst() ? MARK : "";
        List<Table.Cell> cells = new ArrayList<>(List.of(new Table.Words((several ? "" : mark) + part.source())));
        if (several) {
            cells.add(new Table.Words(mark + line.condition()));
        }
        cells.add(temperature(outside));
        cells.add(kelvin(part.air() - outside));
        for (LinkKind.Step step : steps) {
            cells.add(part.links().stream().anyMatch(link -> link.step() == step) ? kelvin(part.rise(step)) : new Table.Empty());
        }
        cells.add(temperature(part.junction().orElseThrow()));
        cells.add(line.margin().<Table.Cell>map(BudgetAnalysis::kelvin).orElse(new Table.Empty()));
        return cells;
    }

    private static Table.Cell temperature(double kelvin) {
        return new Amount(kelvin, QuantityKind.TEMPERATURE);
    }

    private static Table.Cell kelvin(double difference) {
        return new Amount(difference, QuantityKind.TEMPERATURE_DIFFERENCE);
    }
}
