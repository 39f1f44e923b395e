package tramontane.selection.desktop.internal;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tramontane.analysis.Better;
import tramontane.analysis.Engine;
import tramontane.catalogue.Catalogue;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.physics.units.UnitSystem;
import tramontane.selection.Candidate;
import tramontane.selection.Criterion;
import tramontane.selection.Selection;
import tramontane.selection.Selector;
import tramontane.selection.Task;
import tramontane.selection.Watch;

/** Makes states of the view of candidates out of what the user does and what the choice finds. On the UI thread only. */
final class CandidatesPresenter {

    private final Selector selector;
    private final Engine engine;
    private final Desktop desktop;
    private final Consumer<Candidates> view;
    private Candidates state = Candidates.NOTHING;
    private Runnable stop = () -> { };
    /** Which choice counts: what an earlier one still says is not heard any more. */
    private int turn;
    private boolean deriving;
    private boolean again;
    private boolean reading;
    private boolean rereading;
    private boolean closed;

    /**
     * A presenter with nothing to show yet.
     *
     * @param selector chooses
     * @param engine   tells which figures there are
     * @param desktop  the window
     * @param view     draws a state; called whenever it has changed
     */
    CandidatesPresenter(Selector selector, Engine engine, Desktop desktop, Consumer<Candidates> view) {
        this.selector = selector;
        this.engine = engine;
        this.desktop = desktop;
        this.view = view;
    }

    Candidates state() {
        return state;
    }

    /** Another design, or the same one changed, or other units. What is typed stays while the bank is there. */
    void scene(String document, Design design, UnitSystem units) {
        boolean same = document.equals(state.document());
        if (same && design == state.design() && units.equals(state.units())) {
            return;
        }
        List<String> banks = design.airPath().banks().stream().map(Passage::id).toList();
        boolean kept = same && banks.contains(state.asked().bank());
        Asked asked = kept ? wish(design, state.asked()) : banks.isEmpty() ? Asked.NOTHING : weighable(Asked.of(design, banks.getFirst()));
        if (!same) {
            leave();
            state = state.choosing(Choosing.NOT_STARTED).selected(List.of()).inFull(Optional.empty()).leftOut(false).find("").listing(Listing.EMPTY);
        }
        state = state.scene(document, design, banks, asked, units).told(told());
        read();
        derive();
    }

    /** What the design says now where it says something new; else what is typed. */
    private Asked wish(Design design, Asked typed) {
        Asked before = weighable(Asked.of(state.design(), typed.bank()));
        Asked now = weighable(Asked.of(design, typed.bank()));
        if (now.equals(before)) {
            return typed;
        }
        Asked next = new Asked(now.bank(), now.texts(), typed.ended(), typed.certain());
        return typed.texts().containsKey(Asked.LISTED) ? next.with(Asked.LISTED, typed.text(Asked.LISTED)) : next;
    }

    /** With a field for the weight of each criterion that anything loaded tells. */
    private Asked weighable(Asked asked) {
        Set<String> figures = figures();
        Asked all = asked;
        for (String criterion : Task.EVEN.keySet()) {
            boolean tellable = switch (criterion) {
                case Criterion.NOISE -> figures.contains(Criterion.NOISE_FIGURE);
                case Criterion.LIFE -> figures.contains(Criterion.LIFE_FIGURE);
                default -> true;
            };
            String field = Asked.weight(criterion);
            if (!tellable && all.texts().containsKey(field)) {
                all = all.without(field);
            } else if (tellable && !all.texts().containsKey(field)) {
                all = all.with(field, "0");
            }
        }
        return all;
    }

    private Set<String> figures() {
        return told().stream().map(each -> each.figure().id()).collect(Collectors.toCollection(LinkedHashSet::new));
    }

    /** Each figure once, with the first analysis that gives it. */
    private List<Candidates.Told> told() {
        Map<String, Candidates.Told> told = new LinkedHashMap<>();
        engine.analyses().forEach(analysis -> analysis.figures().stream().filter(figure -> figure.better() != Better.NEITHER)
                .forEach(figure -> told.putIfAbsent(figure.id(), new Candidates.Told(analysis.label(), figure))));
        return List.copyOf(told.values());
    }

    void catalogue(Catalogue catalogue) {
        state = state.catalogue(catalogue);
        read();
        derive();
    }

    /** Another bank. */
    void bank(String id) {
        if (!id.equals(state.asked().bank()) && state.banks().contains(id)) {
            state = state.asked(weighable(Asked.of(state.design(), id)));
            read();
        }
    }

    /** Another text in a field. */
    void type(String field, String text) {
        if (!text.equals(state.asked().text(field)) || !state.asked().texts().containsKey(field)) {
            state = state.asked(state.asked().with(field, text));
            read();
        }
    }

    /** A figure counts, too, as much as each of those that do where nothing is said; or it has no weight any more. */
    void weigh(String figure, boolean counts) {
        String field = Asked.weight(figure);
        if (counts != state.asked().texts().containsKey(field)) {
            state = state.asked(counts ? state.asked().with(field, "1") : state.asked().without(field));
            read();
        }
    }

    /** Keeps what is asked in the design, as one step. */
    void keep() {
        Asked asked = state.asked();
        Set<String> figures = figures();
        Optional<Design> kept = Keeping.in(state.design(), asked, figures);
        if (kept.isEmpty()) {
            desktop.say("the settings cannot be kept; correct what is marked, or section selection of the bank");
        } else if (kept.get().equals(state.design())) {
            desktop.say("the design says the same already");
        } else {
            desktop.edit("keep settings of the choice for " + asked.bank(), design -> Keeping.in(design, asked, figures).orElse(design));
        }
    }

    void ended(boolean wanted) {
        state = state.asked(state.asked().ended(wanted));
        read();
    }

