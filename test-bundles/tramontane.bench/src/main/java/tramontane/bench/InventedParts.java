package tramontane.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;

/** Writes catalogues of invented parts, of some 1.5 kB each, to measure with. */
final class InventedParts {

    private static final String[] TYPES = {"axial", "mixed-flow", "centrifugal", "cross-flow"};
    private static final String[] BEARINGS = {"sleeve", "ball", "fluid-film"};
    private static final String[] MAKERS = {"Garbin", "Levanter", "Ostro", "Ponente"};

    private InventedParts() {
    }

    /** Writes files of so many parts each; a single part to a file stands alone, several are a family. */
    static void write(Path folder, int files, int partsEach) throws IOException {
        Random random = new Random(7);
        for (int file = 0; file < files; file++) {
            Path inner = Files.createDirectories(folder.resolve(String.format(Locale.ROOT, "maker%03d", file / 500)));
            StringBuilder text = new StringBuilder();
            String maker = MAKERS[file % MAKERS.length];
            if (partsEach == 1) {
                text.append('{').append(shared(maker, file)).append(",\n").append(part(random, file)).append("}\n");
            } else {
                text.append("{\"format\": 1, ").append(shared(maker, file)).append(",\n\"parts\": [\n");
                for (int i = 0; i < partsEach; i++) {
                    text.append(i > 0 ? ",\n" : "").append('{').append(part(random, file * partsEach + i)).append('}');
                }
                text.append("]}\n");
            }
            Files.writeString(inner.resolve(String.format(Locale.ROOT, "parts%05d.json", file)), text);
        }
    }

    private static String shared(String maker, int number) {
        return "\"maker\": \"" + maker + "\", \"family\": \"series " + number % 97 + "\", \"status\": \"current\", \"currency\": \"EUR\",\n"
                + "  \"origins\": [{\"from\": \"datasheet\", \"tolerance\": \"10 %\", \"source\": \"data sheet of " + maker + ", issue 3\"}]";
    }

    private static String part(Random random, int number) {
        double width = 0.04 + 0.2 * random.nextDouble();
        double speed = 1500 + 6000 * random.nextDouble();
        double free = 0.3 * width * width * width * speed / 10;
        double shutOff = 0.1 * 1.2 * Math.pow(speed * Math.PI / 60 * width, 2);
        StringBuilder text = new StringBuilder();
        text.append(String.format(Locale.ROOT, """
                  "id": "%s %d-%05d", "type": "%s", "width": "%.1f mm", "height": "%.1f mm", "depth": "%.1f mm",
                  "rotorDiameter": "%.1f mm", "openArea": "%.1f cm²", "ratedSpeed": "%.0f rpm", "motor": "DC regulated", "category": "A",
                  "ratedPower": "%.2f W", "fixedLoss": "0.2 W", "bearing": "%s", "ingress": "IP%d4", "lowestTemperature": "-%d °C",
                  "highestTemperature": "%d °C", "mass": "%.0f g", "price": %.2f, "curves": [
                """, "G", (int) (1000 * width), number, TYPES[random.nextInt(4)], 1000 * width, 1000 * width, 300 * width, 900 * width,
                6000 * width * width, speed, 1 + free * shutOff * 2, BEARINGS[random.nextInt(3)], 2 + random.nextInt(4),
                10 + random.nextInt(30), 60 + random.nextInt(25), 4e4 * width * width, 3 + 40 * random.nextDouble()));
        for (int curve = 0; curve < 3; curve++) {
            double part = 1 - 0.25 * curve;
            StringBuilder flow = new StringBuilder();
            StringBuilder pressure = new StringBuilder();
            StringBuilder power = new StringBuilder();
            for (int i = 0; i < 10; i++) {
                double q = i / 9.0;
                flow.append(String.format(Locale.ROOT, "%.4g ", 3600 * free * part * q));
                pressure.append(String.format(Locale.ROOT, "%.4g ", Math.max(0, shutOff * part * part * (1 - q * q + 0.1 * q * (1 - q)))));
                power.append(String.format(Locale.ROOT, "%.4g ", 0.5 + free * shutOff * part * part * part * (1 + q)));
            }
            text.append(String.format(Locale.ROOT, """
                    {"speed": "%.0f rpm", "voltage": "%.1f V", "flow": "%sm³/h",
                     "pressure": "%sPa", "power": "%sW", "tolerance": "10 %%"}%s
                    """, speed * part, 24 * part, flow, pressure, power, curve < 2 ? "," : "],"));
        }
        return text.append(String.format(Locale.ROOT, """
                "sections": {"drive": {"wires": 4, "supply": {"current": "DC", "voltage": "24 V", "lowest": "%d V", "highest": "%d V", "rated": "%.3f A"},
                  "control": {"kind": "duty", "tolerance": "5 %%"}},
                 "bearing": {"life": {"hours": "%d h", "at": "40 °C"}, "rig": "stand %d"}}""",
                12 + random.nextInt(8), 25 + random.nextInt(10), 0.1 + random.nextDouble(), 20_000 + 1000 * random.nextInt(60),
                random.nextInt(5))).toString();
    }
}
