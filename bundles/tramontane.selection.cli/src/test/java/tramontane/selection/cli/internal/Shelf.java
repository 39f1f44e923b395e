package tramontane.selection.cli.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Small catalogues and designs for tests; every part is invented. */
final class Shelf {

    static final String QUICK = """
            {"format": 1, "name": "Quick look", "notes": "kept",
             "airPath": {"bays": ["box"], "passages": [
               {"id": "box as measured", "kind": "measured resistance", "from": "outside", "to": "box", "flow": "0.08 m³/s", "pressure": "60 Pa"},
               {"id": "fans", "kind": "bank", "from": "box", "to": "outside", "sections": {"selection": {
                 "openingWidth": "300 mm", "openingHeight": "150 mm", "sideBySide": 3, "where": "width > 50 mm",
                 "weights": [{"of": "cost", "weight": 3}]}}}]},
             "requirements": [{"figure": "airflow.bank.flow", "atLeast": "0.08 m³/s"}], "lab": {"shelf": 7}}
            """;

    private static final String PART = """
            {"id": "%s", "maker": "Garbin", "type": "axial", "width": "%d mm", "height": "%<d mm", "depth": "25 mm", "status": "%s", %s
             "curves": [{"speed": "3000 rpm", "flow": "0 50 100 m³/h", "pressure": "60 40 0 Pa"}]}""";

    private Shelf() {
    }

    /** Three current parts of 40, 92 and 120 mm, the last without a price, and one that has ended. */
    static CatalogueFolders folders(Path folder) throws IOException {
        Files.createDirectories(folder);
        part(folder, "Garbin 40", 40, "current", "\"price\": 3, \"currency\": \"EUR\",");
        part(folder, "Garbin 92", 92, "current", "\"price\": 8.5, \"currency\": \"EUR\",");
        part(folder, "Garbin 110", 110, "last order", "\"price\": 9, \"currency\": \"EUR\",");
        part(folder, "Garbin 120", 120, "current", "");
        part(folder, "Garbin 80", 80, "ended", "\"price\": 1, \"currency\": \"EUR\",");
        return new CatalogueFolders(Optional.of(folder), Optional.empty());
    }

    static void part(Path folder, String id, int width, String status, String more) throws IOException {
        Files.writeString(folder.resolve(id.replace(' ', '-') + ".json"), PART.formatted(id, width, status, more));
    }
}
