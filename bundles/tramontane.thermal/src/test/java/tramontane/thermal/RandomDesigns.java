package tramontane.thermal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import tramontane.model.Design;

/** Random designs as files: two to six bays in a row, ways past and back, one or two banks, heat everywhere. */
public final class RandomDesigns {

    private final Random random;
    private final boolean level;
    private final boolean powered;
    private final boolean turned;
    private final boolean row;
    private final double heatFactor;

    private RandomDesigns(int seed, boolean level, boolean powered, boolean turned, boolean row, double heatFactor) {
        random = new Random(seed);
        this.row = row;
        this.level = level;
        this.powered = powered;
        this.turned = turned;
        this.heatFactor = heatFactor;
    }

    /** A design with all that there is. */
    public static Design wild(int seed) {
        return new RandomDesigns(seed, false, true, false, false, 1).make();
    }

    /** One without heights and linear parts, whose movers state no power: its flows are all in proportion to speed. */
    public static Design plain(int seed, double heatFactor) {
        return new RandomDesigns(seed, true, false, false, false, heatFactor).make();
    }

    /** One without heights, its bays one behind another, so that all air goes through all of them. */
    public static Design row(int seed) {
        return new RandomDesigns(seed, true, false, false, true, 1).make();
    }

    /** The one of {@link #wild} with every passage but the banks written down from its other end. */
    public static Design turned(int seed) {
        return new RandomDesigns(seed, false, true, true, false, 1).make();
    }

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.6g", value);
    }

    private Design make() {
        int bays = 2 + random.nextInt(5);
        List<String> names = new ArrayList<>();
        List<String> passages = new ArrayList<>();
        List<String> places = new ArrayList<>();
        for (int i = 0; i < bays; i++) {
            double height = between(0, 2);
            names.add("{'id': 'b" + i + "', 'height': " + number(level ? 0 : height) + "}");
            places.add("b" + i);
        }
        passage(passages, places, "in", "outside", "b0");
        for (int i = 0; i + 1 < bays; i++) {
            passage(passages, places, "w" + i, "b" + i, "b" + (i + 1));
        }
        for (int k = row ? 0 : random.nextInt(3); k > 0; k--) {
            passage(passages, places, "x" + k, "b" + random.nextInt(bays), random.nextBoolean() ? "outside" : "b" + random.nextInt(bays));
        }
        passages.add(bank("fan", "b" + (bays - 1), "outside", 1 + random.nextInt(2)));
        if (!row && random.nextInt(3) == 0) {
            passages.add(bank("second", "b0", "b" + (bays - 1), 1));
        }
        List<String> sources = new ArrayList<>();
        for (int k = 1 + random.nextInt(5); k > 0; k--) {
            String place = places.get(random.nextInt(places.size()));
            String other = places.get(random.nextInt(places.size()));
            String into = other.equals(place) || random.nextBoolean() ? "'" + place + "'"
                    : "{'place': '" + place + "', 'share': " + number(between(0.1, 0.9)) + "}, '" + other + "'";
            String row = random.nextBoolean() ? "" : ", 'row': " + (1 + random.nextInt(3)) + ", 'wake': " + number(between(1, 2));
            String reference = random.nextBoolean() ? "inlet air" : "mean air";
            sources.add("{'id': 's" + k + "', 'power': " + number(between(1, 150)) + ", 'into': [" + into + "]" + row
                    + ", 'chain': [{'kind': 'junction to case', 'resistance': " + number(between(0.05, 0.5))
                    + "}, {'kind': 'resistance', 'resistance': " + number(between(0.05, 1)) + ", 'reference': '" + reference + "'}]}");
        }
        String power = powered ? ", 'power': '6 6.5 7 7.2 7 6.4 W'" : "";
        return Designs.design("{'format': 1, 'airMovers': [{'id': 'F', 'curves': [{'speed': '3000 rpm',",
                "'flow': '0 0.01 0.02 0.03 0.04 0.05 m³/s', 'pressure': '80 78 70 54 30 0 Pa'" + power + "}]}],",
                "'airPath': {'bays': [" + String.join(", ", names) + "], 'passages': [" + String.join(", ", passages) + "]},",
                "'heatSources': [" + String.join(", ", sources) + "],",
                "'conditions': [{'id': 'c', 'outsideTemperature': " + number(between(253, 323)) + ", 'altitude': " + number(between(0, 3000))
                        + ", 'heatFactor': " + heatFactor + "}]}");
    }

    private void passage(List<String> passages, List<String> places, String id, String from, String to) {
        double linear = random.nextInt(3) == 0 ? between(10, 400) : 0;
        double quadratic = Math.exp(between(Math.log(3e3), Math.log(3e5)));
        if (from.equals(to)) {
            return;
        }
        passages.add("{'id': '" + id + "', 'kind': 'measured resistance', 'from': '" + (turned ? to : from) + "', 'to': '"
                + (turned ? from : to) + "', 'linear': " + number(level ? 0 : linear) + ", 'quadratic': " + number(quadratic) + "}");
        places.add(id);
    }

    private static String bank(String id, String from, String to, int across) {
        return "{'id': '" + id + "', 'kind': 'bank', 'from': '" + from + "', 'to': '" + to + "', 'mover': 'F', 'across': " + across + "}";
    }
}
