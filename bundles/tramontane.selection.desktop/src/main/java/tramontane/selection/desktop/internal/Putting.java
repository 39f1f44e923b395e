package tramontane.selection.desktop.internal;

import java.util.List;
import java.util.Optional;
import tramontane.model.AirMover;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.model.Value;
import tramontane.selection.Arrangement;
import tramontane.selection.Candidate;
import tramontane.selection.Placement;

/** Puts a candidate into a design, as the command line does, and takes out what then stands there for nothing. */
final class Putting {

    /** Stands for any part; no catalogue has its id. */
    private static final AirMover ANY = new AirMover("any part", "", Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
            Optional.empty(), Optional.empty(), List.of(), Value.Tree.EMPTY);

    private Putting() {
    }

    /**
     * The design with a candidate in its bank. The mover that the bank had before goes where nothing else speaks of it; undo brings
     * it back.
     *
     * @param design    the design as it is now, which need not be the one that the candidate was judged in
     * @param bank      the bank's id
     * @param candidate the candidate
     * @throws IllegalArgumentException if the design has no such bank any more
     */
    static Design into(Design design, String bank, Candidate candidate) {
        Optional<String> before = design.airPath().passage(bank).flatMap(Putting::mover);
        Design with = Placement.of(design, bank, candidate.part(), candidate.arrangement(), candidate.setting());
        return before.filter(old -> !speaksOf(with, old)).map(old -> with.withAirMovers(with.airMovers().stream()
                .filter(mover -> !mover.id().equals(old)).toList())).orElse(with);
    }

    /** The step's name, for undo. */
    static String step(String bank, Candidate candidate) {
        return "put " + candidate.words() + " into " + bank;
    }

    /** The design but for what a choice for one of its banks changes, and for what is kept of what is asked; the same for two designs means that what was chosen for one holds for the other. */
    static Design apart(Design design, String bank) {
        if (design.airPath().passage(bank).filter(Passage::isBank).isEmpty()) {
            return design;
        }
        Design any = Keeping.without(Placement.of(design, bank, ANY, Arrangement.SINGLE, 1), bank);
        return any.withAirMovers(any.airMovers().stream().filter(mover -> !mover.id().equals(ANY.id()) && speaksOf(any, mover.id())).toList());
    }

    private static Optional<String> mover(Passage bank) {
        return bank.parameters().text("mover");
    }

    /** Whether anything but the list of movers names a mover; a word in a section of somebody else's may be a reference, too. */
    private static boolean speaksOf(Design design, String mover) {
        return names(design.withAirMovers(List.<AirMover>of()).tree(), mover);
    }

    private static boolean names(Value value, String mover) {
        return switch (value) {
            case Value.Text(String text) -> text.equals(mover);
            case Value.Items items -> items.values().stream().anyMatch(item -> names(item, mover));
            case Value.Tree tree -> tree.members().values().stream().anyMatch(member -> names(member, mover));
            default -> false;
        };
    }
}
