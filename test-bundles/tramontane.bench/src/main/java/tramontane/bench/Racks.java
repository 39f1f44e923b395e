package tramontane.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tramontane.analysis.Cases;
import tramontane.analysis.LinkKind;
import tramontane.analysis.PassageKind;
import tramontane.analysis.SpeedLaw;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Quantity;
import tramontane.model.file.DesignFile;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalModels;

/** The designs whose temperatures are solved, and what solves them. */
final class Racks {

    private Racks() {
    }

    /** Components of a bundle, made as the framework makes them: by their constructor without parameters. */
    private static <T> List<T> components(Class<T> service, String packageName) {
        List<T> found = new ArrayList<>();
        String path = packageName.replace('.', '/');
        for (String entry : System.getProperty("java.class.path").split(java.io.File.pathSeparator)) {
            if (entry.endsWith(".jar")) {
                try (var jar = new java.util.jar.JarFile(entry)) {
                    jar.stream().map(java.util.zip.ZipEntry::getName).filter(name -> name.startsWith(path + "/")
                            && name.endsWith("Kind.class") || name.equals(path + "/SupplySpeedLaw.class")).sorted()
                            .forEach(name -> make(service, name).ifPresent(found::add));
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            }
        }
        return found;
    }

    private static <T> Optional<T> make(Class<T> service, String file) {
        try {
            Class<?> type = Class.forName(file.substring(0, file.length() - ".class".length()).replace('/', '.'));
            return service.isAssignableFrom(type) ? Optional.of(service.cast(type.getConstructor().newInstance())) : Optional.empty();
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(file, e);
        }
    }

    /** The model of a design in one of its cases. */
    static ThermalModel model(Design design, int number) {
        return ThermalModel.of(design, Cases.of(design, Set.of()).list().get(number).concrete(),
                components(PassageKind.class, "tramontane.airflow.internal"), components(LinkKind.class, "tramontane.thermal.internal.links"),
                components(SpeedLaw.class, "tramontane.airflow.internal"));
    }

    /** Makes models with what the bundles bring, and with further speed laws before theirs. */
    static ThermalModels models(SpeedLaw... first) {
        List<Map.Entry<Map<String, Object>, SpeedLaw>> laws = new ArrayList<>();
        long id = 1;
        for (SpeedLaw law : first) {
            laws.add(Map.entry(Map.<String, Object>of("service.ranking", 1, "service.id", id++), law));
        }
        for (SpeedLaw law : components(SpeedLaw.class, "tramontane.airflow.internal")) {
            laws.add(Map.entry(Map.<String, Object>of("service.ranking", 0, "service.id", id++), law));
        }
        return new ThermalModels(components(PassageKind.class, "tramontane.airflow.internal"),
                components(LinkKind.class, "tramontane.thermal.internal.links"), laws);
    }

    /** The same with a fifth more heat in every condition. */
    static Design hotter(Design design) {
        return design.withConditions(design.conditions().stream().map(condition -> new Condition(condition.id(),
                condition.outsideTemperature(), condition.altitude(), condition.pressure(), condition.humidity(),
                Optional.of(Quantity.of(1.2)), condition.heatFactors(), condition.clogging(), condition.supplyVoltage(),
                condition.supplyFrequency(), condition.speed(), condition.failed(), condition.more())).toList());
    }

    /** A sample of the product, or the rack. */
    static Design design(String name) {
        if (name.equals("rack")) {
            return rack(10, 10);
        }
        Path file = Path.of(System.getProperty("tramontane.samples"), name + DesignFile.ENDING);
        if (!Files.isRegularFile(file)) {
            throw new IllegalStateException("there is no " + file);
        }
        return DesignFile.read(file).design().orElseThrow();
    }

    /** Rows of bays one behind another, each row with a fan, neighbours joined by leaks; two components in each bay. */
    static Design rack(int rows, int columns) {
        List<String> bays = new ArrayList<>();
        List<String> passages = new ArrayList<>();
        List<String> sources = new ArrayList<>();
        for (int r = 0; r < rows; r++) {
            for (int c = 0; c < columns; c++) {
                String bay = "bay " + r + "." + c;
                bays.add('"' + bay + '"');
                passages.add(resistance("way " + r + "." + c, c == 0 ? "outside" : "bay " + r + "." + (c - 1), bay, 20_000));
                if (r > 0) {
                    passages.add(resistance("leak " + r + "." + c, "bay " + (r - 1) + "." + c, bay, 200_000 * (1 + r + c)));
                }
                for (int k = 0; k < 2; k++) {
                    sources.add("""
                            {"id": "part %d.%d.%d", "power": "%d W", "into": ["%s"], "limit": "90 °C", "chain": [
                              {"kind": "junction to case", "resistance": "0.5 K/W", "heatCapacity": "10 J/K"},
                              {"kind": "interface", "thickness": "0.1 mm", "conductivity": "3 W/(m K)", "area": "4 cm²"},
                              {"kind": "measured sink", "flow": "10 40 160 m³/h", "resistance": "4 2 1 K/W", "heatCapacity": "60 J/K"}]}
                            """.formatted(r, c, k, 5 + k + r, k == 0 ? bay : "way " + r + "." + c));
                }
            }
            passages.add("""
                    {"id": "fan %d", "kind": "bank", "from": "bay %d.%d", "to": "outside", "mover": "F"}
                    """.formatted(r, r, columns - 1));
        }
        String json = """
                {"format": 1, "airMovers": [{"id": "F", "curves": [{"speed": "3000 rpm", "flow": "0 0.01 0.02 0.03 0.04 0.05 m³/s",
                  "pressure": "80 78 70 54 30 0 Pa", "power": "6 6.5 7 7.2 7 6.4 W"}]}],
                 "airPath": {"bays": [%s], "passages": [%s]}, "heatSources": [%s],
                 "conditions": [{"id": "hot", "outsideTemperature": "40 °C"}]}
                """.formatted(String.join(", ", bays), String.join(", ", passages), String.join(", ", sources));
        return DesignFile.parse(json).design().orElseThrow();
    }

    private static String resistance(String id, String from, String to, int quadratic) {
        return """
                {"id": "%s", "kind": "measured resistance", "from": "%s", "to": "%s", "quadratic": %d}
                """.formatted(id, from, to, quadratic);
    }
}
