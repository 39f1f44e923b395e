package tramontane.reliability.internal;

import java.util.ArrayList;
import java.util.List;
import tramontane.analysis.Amount;
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
     */
    static List<Overview> of(Scene scene, SystemLife life, List<String> judged, boolean all) {
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
        List<Overview> tables = new ArrayList<>(List.of(new Overview(new Table("If movers fail" + (all ? "" : ", judged in " + String.join(", ", judged)), columns, rows), List.of())));
        scene.service().serviceLife().ifPresent(end -> tables.add(new Overview(survival(scene, life, end), List.of())));
        return tables;
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
