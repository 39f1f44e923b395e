package tramontane.reliability.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import tramontane.analysis.Amount;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Overview;
import tramontane.analysis.Table;
import tramontane.physics.units.QuantityKind;
import tramontane.reliability.LifeState;
import tramontane.reliability.LifeState.Spread;
import tramontane.reliability.MissionLife;
import tramontane.reliability.statistics.LifeDistribution;

/** Tables of lives. */
final class LifeTables {

    private LifeTables() {
    }

    static List<Overview> condition(LifeState state) {
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (LifeState.BankState bank : state.banks()) {
            bank.worst().ifPresent(worst -> {
                List<Table.Cell> row = new ArrayList<>(List.of(new Table.Words(bank.bank()), new Amount(worst.temperature(), QuantityKind.TEMPERATURE),
                        new Amount(worst.speed(), QuantityKind.ROTATIONAL_SPEED)));
                row.addAll(lives(bank.movers().stream().map(LifeState.MoverState::spread).toList()));
                rows.add(row);
            });
        }
        List<Table.Column> columns = new ArrayList<>(List.of(new Table.Column("bank", false), new Table.Column("air", true), new Table.Column("speed", true)));
        columns.addAll(columns());
        return rows.isEmpty() ? List.of() : List.of(new Overview(new Table("Life at this duty", columns, rows), Figures.CONDITION.stream().map(FigureKind::id).toList()));
    }

    static List<Overview> mission(MissionLife mission) {
        List<List<Table.Cell>> rows = new ArrayList<>();
        List<List<Table.Cell>> phases = new ArrayList<>();
        for (MissionLife.BankMission bank : mission.banks()) {
            bank.shortest().ifPresent(worst -> {
                List<Table.Cell> row = new ArrayList<>(List.of(new Table.Words(bank.bank()), new Amount(worst.running(), QuantityKind.TIME)));
                row.addAll(lives(bank.movers().stream().map(MissionLife.MoverMission::spread).toList()));
                rows.add(row);
                double used = worst.phases().stream().mapToDouble(phase -> phase.running() / phase.life()).sum();
                worst.phases().forEach(phase -> phases.add(List.of(new Table.Words(bank.bank()), new Table.Words(phase.condition()),
                        new Amount(phase.running(), QuantityKind.TIME), new Amount(phase.temperature(), QuantityKind.TEMPERATURE),
                        new Amount(phase.speed(), QuantityKind.ROTATIONAL_SPEED), new Amount(phase.life(), QuantityKind.TIME),
                        new Amount(phase.running() / phase.life() / used, QuantityKind.FRACTION))));
            });
        }
        if (rows.isEmpty()) {
            return List.of();
        }
        List<Table.Column> columns = new ArrayList<>(List.of(new Table.Column("bank", false), new Table.Column("running in a year", true)));
        columns.addAll(columns());
        return List.of(new Overview(new Table("Life over the mission", columns, rows), List.of(Figures.MISSION_L10.id(), Figures.MISSION_L1.id(),
                Figures.MISSION_L50.id(), Figures.MISSION_MEAN.id())),
                new Overview(new Table("What uses up life", List.of(new Table.Column("bank", false), new Table.Column("condition", false),
                        new Table.Column("running in a year", true), new Table.Column("air", true), new Table.Column("speed", true), new Table.Column("L10", true),
                        new Table.Column("share of what is used up", true)), phases), List.of()));
    }

    private static List<Table.Column> columns() {
        return List.of(new Table.Column("L1", true), new Table.Column("L10", true), new Table.Column("L10 between", true), new Table.Column("L50", true),
                new Table.Column("mean", true));
    }

    private static List<Table.Cell> lives(List<Spread> movers) {
        ToDoubleFunction<LifeDistribution> ten = lives -> lives.life(0.1);
        double value = least(movers, ten);
        double lower = Math.min(value, movers.stream().mapToDouble(each -> each.lower(ten)).min().orElseThrow());
        double upper = Math.max(value, movers.stream().mapToDouble(each -> each.upper(ten)).min().orElseThrow());
        return List.of(time(least(movers, lives -> lives.life(0.01))), time(value),
                lower < upper ? new Table.Range(time(lower), time(upper)) : new Table.Empty(),
                time(least(movers, lives -> lives.life(0.5))), time(least(movers, LifeDistribution::mean)));
    }

    private static double least(List<Spread> movers, ToDoubleFunction<LifeDistribution> number) {
        return movers.stream().mapToDouble(each -> each.value(number)).min().orElseThrow();
    }

    static Amount time(double seconds) {
        return new Amount(seconds, QuantityKind.TIME);
    }
}
