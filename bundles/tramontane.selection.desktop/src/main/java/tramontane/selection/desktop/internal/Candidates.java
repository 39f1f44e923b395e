package tramontane.selection.desktop.internal;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tramontane.analysis.FigureKind;
import tramontane.catalogue.Catalogue;
import tramontane.model.Design;
import tramontane.physics.units.UnitSystem;
import tramontane.selection.Candidate;
import tramontane.selection.Criterion;
import tramontane.selection.Placement;

/**
 * All that the view of candidates shows, at one moment.
 *
 * @param document   tells open designs apart
 * @param design     the design in front
 * @param banks      ids of its banks
 * @param asked      what is asked, as typed
 * @param problems   what is wrong with it, by field
 * @param parts      how many parts pass the filter
 * @param told       the figures with a better way that anything loaded tells, by who gives them
 * @param catalogue  what is chosen from; empty while it is being read
 * @param choosing   how the choice stands
 * @param order      how rows are sorted
 * @param find       what is looked for in the table
 * @param leftOut    whether what was left out is shown, too
 * @param selected   the rows that are selected, in the order in which they were
 * @param axes       the columns of the scatter, below and left
 * @param units      in which everything is shown
 * @param listing    the table
 * @param inFull     tables of the compared candidates over all conditions, as far as computed
 */