    void certain(boolean wanted) {
        state = state.asked(state.asked().certain(wanted));
        read();
    }

    /** Reads what is typed, off the UI thread as a filter goes through the whole catalogue. */
    private void read() {
        show();
        if (state.catalogue().isEmpty() || state.asked().bank().isEmpty()) {
            return;
        }
        if (reading) {
            rereading = true;
            return;
        }
        reading = true;
        Candidates now = state;
        Set<String> figures = figures();
        desktop.quietly(() -> now.asked().read(now.design(), now.catalogue().orElseThrow(), figures), read -> {
            reading = false;
            if (rereading) {
                rereading = false;
                read();
            } else {
                state = state.read(read);
                show();
            }
        });
    }

    /** Starts the choice, if what is typed can be read. */
    void choose() {
        if (closed || state.choosing().isRunning() || state.catalogue().isEmpty()) {
            return;
        }
        Asked asked = state.asked();
        Design design = state.design();
        Catalogue catalogue = state.catalogue().get();
        Set<String> figures = figures();
        int mine = ++turn;
        desktop.quietly(() -> asked.read(design, catalogue, figures), read -> {
            if (mine != turn) {
                return;
            }
            state = state.read(read);
            if (read.task().isEmpty()) {
                show();
                return;
            }
            Task task = read.task().get();
            state = state.choosing(Choosing.started(task)).inFull(Optional.empty());
            derive();
            Runnable halt = desktop.start("choosing a mover for " + task.bank(), watch -> run(task, watch, mine));
            if (state.choosing().isRunning()) {
                stop = halt;
            }
        });
    }

    private void run(Task task, Engine.Watch watch, int mine) {
        try {
            Selection selection = selector.choose(task, new Watch() {
                @Override
                public boolean cancelled() {
                    return watch.cancelled();
                }

                @Override
                public void progress(double fraction, String message) {
                    watch.progress(fraction, message);
                    tell(mine, choosing -> choosing.progress(fraction, message), false);
                }

                @Override
                public void found(Candidate candidate) {
                    tell(mine, choosing -> choosing.found(candidate), true);
                }

                @Override
                public void judged(int judged, int may) {
                    tell(mine, choosing -> choosing.judged(judged, may), false);
                }
            });
            tell(mine, choosing -> choosing.ended(selection), true);
        } catch (RuntimeException | LinkageError fault) { // the view says so; the window goes on
            tell(mine, choosing -> choosing.broken(fault), true);
        }
    }

    /** What the choice says, from any thread. */
    private void tell(int mine, UnaryOperator<Choosing> change, boolean rows) {
        desktop.later(() -> {
            if (mine != turn || closed) {
                return;
            }
            state = state.choosing(change.apply(state.choosing()));
            if (rows) {
                derive();
            } else {
                show();
            }
        });
    }

    /** Stops the choice; what was found stays. */
    void stop() {
        stop.run();
    }

    /** Stops the choice and hears no more of it. */
    private void leave() {
        turn++;
        stop.run();
        stop = () -> { };
    }

    /** The view is closed. */
    void close() {
        closed = true;
        leave();
    }

    void sort(String column) {
        state = state.order(state.order().clicked(column));
        derive();
    }

    void find(String text) {
        if (!text.equals(state.find())) {
            state = state.find(text);
            derive();
        }
    }

    void leftOut(boolean shown) {
        if (shown != state.leftOut()) {
            state = state.leftOut(shown);
            derive();
        }
    }

    /** What is selected; those that were selected before keep their order, so that columns of a comparison do not change places. */
    void select(List<Key> keys) {
        List<Key> ordered = Stream.concat(state.selected().stream().filter(keys::contains), keys.stream().filter(key -> !state.selected().contains(key))).toList();
        if (!ordered.equals(state.selected())) {
            state = state.selected(ordered);
            show();
        }
    }

    void axes(String x, String y) {
        state = state.axes(x, y);
        show();
    }

    /** Computes the compared candidates over all conditions. */
    void compareInFull() {
        List<Key> keys = state.selected();
        List<Candidate> candidates = state.selectedRows().stream().flatMap(row -> row.candidate().stream()).toList();
        Optional<Task> task = state.choosing().task();
        if (candidates.size() < Comparison.LEAST || task.isEmpty()) {
            return;
        }
        int mine = turn;
        desktop.start("comparing " + candidates.size() + " candidates", watch -> {
            List<tramontane.analysis.Table> tables = selector.compare(task.get(), candidates);
            desktop.later(() -> {
                if (mine == turn && !closed) {
                    state = state.inFull(Optional.of(new Candidates.InFull(keys, tables)));
                    show();
                }
            });
        });
    }

    /** Puts the candidate that is selected into the design, as one step. */
    void put() {
        Optional<Candidate> candidate = state.toPut();
        if (candidate.isEmpty()) {
            desktop.say("select one candidate to put it into the design");
            return;
        }
        String bank = state.bank();
        desktop.edit(Putting.step(bank, candidate.get()), design -> Putting.into(design, bank, candidate.get()));
    }

    /** Makes the table anew, off the UI thread; what comes meanwhile is taken up in one go afterwards. */
    private void derive() {
        show();
        if (deriving) {
            again = true;
            return;
        }
        deriving = true;
        Candidates now = state;
        desktop.quietly(() -> Listing.of(now.choosing(), now.design(), now.catalogue(), now.order(), now.find(), now.leftOut(), now.units()), listing -> {
            deriving = false;
            if (again) {
                again = false;
                state = state.choosing().task().equals(now.choosing().task()) ? state.listing(listing) : state;
                derive();
            } else {
                state = state.listing(listing);
                show();
            }
        });
    }

    private void show() {
        if (!closed) {
            view.accept(state);
        }
    }
}
