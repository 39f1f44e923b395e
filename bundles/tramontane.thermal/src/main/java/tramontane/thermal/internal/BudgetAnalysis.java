package tramontane.thermal.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.Amount;
import tramontane.analysis.Analysis;
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
import tramontane.physics.units.QuantityKind;
import tramontane.thermal.Budget;
import tramontane.thermal.PartState;
import tramontane.thermal.Temperatures;

/** The temperature budget: each step from outside to the junctions in kelvin, in every condition, the worst marked. */
@Component(service = Analysis.class)
public final class BudgetAnalysis implements Analysis<Budget> {

    /** Margins that differ less than this are alike, K. */
    private static final double ALIKE = 1e-6;

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
        return Models.reads(design, java.util.Set.of());
    }

    /** One line of the table. */
    private record Line(String condition, Temperatures in, PartState part) {
        Optional<Double> margin() {
            return in.margin(part);
        }

        Optional<Temperatures.Span> span() {
            return Optional.ofNullable(in.junction().get(part.source())).filter(span -> span.high() - span.low() > ALIKE);
        }
    }

    @Override
    public Result<Budget> run(Input input, Run run) {
        Map<String, Temperatures> cases = input.results(Temperatures.class);
        List<Line> lines = new ArrayList<>();
        for (String source : input.design().heatSources().stream().map(each -> each.id()).toList()) {
            cases.forEach((id, in) -> in.part(source).filter(part -> part.fault().isEmpty()).ifPresent(part -> lines.add(new Line(id, in, part))));
        }
        if (lines.isEmpty()) {
            return Result.of(new Budget(List.of()));
        }
        Optional<Double> least = lines.stream().flatMap(line -> line.margin().stream()).min(Double::compare);
        List<Budget.Row> rows = new ArrayList<>();
        boolean marked = false;
        for (Line line : lines) {
            boolean worst = !marked && least.isPresent() && line.margin().filter(margin -> margin <= least.get() + ALIKE).isPresent();
            marked |= worst;
            rows.add(new Budget.Row(line.part().source(), line.condition(), worst));
        }
        return Result.of(new Budget(rows)).with(new Overview(table(lines, rows, cases.size() > 1), shown()));
    }

    private static List<String> shown() {
        List<String> shown = new ArrayList<>(List.of(Figures.JUNCTION.id(), Figures.MARGIN.id(), Figures.ARRIVING.id(), Figures.ALONG.id(),
                Figures.LOCAL.id()));
        Figures.STEPS.values().forEach(kind -> shown.add(kind.id()));
        return shown;
    }

    private static Table table(List<Line> lines, List<Budget.Row> rows, boolean several) {
        List<LinkKind.Step> steps = new ArrayList<>();
        for (LinkKind.Step step : List.of(LinkKind.Step.SURFACE, LinkKind.Step.SPREADING, LinkKind.Step.INTERFACE, LinkKind.Step.PACKAGE)) {
            if (lines.stream().flatMap(line -> line.part().links().stream()).anyMatch(link -> link.step() == step)) {
                steps.add(step);
            }
        }
        boolean bounded = lines.stream().anyMatch(line -> line.span().isPresent());
        List<Table.Column> columns = new ArrayList<>(List.of(new Table.Column("heat source", false)));
        if (several) {
            columns.add(new Table.Column("condition", false));
        }
        columns.add(new Table.Column("outside", true));
        columns.add(new Table.Column(Figures.ARRIVING.label(), true));
        columns.add(new Table.Column(Figures.ALONG.label(), true));
        steps.forEach(step -> columns.add(new Table.Column(step.label(), true)));
        columns.add(new Table.Column("junction", true));
        if (bounded) {
            columns.add(new Table.Column("bounds", true));
        }
        columns.add(new Table.Column("limit", true));
        columns.add(new Table.Column("margin", true));
        columns.add(new Table.Column("", false));
        List<List<Table.Cell>> cells = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            cells.add(row(lines.get(i), rows.get(i), steps, several, bounded));
        }
        return new Table("Temperature budget: kelvin from outside to junction", columns, cells);
    }

    private static List<Table.Cell> row(Line line, Budget.Row row, List<LinkKind.Step> steps, boolean several, boolean bounded) {
        PartState part = line.part();
        double outside = line.in().outside();
        List<Table.Cell> cells = new ArrayList<>(List.of(new Table.Words(part.source())));
        if (several) {
            cells.add(new Table.Words(line.condition()));
        }
        cells.add(temperature(outside));
        cells.add(kelvin(part.arriving() - outside));
        cells.add(kelvin(part.air() - part.arriving()));
        for (LinkKind.Step step : steps) {
            cells.add(part.links().stream().anyMatch(link -> link.step() == step) ? kelvin(part.rise(step)) : new Table.Empty());
        }
        cells.add(temperature(part.junction().orElseThrow()));
        Optional<Temperatures.Span> span = line.span();
        if (bounded) {
            cells.add(span.<Table.Cell>map(each -> new Table.Range(new Amount(each.low(), QuantityKind.TEMPERATURE),
                    new Amount(each.high(), QuantityKind.TEMPERATURE))).orElse(new Table.Empty()));
        }
        cells.add(Optional.ofNullable(line.in().limits().get(part.source())).<Table.Cell>map(BudgetAnalysis::temperature).orElse(new Table.Empty()));
        cells.add(line.margin().<Table.Cell>map(BudgetAnalysis::kelvin).orElse(new Table.Empty()));
        cells.add(row.worst() ? new Table.Words("worst") : new Table.Empty());
        return cells;
    }

    private static Table.Cell temperature(double kelvin) {
        return new Amount(kelvin, QuantityKind.TEMPERATURE);
    }

    private static Table.Cell kelvin(double difference) {
        return new Amount(difference, QuantityKind.TEMPERATURE_DIFFERENCE);
    }
}
