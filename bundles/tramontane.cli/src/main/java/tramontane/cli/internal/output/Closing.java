package tramontane.cli.internal.output;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Severity;
import tramontane.analysis.Verdict;
import tramontane.model.Requirement;

/** How it came out, in one or two sentences. */
public final class Closing {

    private Closing() {
    }

    /** The sentence that a report ends with. */
    public static String sentence(Results results) {
        Evaluation evaluation = results.evaluation();
        Set<String> missing = new LinkedHashSet<>();
        evaluation.outcomes().stream()
                .filter(outcome -> outcome.status() == Evaluation.Status.NOT_COMPUTED
                        || outcome.status() == Evaluation.Status.FAILED)
                .forEach(outcome -> missing.add(results.label(outcome.analysis())));
        String gaps = missing.isEmpty() ? "" : " Not everything could be computed: "
                + (missing.size() == 1 ? missing.iterator().next() + " has gaps."
                        : String.join(", ", missing) + " have gaps.");
        return (evaluation.outcomes().isEmpty() ? "Nothing was computed, as no analysis is loaded. " : "")
                + verdicts(results) + gaps;
    }

    private static String verdicts(Results results) {
        List<Verdict> verdicts = results.evaluation().verdicts();
        if (verdicts.isEmpty()) {
            return (results.evaluation().design().requirements().isEmpty() ? "No requirement is stated"
                    : "No requirement is stated for these conditions") + others(results) + ".";
        }
        long notMet = count(verdicts, Severity.NOT_MET);
        long notJudged = verdicts.stream().filter(verdict -> !judged(verdict)).count();
        long cautions = count(verdicts, Severity.CAUTION);
        if (notMet == 0 && notJudged == 0) {
            return allMet(results, verdicts) + (cautions == 0 ? "" : ", " + cautions + " of " + verdicts.size()
                    + " with caution") + others(results) + ".";
        }
        List<String> parts = new ArrayList<>();
        if (notMet > 0) {
            parts.add(notMet + (notMet == 1 ? " is not met" : " are not met"));
        }
        if (notJudged > 0) {
            parts.add(notJudged + (notJudged == 1 ? " is not judged" : " are not judged"));
        }
        if (verdicts.size() > 1 && notJudged == verdicts.size()) {
            return "No requirement could be judged.";
        }
        if (verdicts.size() > 1 && notMet == verdicts.size()) {
            return "No requirement is met" + (results.conditions().size() == 1 ? "." : " in any condition.");
        }
        return verdicts.size() == 1 ? "The one requirement is " + (notMet > 0 ? "not met." : "not judged.")
                : "Of " + verdicts.size() + " verdicts, " + String.join(" and ", parts) + ".";
    }

    /** What is not met though no requirement says so. */
    private static String others(Results results) {
        boolean any = results.evaluation().findings().stream().anyMatch(finding -> finding.severity() == Severity.NOT_MET);
        return any ? ", but findings say \"not met\"" : "";
    }

    private static String allMet(Results results, List<Verdict> verdicts) {
        Set<Requirement> requirements = new LinkedHashSet<>();
        verdicts.forEach(verdict -> requirements.add(verdict.requirement()));
        int conditions = results.conditions().size();
        String subject = requirements.size() == 1 ? "The one requirement is met"
                : "All " + requirements.size() + " requirements are met";
        boolean everywhere = verdicts.size() == requirements.size() * conditions;
        return subject + (conditions == 1 ? "" : everywhere ? " in all " + conditions + " conditions"
                : " in every condition that " + (requirements.size() == 1 ? "it is" : "they are") + " stated for");
    }

    private static boolean judged(Verdict verdict) {
        return verdict.severity() != Severity.NOT_JUDGED && verdict.severity() != Severity.ERROR;
    }

    private static long count(List<Verdict> verdicts, Severity severity) {
        return verdicts.stream().filter(verdict -> verdict.severity() == severity).count();
    }
}
