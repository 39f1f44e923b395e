package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Exporter;
import tramontane.model.Design;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Values;

/** Control laws as comma-separated values (RFC 4180): one row for each point. */
@Component(service = Exporter.class)
public final class LawCsv implements Exporter {

    @Override
    public String id() {
        return "control-law";
    }

    @Override
    public String label() {
        return "control laws as a table";
    }

    @Override
    public String ending() {
        return "csv";
    }

    @Override
    public Form settings() {
        return LawTables.SETTINGS;
    }

    @Override
    public Set<Class<?>> reads() {
        return LawTables.reads();
    }

    @Override
    public Exported write(Design design, Evaluation evaluation, Values settings) {
        List<Problem> problems = new ArrayList<>();
        List<LawTables.Written> laws = LawTables.of(design, evaluation, settings, problems);
        StringBuilder text = new StringBuilder("law,sensor,temperature in °C,setting in %\r\n");
        for (LawTables.Written law : laws) {
            law.points().forEach(point -> text.append(quoted(law.id())).append(',').append(quoted(law.sensor())).append(',')
                    .append(LawTables.decimal(point[0])).append(',').append(LawTables.decimal(point[1])).append("\r\n"));
        }
        return LawTables.exported(laws, text.toString(), problems);
    }

    static String quoted(String cell) {
        return cell.matches("[^\",\r\n]*") ? cell : '"' + cell.replace("\"", "\"\"") + '"';
    }
}
