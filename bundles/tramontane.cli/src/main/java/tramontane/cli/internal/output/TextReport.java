package tramontane.cli.internal.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import tramontane.cli.terminal.TextTable;
import tramontane.cli.terminal.Wrapping;
import tramontane.physics.units.UnitSystem;

/** A run's results for people: requirements, duty points, flows, everything else, findings, and one closing sentence. */
public final class TextReport {

    private TextReport() {
    }

    /**
     * The whole report.
     *
     * @param results  what the engine gave
     * @param units    how quantities are shown
     * @param width    columns that a line may have
     * @param spelling how the reader's terminal spells a text
     * @return lines, each ended
     */
    public static String of(Results results, UnitSystem units, int width, UnaryOperator<String> spelling) {
        List<String> lines = new ArrayList<>(Wrapping.lines(title(results), width));
        new Requirements(results, units).sheet().ifPresent(sheet -> add(lines, sheet, units, width, spelling));
        List<Grid.Sheet> tables = ResultTables.of(results);
        tables.forEach(sheet -> add(lines, sheet, units, width, spelling));
        List<String> worst = tables.isEmpty() ? List.of() : worst(results, width);
        if (!worst.isEmpty()) {
            lines.add("");
            lines.addAll(worst);
        }
        List<String> findings = Findings.lines(results, units, width);
        if (!findings.isEmpty()) {
            lines.add("");
            lines.addAll(findings);
        }
        lines.add("");
        lines.addAll(Wrapping.lines(Closing.sentence(results), width));
        StringBuilder text = new StringBuilder();
        lines.forEach(line -> text.append(spelling.apply(line)).append('\n'));
        return text.toString();
    }

    private static void add(List<String> lines, Grid.Sheet sheet, UnitSystem units, int width, UnaryOperator<String> spelling) {
        lines.add("");
        lines.addAll(TextTable.lines(sheet.table(), sheet.keys(), width, units, spelling));
    }

    private static String title(Results results) {
        String name = results.evaluation().design().name();
        Map<String, List<String>> byCondition = results.casesByCondition();
        int cases = results.evaluation().cases().size();
        int conditions = byCondition.size();
        return (name.isEmpty() ? results.file() : name + " (" + results.file() + ")") + ", " + conditions
                + (conditions == 1 ? " condition" : " conditions") + (cases == conditions ? "" : ", " + cases + " cases");
    }

    /** Which case stands for a condition that has several. */
    private static List<String> worst(Results results, int width) {
        List<String> lines = new ArrayList<>();
        for (Results.Shown shown : results.shown()) {
            if (shown.of() > 1) {
                lines.addAll(Wrapping.lines("Of the " + shown.of() + " cases of \"" + shown.declared()
                        + "\" the worst is shown: " + shown.detail() + ".", width));
            }
        }
        return lines;
    }
}