record Candidates(String document, Design design, List<String> banks, Asked asked, Map<String, String> problems, int parts, List<Told> told,
        Optional<Catalogue> catalogue, Choosing choosing, Order order, String find, boolean leftOut, List<Key> selected, List<String> axes,
        UnitSystem units, Listing listing, Optional<InFull> inFull) {

    static final Candidates NOTHING = new Candidates("", Design.EMPTY, List.of(), Asked.NOTHING, Map.of(), 0, List.of(), Optional.empty(),
            Choosing.NOT_STARTED, Listing.BY_RANK, "", false, List.of(), List.of("", ""), UnitSystem.METRIC, Listing.EMPTY, Optional.empty());

    Candidates {
        banks = List.copyOf(banks);
        problems = Collections.unmodifiableMap(new LinkedHashMap<>(problems));
        told = List.copyOf(told);
        selected = List.copyOf(selected);
        axes = List.copyOf(axes);
    }

    /**
     * A figure that can be a criterion.
     *
     * @param group  the analysis that gives it
     * @param figure the figure; it has a better way
     */
    record Told(String group, FigureKind figure) {
    }

    /**
     * Candidates over all conditions.
     *
     * @param of     which
     * @param tables with one column per candidate
     */
    record InFull(List<Key> of, List<tramontane.analysis.Table> tables) {
        InFull {
            of = List.copyOf(of);
            tables = List.copyOf(tables);
        }
    }

    /**
     * What stands in the place of a table that has nothing to show.
     *
     * @param title    in a few words
     * @param sentence what would fill it
     * @param button   what the one button says; empty for none
     * @param action   what the button does
     */
    record Empty(String title, String sentence, String button, Action action) {
    }

    /** What a button of an empty view does. */
    enum Action {
        /** Nothing. */
        NONE,
        /** Opens the tree of the design. */
        SHOW_DESIGN,
        /** Opens the folder of the user's own parts. */
        OPEN_FOLDER,
        /** Starts the choice. */
        CHOOSE,
        /** Shows what was left out. */
        SHOW_LEFT_OUT,
        /** Looks for nothing. */
        CLEAR_FIND
    }

    Candidates scene(String key, Design changed, List<String> ids, Asked wish, UnitSystem shown) {
        return new Candidates(key, changed, ids, wish, problems, parts, told, catalogue, choosing, order, find, leftOut, selected, axes, shown, listing, inFull);
    }

    Candidates asked(Asked changed) {
        return new Candidates(document, design, banks, changed, problems, parts, told, catalogue, choosing, order, find, leftOut, selected, axes, units, listing, inFull);
    }

    Candidates read(Asked.Read read) {
        return new Candidates(document, design, banks, asked, read.problems(), read.parts(), told, catalogue, choosing, order, find, leftOut, selected, axes, units,
                listing, inFull);
    }

    Candidates told(List<Told> changed) {
        return new Candidates(document, design, banks, asked, problems, parts, changed, catalogue, choosing, order, find, leftOut, selected, axes, units, listing, inFull);
    }

    Candidates catalogue(Catalogue changed) {
        return new Candidates(document, design, banks, asked, problems, parts, told, Optional.of(changed), choosing, order, find, leftOut, selected, axes, units,
                listing, inFull);
    }

    Candidates choosing(Choosing changed) {
        return new Candidates(document, design, banks, asked, problems, parts, told, catalogue, changed, order, find, leftOut, selected, axes, units, listing, inFull);
    }

    Candidates order(Order changed) {
        return new Candidates(document, design, banks, asked, problems, parts, told, catalogue, choosing, changed, find, leftOut, selected, axes, units, listing, inFull);
    }

    Candidates find(String changed) {
        return new Candidates(document, design, banks, asked, problems, parts, told, catalogue, choosing, order, changed, leftOut, selected, axes, units, listing, inFull);
    }

    Candidates leftOut(boolean changed) {
        return new Candidates(document, design, banks, asked, problems, parts, told, catalogue, choosing, order, find, changed, selected, axes, units, listing, inFull);
    }

    Candidates selected(List<Key> changed) {
        return new Candidates(document, design, banks, asked, problems, parts, told, catalogue, choosing, order, find, leftOut, changed, axes, units, listing, inFull);
    }

    Candidates axes(String x, String y) {
        return new Candidates(document, design, banks, asked, problems, parts, told, catalogue, choosing, order, find, leftOut, selected, List.of(x, y), units, listing,
                inFull);
    }

    Candidates listing(Listing changed) {
        return new Candidates(document, design, banks, asked, problems, parts, told, catalogue, choosing, order, find, leftOut, selected, axes, units, changed, inFull);
    }

    Candidates inFull(Optional<InFull> changed) {
        return new Candidates(document, design, banks, asked, problems, parts, told, catalogue, choosing, order, find, leftOut, selected, axes, units, listing, changed);
    }

    /** Ids of the figures that anything loaded tells. */
    Set<String> figures() {
        return told.stream().map(each -> each.figure().id()).collect(Collectors.toCollection(LinkedHashSet::new));
    }

    /** The figures that can be criteria beside those that always are. */
    List<Told> addable() {
        // noise and life are these figures
        return told.stream().filter(each -> !Set.of(Criterion.NOISE_FIGURE, Criterion.LIFE_FIGURE).contains(each.figure().id())).toList();
    }

    /** What people call a criterion; of figures of one name with the id. */
    String label(String criterion) {
        return told.stream().filter(each -> each.figure().id().equals(criterion)).map(each -> each.figure().label()
                + (told.stream().filter(other -> other.figure().label().equals(each.figure().label())).count() > 1 ? " (" + criterion + ")" : ""))
                .findFirst().orElse(Asked.label(criterion));
    }

    /** What is meant by a criterion, for the hover. */
    String help(String criterion) {
        return "How much " + label(criterion) + " counts, compared with the other weights; 0 for not at all."
                + told.stream().filter(each -> each.figure().id().equals(criterion)).findFirst().map(each -> "\n" + each.figure().help() + "\nThe worst of all places and conditions counts.").orElse("");
    }

    /** Whether the design does not say what is asked, and can be made to. */
    boolean canKeep() {
        return Keeping.in(design, asked, figures()).filter(kept -> !kept.equals(design)).isPresent();
    }

    /** Whether a choice can be started now. */
    boolean canChoose() {
        return !choosing.isRunning() && problems.isEmpty() && !asked.bank().isEmpty() && catalogue.filter(parts -> parts.size() > 0).isPresent();
    }

    /** Whether what is shown was chosen for a design that has changed since, or for something else than what is asked now. */
    boolean isStale() {
        return listing.stale() || choosing.task().filter(task -> !task.bank().equals(asked.bank())).isPresent();
    }

    /** The rows that are selected and still there. */
    List<Row> selectedRows() {
        return selected.stream().flatMap(key -> listing.row(key).stream()).toList();
    }

    /** The candidate that would be put into the design: the one that is selected, if it is one only. */
    Optional<Candidate> toPut() {
        List<Row> rows = selectedRows();
        return rows.size() == 1 && banks.contains(bank()) ? rows.getFirst().candidate() : Optional.empty();
    }

    /** Whether the candidate that would be put is what stands in the bank already. */
    boolean isPut() {
        return toPut().flatMap(candidate -> design.airPath().passage(bank()).filter(passage -> Placement.passage(passage, candidate.part().id(),
                candidate.arrangement(), candidate.setting()).equals(passage))).isPresent();
    }

    /** What the button that puts it says. */
    String putWords() {
        return isPut() ? "is in the design" : "put into design";
    }

    /** What is said in the place of an explanation where there is none. */
    String explanationHint() {
        return listing.all() == 0 ? "Why a candidate stands where it stands is said here once there is one."
                : "Select a candidate to read why it stands where it stands, what limits it, and what is met with how much to spare.";
    }

    /** The bank that the shown candidates are for. */
    String bank() {
        return choosing.task().map(task -> task.bank()).orElse(asked.bank());
    }

    Explanation explanation() {
        List<Row> rows = selectedRows();
        return rows.isEmpty() ? Explanation.NONE : Explanation.of(rows.getLast(), choosing);
    }

    Comparison comparison() {
        return Comparison.of(selectedRows(), listing.columns(), catalogue, units);
    }

    Scatter scatter() {
        return Scatter.of(listing, axes.get(0), axes.get(1), selected);
    }

    /** What stands in the place of the table; empty where there are rows. */
    Optional<Empty> empty() {
        if (banks.isEmpty()) {
            return Optional.of(new Empty("No bank to choose for", "This design has no bank of air movers yet. Add a passage of kind bank to the air path; it need not hold a mover.",
                    "show the design", Action.SHOW_DESIGN));
        }
        if (catalogue.isEmpty()) {
            return Optional.of(new Empty("Reading the catalogue", "The parts are being read from their files.", "", Action.NONE));
        }
        if (catalogue.get().size() == 0) {
            return Optional.of(new Empty("No parts", "There are no parts to choose from. Put files of parts into your own folder; they are read as soon as they are there.",
                    "open the folder", Action.OPEN_FOLDER));
        }
        if (!listing.rows().isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(switch (choosing.status()) {
            case NOT_STARTED -> problems.isEmpty() ? new Empty("Nothing chosen yet", (parts == 1 ? "1 part passes" : parts + " parts pass")
                    + " the filter. The choice judges them against every requirement in every condition, for bank " + asked.bank() + ".", "choose", Action.CHOOSE)
                    : new Empty("Nothing chosen yet", "Correct what is marked above first: " + problems.values().iterator().next() + ".", "", Action.NONE);
            case RUNNING -> new Empty("Choosing", "Candidates appear here as they are found.", "", Action.NONE);
            case FAILED -> new Empty("Nothing could be chosen", capital(choosing.sentence()) + ".", canChoose() ? "choose again" : "", canChoose() ? Action.CHOOSE : Action.NONE);
            case DONE, STOPPED -> nothingThere();
        });
    }

    private Empty nothingThere() {
        if (!find.isBlank() && listing.all() > 0) {
            return new Empty("Nothing found", "None of " + listing.all() + " rows fits what is looked for.", "show all", Action.CLEAR_FIND);
        }
        if (choosing.status() == Choosing.Status.STOPPED) {
            return new Empty("Stopped", "The choice was stopped before anything was found.", canChoose() ? "choose again" : "", canChoose() ? Action.CHOOSE : Action.NONE);
        }
        return new Empty("None meets everything", "What was left out says why, and the nearest ones what would have to change.",
                leftOut ? "" : "show what was left out", leftOut ? Action.NONE : Action.SHOW_LEFT_OUT);
    }

    static String capital(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
