package tramontane.selection.cli.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.cli.terminal.CsvRows;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;
import tramontane.selection.Arrangement;
import tramontane.selection.Candidate;
import tramontane.selection.Criterion;
import tramontane.selection.Merit;
import tramontane.selection.Rejected;

/** A choice as comma-separated values: a candidate in a row, then, where asked for, what fails. */
final class ChoiceCsv {

    private ChoiceCsv() {
    }

    /** The rows; the unit of a column stands in its heading. */
    static String of(Choice choice, boolean all, UnitSystem units) {
        List<Criterion> criteria = choice.selection().criteria();
        List<String> head = new ArrayList<>(List.of("rank", "part", "across", "along", "series", "turned", "setting " + bracket(QuantityKind.FRACTION, units),
                "speed " + bracket(QuantityKind.ROTATIONAL_SPEED, units), "merit", "pareto"));
        criteria.forEach(criterion -> head.add(criterion.id() + " " + (criterion.id().equals(Criterion.COST)
                ? "[" + choice.currency().orElse("1") + "]" : bracket(criterion.quantity(), units))));
        head.add("reason");
        CsvRows rows = new CsvRows().row(head.toArray(String[]::new));
        List<Candidate> ranked = choice.selection().ranked();
        for (int i = 0; i < ranked.size(); i++) {
            Candidate candidate = ranked.get(i);
            List<String> row = new ArrayList<>(List.of(Integer.toString(i + 1)));
            row.addAll(named(candidate.part().id(), Optional.of(candidate.arrangement())));
            var merit = Merit.of(ranked.getFirst(), candidate);
            row.addAll(List.of(number(candidate.setting(), QuantityKind.FRACTION, units), number(candidate.speed(), QuantityKind.ROTATIONAL_SPEED, units),
                    merit.isPresent() ? Long.toString(merit.getAsLong()) : "", Boolean.toString(candidate.front())));
            criteria.forEach(criterion -> row.add(Optional.ofNullable(candidate.values().get(criterion.id()))
                    .map(si -> number(si, criterion.quantity(), units)).orElse("")));
            row.add("");
            rows.row(row.toArray(String[]::new));
        }
        for (Rejected each : all ? choice.selection().rejected() : List.<Rejected>of()) {
            List<String> row = new ArrayList<>(List.of(""));
            row.addAll(named(each.part(), each.arrangement()));
            for (int i = 0; i < 4 + criteria.size(); i++) {
                row.add("");
            }
            row.add(each.reason().in(units));
            rows.row(row.toArray(String[]::new));
        }
        return rows.toString();
    }

    private static List<String> named(String part, Optional<Arrangement> arrangement) {
        return arrangement.map(each -> List.of(part, Integer.toString(each.across()), Integer.toString(each.along()), Integer.toString(each.series()),
                Boolean.toString(each.turned()))).orElse(List.of(part, "", "", "", ""));
    }

    static String bracket(QuantityKind kind, UnitSystem units) {
        String unit = units == UnitSystem.SI ? kind.siUnit() : Units.display(kind, units).symbol();
        return "[" + (unit.isEmpty() ? "1" : unit) + "]";
    }

    static String number(double si, QuantityKind kind, UnitSystem units) {
        return Double.toString(units == UnitSystem.SI ? si : Units.toDisplay(si, kind, units));
    }
}
