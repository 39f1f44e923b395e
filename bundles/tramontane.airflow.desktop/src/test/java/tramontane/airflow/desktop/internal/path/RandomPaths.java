package tramontane.airflow.desktop.internal.path;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import tramontane.model.AirPath;
import tramontane.model.Bay;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.model.Value;

/** Air paths that nobody designed, and air in them that no law holds for. */
final class RandomPaths {

    private RandomPaths() {
    }

    static Design of(List<String> bays, List<Passage> passages) {
        return Design.EMPTY.withAirPath(new AirPath(bays.stream().map(Bay::of).toList(), passages, Value.Tree.EMPTY));
    }

    /** A cabinet of many shelves: rows of bays one behind another, joined sideways here and there. */
    static Design large(int bays) {
        Random random = new Random(7);
        int rows = Math.max(1, (int) Math.round(Math.sqrt(bays / 2.0)));
        List<String> names = new ArrayList<>();
        List<Passage> passages = new ArrayList<>();
        for (int i = 0; i < bays; i++) {
            int row = i % rows;
            names.add("bay " + (i / rows + 1) + "." + (row + 1));
            String from = i < rows ? Bay.OUTSIDE : names.get(i - rows);
            passages.add(passage("way " + (i + 1), i % 7 == 3 ? Passage.BANK : "opening", from, names.get(i)));
            if (row > 0 && random.nextInt(6) == 0) {
                passages.add(passage("gap " + (i + 1), "gap", names.get(i - 1), names.get(i)));
            }
            if (i >= bays - rows) {
                passages.add(passage("exit " + (row + 1), "grille", names.get(i), Bay.OUTSIDE));
            }
        }
        return of(names, passages);
    }

    static Passage passage(String id, String kind, String from, String to) {
        return new Passage(id, kind, from, to, kind.equals(Passage.BANK) ? Value.Tree.EMPTY.with("across", Value.Num.of(2)) : Value.Tree.EMPTY);
    }

    /** Air by chance. */
    static AirValues values(Design design, long seed) {
        Random random = new Random(seed);
        Map<String, AirValues.PassageAir> passages = new LinkedHashMap<>();
        design.airPath().passages().forEach(passage -> passages.put(passage.id(), new AirValues.PassageAir(random.nextGaussian() * 0.01 + 0.02,
                0.02, random.nextGaussian() * 20, OptionalDouble.of(1), Optional.empty(), Optional.empty())));
        Map<String, AirValues.BayAir> bays = new LinkedHashMap<>();
        bays.put(Bay.OUTSIDE, new AirValues.BayAir(0, 293.15, Optional.empty(), Optional.empty()));
        design.airPath().bays().forEach(bay -> bays.put(bay.id(), new AirValues.BayAir(random.nextGaussian() * 30,
                300 + random.nextDouble() * 20, Optional.empty(), Optional.empty())));
        return new AirValues("chance", passages, bays, Map.of(), Map.of(), false);
    }
}
