package tramontane.selection;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.model.AirMover;
import tramontane.model.ControlLaw;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Value;

/** Puts a part into a design. */
public final class Placement {

    private Placement() {
    }

    /**
     * A design with a part in one of its banks, at one speed: control laws let go of that bank, as they would set another one.
     * Parts that were there stay, for other banks and for who wants to go back; of one with the same id that differs and that
     * another bank uses, the new one is given another id.
     *
     * @param design      the design
     * @param bank        the bank's id
     * @param part        the part
     * @param arrangement how it is arranged
     * @param setting     speed setting over that of the condition, 1 for full
     * @throws IllegalArgumentException if the design has no such bank
     */
    public static Design of(Design design, String bank, AirMover part, Arrangement arrangement, double setting) {
        Passage passage = bank(design, bank);
        AirMover placed = free(design, bank, part);
        List<AirMover> movers = new ArrayList<>(design.airMovers().stream().filter(mover -> !mover.id().equals(placed.id())).toList());
        movers.add(placed);
        Design changed = design.withAirMovers(movers).withAirPath(design.airPath().withPassage(passage(passage, placed.id(), arrangement, setting)));
        return without(changed, bank);
    }

    /**
     * A design with a part in one of its banks, as many of it as any condition speaks of: for checking it before a part is chosen.
     *
     * @throws IllegalArgumentException if the design has no such bank
     */
    public static Design roomy(Design design, String bank, AirMover part) {
        int most = design.workingConditions().stream().flatMap(condition -> condition.failed().stream()).flatMap(failed -> failed.position().stream())
                .mapToInt(Integer::intValue).max().orElse(1);
        return of(design, bank, part, new Arrangement(Math.max(1, most), 1, 1, false), 1);
    }

    /**
     * Whether what is wrong with a design is due to the part in one of its banks and not to the design.
     *
     * @param problem what is wrong
     * @param design  the design with the part
     * @param bank    the bank
     */
    public static boolean isOfPart(Problem problem, Design design, String bank) {
        List<Passage> passages = design.airPath().passages();
        for (int i = 0; i < passages.size(); i++) {
            if (passages.get(i).id().equals(bank)) {
                String part = passages.get(i).parameters().get("mover").map(value -> value instanceof Value.Text(String id) ? id : "").orElse("");
                List<String> ids = design.airMovers().stream().map(AirMover::id).toList();
                return problem.place().startsWith("airMovers[" + ids.indexOf(part) + "]") || ids.contains(part)
                        && problem.place().equals("airPath.passages[" + i + "].mover");
            }
        }
        return false;
    }

    static Passage bank(Design design, String bank) {
        return design.airPath().passage(bank).filter(Passage::isBank).orElseThrow(() -> new IllegalArgumentException(
                "the design has no bank " + bank));
    }

    /** The design with control laws that drive other banks alone. */
    static Design without(Design design, String bank) {
        if (design.controlLaws().stream().noneMatch(law -> law.banks().contains(bank))) {
            return design;
        }
        return design.withControlLaws(design.controlLaws().stream().map(law -> new ControlLaw(law.id(), law.sensor(),
                law.banks().stream().filter(each -> !each.equals(bank)).toList(), law.temperature(), law.speed(), law.hysteresis(),
                law.riseLimit(), law.fallLimit(), law.more())).filter(law -> !law.banks().isEmpty()).toList());
    }

    /** The bank's passage with a part in it. */
    public static Passage passage(Passage bank, String part, Arrangement arrangement, double setting) {
        Value.Tree tree = bank.parameters().with("mover", new Value.Text(part)).with("across", Value.Num.of(arrangement.across()))
                .with("along", Value.Num.of(arrangement.along())).with("series", Value.Num.of(arrangement.series()));
        return bank.withParameters(tree.with("speed", share(setting)));
    }

    private static Value share(double setting) {
        double percent = Math.round(setting * 1e6) / 1e4;
        return new Value.Text((percent == Math.rint(percent) ? Long.toString((long) percent) : Double.toString(percent)) + " %");
    }

    private static AirMover free(Design design, String bank, AirMover part) {
        Optional<AirMover> same = design.airMover(part.id());
        boolean shared = same.isPresent() && !same.get().equals(part) && design.airPath().banks().stream()
                .anyMatch(other -> !other.id().equals(bank) && other.parameters().get("mover").filter(new Value.Text(part.id())::equals).isPresent());
        if (!shared) {
            return part;
        }
        String id = part.id() + " (chosen)";
        while (design.airMover(id).isPresent()) {
            id += "'";
        }
        return part.withId(id);
    }
}
