package tramontane.cli.terminal;

import java.io.PrintWriter;
import java.util.List;
import tramontane.model.Problem;

/** What is wrong with a file, in sentences. */
public final class Messages {

    private static final int MOST = 200;

    private Messages() {
    }

    /** Prints one line for each problem; a file with thousands of mistakes is named by the first of them. */
    public static void print(PrintWriter to, String file, List<String> sentences, List<Problem> problems) {
        for (int i = 0; i < Math.min(MOST, problems.size()); i++) {
            to.println(file + ": " + (problems.get(i).isError() ? "" : "caution: ") + sentences.get(i));
        }
        if (problems.size() > MOST) {
            to.println(file + ": and " + (problems.size() - MOST) + " more, not shown here; --format json gives all.");
        }
    }

    /** How many there are: {@code 3 errors and 1 caution}. */
    public static String count(List<Problem> problems) {
        long errors = problems.stream().filter(Problem::isError).count();
        long cautions = problems.size() - errors;
        String both = errors > 0 && cautions > 0 ? " and " : "";
        return (errors > 0 ? count(errors, "error") : "") + both + (cautions > 0 ? count(cautions, "caution") : "")
                + (problems.isEmpty() ? "no errors" : "");
    }

    /** A number and what is counted: {@code 1 part}, {@code 3 parts}. */
    public static String count(long number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }
}
