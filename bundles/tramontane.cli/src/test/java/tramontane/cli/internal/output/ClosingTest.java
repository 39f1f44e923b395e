package tramontane.cli.internal.output;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.Sentence;
import tramontane.analysis.Severity;
import tramontane.analysis.Verdict;
import tramontane.cli.internal.Toys;
import tramontane.model.Design;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.model.Value;

class ClosingTest {

    /** Verdicts are written requirement by requirement, one letter for each condition: m, c, n, j, or a dot for none. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "m         | The one requirement is met.",
        "mm        | The one requirement is met in all 2 conditions.",
        "mmmm mmmm mmmm | All 3 requirements are met in all 4 conditions.",
        "mc cm     | All 2 requirements are met in all 2 conditions, 2 of 4 with caution.",
        "m. mm     | All 2 requirements are met in every condition that they are stated for.",
        "n         | The one requirement is not met.",
        "j         | The one requirement is not judged.",
        "mmmm mmmn mjnm | Of 12 verdicts, 2 are not met and 1 is not judged.",
        "mj jm     | Of 4 verdicts, 2 are not judged.",
        "jj jj     | No requirement could be judged.",
        "n n       | No requirement is met.",
        "nn        | No requirement is met in any condition.",
        "mn        | Of 2 verdicts, 1 is not met."})
    void sentence(String letters, String expected) {
        List<Verdict> verdicts = new ArrayList<>();
        List<Engine.Case> cases = new ArrayList<>();
        String[] rows = letters.split(" ");
        for (int column = 0; column < rows[0].length(); column++) {
            cases.add(Toys.one("c" + column, "c" + column));
        }
        for (int row = 0; row < rows.length; row++) {
            Requirement requirement = new Requirement("f", "p" + row, java.util.Optional.of(Quantity.of(1)),
                    java.util.Optional.empty(), List.of(), Value.Tree.EMPTY);
            for (int column = 0; column < rows[row].length(); column++) {
                Severity severity = switch (rows[row].charAt(column)) {
                    case 'm' -> Severity.MET;
                    case 'c' -> Severity.CAUTION;
                    case 'n' -> Severity.NOT_MET;
                    case 'j' -> Severity.NOT_JUDGED;
                    default -> null;
                };
                if (severity != null) {
                    verdicts.add(new Verdict(requirement, "c" + column, severity, java.util.Optional.empty(), 0, ""));
                }
            }
        }
        Evaluation evaluation = new Evaluation(Design.EMPTY, cases,
                List.of(Toys.outcome("airflow", "c0", Evaluation.Status.COMPUTED, Figure.of(Toys.FLOW, "fans", 1).in("c0"))),
                List.of(), verdicts, false);
        assertEquals(expected, Closing.sentence(Toys.results(evaluation)));
    }

    @Test
    void whatNoRequirementAsksIsNotPassedOver() {
        Finding finding = new Finding(Severity.NOT_MET, Sentence.of("the fuse may open"), "", "c0", Sentence.EMPTY, "");
        Requirement requirement = new Requirement("f", "p", java.util.Optional.of(Quantity.of(1)), java.util.Optional.empty(), List.of(), Value.Tree.EMPTY);
        List<Engine.Case> cases = List.of(Toys.one("c0", "c0"));
        List<Evaluation.Outcome> outcomes = List.of(Toys.outcome("airflow", "c0", Evaluation.Status.COMPUTED, Figure.of(Toys.FLOW, "fans", 1).in("c0")));
        assertEquals("The one requirement is met, but findings say \"not met\".", Closing.sentence(Toys.results(new Evaluation(
                Design.EMPTY.withRequirements(List.of(requirement)), cases, outcomes, List.of(finding),
                List.of(new Verdict(requirement, "c0", Severity.MET, java.util.Optional.empty(), 0, "")), false))));
        assertEquals("No requirement is stated, but findings say \"not met\".", Closing.sentence(Toys.results(new Evaluation(Design.EMPTY, cases, outcomes,
                List.of(finding), List.of(), false))));
    }
}
