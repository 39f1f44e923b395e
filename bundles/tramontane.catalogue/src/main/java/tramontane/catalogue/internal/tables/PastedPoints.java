package tramontane.catalogue.internal.tables;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.Importer;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Values;

/** One part with one curve from points, as they are pasted. */
@Component(service = Importer.class)
public final class PastedPoints implements Importer {

    @Override
    public String id() {
        return "points";
    }

    @Override
    public String label() {
        return "points of a curve";
    }

    @Override
    public List<String> endings() {
        return List.of(".txt", ".csv", ".tsv");
    }

    @Override
    public Form settings() {
        return Settings.POINTS;
    }

    @Override
    public Imported read(String name, byte[] content, Values settings) {
        List<Problem> problems = new ArrayList<>();
        Optional<String> text = TableText.decode(name, content, Settings.AUTO, problems);
        if (text.isEmpty()) {
            return TableReader.imported(List.of(), problems);
        }
        PointsReader.Read read = PointsReader.read(name, text.get(), settings);
        problems.addAll(read.problems());
        return TableReader.imported(read.part().stream().toList(), problems);
    }
}
