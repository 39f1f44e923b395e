package tramontane.reliability.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.analysis.Amount;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Overview;
import tramontane.analysis.Table;
import tramontane.physics.units.QuantityKind;
import tramontane.reliability.SystemLife;

/** Tables of redundancy. */
final class SystemTables {

    private static final String WHOLE = "all banks";

    private SystemTables() {
    }

    /**
     * The tables.
     *
     * @param judged names of the conditions in which limits were judged
     * @param all    whether every bank says itself how many movers are needed
     * @param figures what was computed
     */
    static List<Overview> of(Scene scene, SystemLife life, List<String> judged, boolean all, List<Figure> figures) {
        List<List<Table.Cell>> rows = new ArrayList<>();
        boolean several = life.groups().size() > 1;
        for (SystemLife.Group group : life.banks()) {
            for (SystemLife.Step step : group.steps()) {
                List<Table.Cell> row = new ArrayList<>();
                if (several) {
                    row.add(new Table.Words(group.place()));
                }
                row.add(new Table.Words(step.failed()));
                row.add(new Table.Words(step.kept() ? "kept" : step.limit()));
                row.add(step.kept() ? new Amount(step.ageing(), QuantityKind.NUMBER) : new Table.Empty());
                rows.add(row);
            }
        }
        List<Table.Column> columns = new ArrayList<>();
        if (several) {
            columns.add(new Table.Column("bank", false));
        }
        columns.addAll(List.of(new Table.Column("failed", false), new Table.Column(all ? "movers needed" : "limits", false), new Table.Column("ageing of the rest", true)));
        List<Overview> tables = new ArrayList<>(List.of(new Overview(summary(life, figures), Figures.SYSTEM.stream().map(FigureKind::id).toList()), new Overview(new Table("If movers fail" + (all ? "" : ", judged in " + String.join(", ", judged)), columns, rows), List.of())));
        boolean known = life.groups().stream().allMatch(group -> figures.stream().anyMatch(figure -> figure.kind().equals(Figures.SYSTEM_SURVIVAL)
                && figure.place().equals(group.place())));
        scene.service().serviceLife().filter(end -> known).ifPresent(end -> tables.add(new Overview(survival(scene, life, end), List.of())));
        return tables;
    }

    /** Every figure in a row, the groups side by side. */
    private static Table summary(SystemLife life, List<Figure> figures) {
        List<Table.Column> columns = new ArrayList<>(List.of(new Table.Column("figure", false)));
        life.groups().forEach(group -> {
            columns.add(new Table.Column(group.place().isEmpty() ? WHOLE : group.place(), true));
            columns.add(new Table.Column("between", true));
        });
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (FigureKind kind : Figures.SYSTEM) {
            List<Table.Cell> row = new ArrayList<>(List.of(new Table.Words(kind.label())));
            for (SystemLife.Group group : life.groups()) {
                Optional<Figure> figure = figures.stream().filter(each -> each.kind().equals(kind) && each.place().equals(group.place())).findFirst();
                row.add(figure.<Table.Cell>map(each -> new Amount(each.value(), kind.quantity())).orElse(new Table.Empty()));
                row.add(figure.filter(each -> each.lower().isPresent() && each.lower().getAsDouble() < each.upper().getAsDouble()).<Table.Cell>map(each -> new Table.Range(
                        new Amount(each.lower().getAsDouble(), kind.quantity()), new Amount(each.upper().getAsDouble(), kind.quantity()))).orElse(new Table.Empty()));
            }
            if (row.stream().skip(1).anyMatch(cell -> !(cell instanceof Table.Empty))) {
                rows.add(row);
            }
        }
        return new Table("Redundancy", columns, rows);
    }

    private static Table survival(Scene scene, SystemLife life, double end) {
        List<Table.Column> columns = new ArrayList<>(List.of(new Table.Column("time", true)));
        life.groups().forEach(group -> columns.add(new Table.Column(group.place().isEmpty() ? WHOLE : group.place(), true)));
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (int part = 1; part <= 5; part++) {
            double time = end * part / 5;
            List<Table.Cell> row = new ArrayList<>(List.of(LifeTables.time(time)));
            life.groups().forEach(group -> row.add(new Amount(SystemFigures.survival(group.survival(), scene.service(), time), QuantityKind.PROBABILITY)));
            rows.add(row);
        }
        return new Table("Survival" + (scene.service().interval().isPresent() ? " with visits" : ""), columns, rows);
    }
}
