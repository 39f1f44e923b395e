package tramontane.cli.terminal;

import java.util.ArrayList;
import java.util.List;
import tramontane.analysis.Finding;
import tramontane.physics.units.UnitSystem;

/** Findings as text: the severity in front, what to do about it and where the rule stands below. */
public final class FindingLines {

    private FindingLines() {
    }

    /**
     * The lines; none where nothing was found.
     *
     * @param findings in the order in which they are to stand; their conditions are not shown
     * @param units    how quantities are shown
     * @param width    columns that a line may have
     */
    public static List<String> of(List<Finding> findings, UnitSystem units, int width) {
        List<String> lines = new ArrayList<>();
        int lead = findings.stream().mapToInt(finding -> finding.severity().word().length()).max().orElse(0);
        for (Finding finding : findings) {
            String word = finding.severity().word();
            String first = "  " + word + " ".repeat(lead - word.length()) + "  ";
            lines.addAll(Wrapping.hanging(first, sentence(finding, units), width));
            String indent = " ".repeat(first.length() + 2);
            String source = finding.source().isEmpty() ? "" : "[" + finding.source() + "]";
            if (!finding.remedy().isEmpty()) {
                lines.addAll(Wrapping.hanging(indent, finding.remedy().in(units) + (source.isEmpty() ? "" : " " + source), width));
            } else if (!source.isEmpty()) {
                lines.addAll(Wrapping.hanging(indent, source, width));
            }
        }
        return lines;
    }

    /** A finding in one sentence, its place in front unless the sentence names it. */
    public static String sentence(Finding finding, UnitSystem units) {
        String message = finding.message().in(units);
        return finding.place().isEmpty() || message.contains(finding.place()) ? message : finding.place() + ": " + message;
    }
}
