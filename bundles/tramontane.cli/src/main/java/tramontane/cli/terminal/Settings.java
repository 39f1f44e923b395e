package tramontane.cli.terminal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Shape;
import tramontane.model.Spelling;
import tramontane.model.Value;
import tramontane.model.Values;

/** Settings of an exporter or importer as they are written on the command line: {@code --set NAME=VALUE}, any number of times. */
public final class Settings {

    /** The option. */
    public static final String SET = "--set";

    private Settings() {
    }

    /**
     * What was set, as it would stand in a file.
     *
     * @param form  the settings that there are
     * @param owner whose they are, for messages: {@code exporter control-law}
     * @param given as written: {@code NAME=VALUE}
     * @throws Ending for what is no setting
     */
    public static Value.Tree written(Form form, String owner, List<String> given) throws Ending {
        Map<String, Value> set = new LinkedHashMap<>();
        List<String> known = form.fields().stream().map(Field::name).toList();
        for (String each : given) {
            int equals = each.indexOf('=');
            if (equals < 1) {
                throw Ending.badInput(SET + " \"" + each + "\" has no name and value; write NAME=VALUE.");
            }
            String name = each.substring(0, equals);
            Optional<Field> field = form.field(name);
            if (field.isEmpty()) {
                throw Ending.badInput(SET + " " + name + ": " + owner + " has no such setting"
                        + Spelling.nearest(name, known).map(near -> "; did you mean " + near + "?")
                        .orElse(known.isEmpty() ? "; there is nothing to set." : "; it has " + String.join(", ", known) + "."));
            }
            if (set.put(name, value(field.get().shape(), each.substring(equals + 1))) != null) {
                throw Ending.badInput(SET + " " + name + ": it is set twice.");
            }
        }
        return Value.Tree.of(set);
    }

    /** A word of the command line as its field would be written in a file. */
    private static Value value(Shape shape, String word) {
        return switch (shape) {
            case Shape.YesNo() when word.equals("true") || word.equals("false") -> new Value.Flag(word.equals("true"));
            case Shape.References(Shape.Target target) -> new Value.Items(
                    Stream.of(word.split(",")).<Value>map(name -> new Value.Text(name.strip())).toList());
            case Shape.Whole whole -> number(word);
            case Shape.WholeOr whole -> number(word);
            case Shape.Amount amount -> number(word);
            case Shape.AnyAmount() -> number(word);
            case Shape.Amounts amounts -> number(word);
            default -> new Value.Text(word);
        };
    }

    private static Value number(String word) {
        boolean whole = !word.isEmpty() && word.length() <= Value.Num.LONGEST && Value.Num.numberEnd(word, 0) == word.length();
        return whole ? new Value.Num(word) : new Value.Text(word);
    }

    /**
     * The values of settings.
     *
     * @throws Ending that names all that is wrong
     */
    public static Values read(Form form, Value.Tree set) throws Ending {
        List<Problem> problems = new ArrayList<>();
        Values settings = FormReader.read(form, set, "", problems);
        refuseErrors(problems);
        return settings;
    }

    /** Ends with all errors among problems, if there are any. */
    public static void refuseErrors(List<Problem> problems) throws Ending {
        List<String> errors = problems.stream().filter(Problem::isError).map(problem -> SET + " " + problem.sentence() + ".").toList();
        if (!errors.isEmpty()) {
            throw Ending.badInput(String.join(System.lineSeparator(), errors));
        }
    }
}
