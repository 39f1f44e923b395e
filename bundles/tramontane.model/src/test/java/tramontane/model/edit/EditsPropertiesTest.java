package tramontane.model.edit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tramontane.model.Consistency;
import tramontane.model.Design;
import tramontane.model.Noun;
import tramontane.model.Problem;
import tramontane.model.References;
import tramontane.model.Shape;
import tramontane.model.Value;
import tramontane.model.file.DesignFile;

/** What holds for every edit of every design whose parts fit together. */
class EditsPropertiesTest {

    private static final Edits EDITS = new Edits(Designs.FORMS);

    @Provide
    Arbitrary<Design> designs() {
        return Arbitraries.randomValue(Designs::random);
    }

    private static Edit done(Edit edit) {
        assertFalse(edit.isRefused(), edit.message());
        return edit;
    }

    private static Design after(Edit edit) {
        return done(edit).design().orElseThrow();
    }

    private static List<Subject> listed(Design design) {
        return Subject.all(design).stream().filter(subject -> subject.kind().isListed()).toList();
    }

    private static Subject one(List<Subject> subjects, long seed) {
        return subjects.get(new Random(seed).nextInt(subjects.size()));
    }

    /** Every error, those of names in parameters and sections among them. */
    private static Set<String> errors(Design design) {
        Set<String> errors = new HashSet<>();
        Consistency.check(design).stream().filter(Problem::isError).map(Problem::message).forEach(errors::add);
        for (Subject subject : Subject.all(design)) {
            References.rename(subject.kind().form(), subject.tree(design).orElseThrow(), "", Designs.FORMS::whole, (name, target, place) -> {
                if (!References.names(design, target).contains(name)) {
                    errors.add(name + " is dangling as " + target);
                }
                return Optional.of(name);
            });
        }
        return errors;
    }

    private static void sound(Design design) {
        assertEquals(Set.of(), errors(design));
        saved(design);
    }

    /** Sound but for bays that nothing joins yet. */
    private static void soundButForNewBays(Design design) {
        Set<String> errors = errors(design);
        errors.removeIf(error -> error.startsWith("no passage joins"));
        assertEquals(Set.of(), errors);
        saved(design);
    }

    private static void saved(Design design) {
        assertEquals(design, DesignFile.parse(DesignFile.write(design)).editable().orElseThrow());
    }

    /** Every path to every value of an object. */
    private static void paths(Value value, FieldPath path, List<FieldPath> paths) {
        if (!path.isWhole()) {
            paths.add(path);
        }
        switch (value) {
            case Value.Tree tree -> tree.members().forEach((name, inner) -> paths(inner, path.member(name), paths));
            case Value.Items(List<Value> items) -> {
                for (int i = 0; i < items.size(); i++) {
                    paths(items.get(i), path.item(i), paths);
                }
            }
            default -> {
                // nothing within
            }
        }
    }

    @Property(tries = 300)
    void designsHaveNoErrorsToBeginWith(@ForAll("designs") Design design) {
        sound(design);
    }

    @Property(tries = 300)
    void settingWhatStandsThereChangesNothing(@ForAll("designs") Design design, @ForAll long seed) {
        Subject subject = one(Subject.all(design), seed);
        Value.Tree tree = subject.tree(design).orElseThrow();
        List<FieldPath> paths = new ArrayList<>();
        paths(tree, FieldPath.WHOLE, paths);
        for (FieldPath path : paths) {
            assertEquals(design, after(EDITS.set(design, subject, path, path.in(tree))), () -> subject + " " + path);
        }
    }

    @Property(tries = 300)
    void takingOutAndPuttingBackAFieldIsEqual(@ForAll("designs") Design design, @ForAll long seed) {
        Subject subject = one(Subject.all(design), seed);
        Value.Tree tree = subject.tree(design).orElseThrow();
        for (String name : tree.members().keySet()) {
            FieldPath path = FieldPath.of(name);
            if (!name.equals("id") && EDITS.set(design, subject, path, Optional.empty()) instanceof Edit without && !without.isRefused()) {
                saved(after(without));
                Edit back = done(EDITS.set(after(without), subject, path, tree.get(name)));
                // members that the model does not know go last
                assertEquals(Map.copyOf(tree.members()), Map.copyOf(subject.tree(after(back)).orElseThrow().members()));
                saved(after(back));
            }
        }
    }

    @Property(tries = 500)
    void renamingThereAndBackIsEqual(@ForAll("designs") Design design, @ForAll long seed) {
        List<Subject> named = listed(design).stream().filter(subject -> subject.kind().isNamed()).toList();
        Subject subject = one(named, seed);
        Edit there = done(EDITS.rename(design, subject, "something new"));
        assertEquals("", there.message());
        sound(after(there));
        assertFalse(DesignFile.write(after(there)).contains("\"near\": \"" + subject.id() + '"'));
        assertEquals(design, after(EDITS.rename(after(there), there.subjects().getFirst(), subject.id())));
    }

    @Property(tries = 300)
    void removingWhatWasAddedIsEqual(@ForAll("designs") Design design, @ForAll long seed) {
        for (Subject.Kind kind : Subject.Kind.values()) {
            if (kind.isListed()) {
                Optional<Subject> after = kind.of(design).isEmpty() ? Optional.empty() : Optional.of(one(kind.subjects(design), seed));
                Edit added = done(EDITS.add(design, kind, Value.Tree.EMPTY, after));
                saved(after(added));
                assertEquals(kind.of(design).size() + 1, kind.of(after(added)).size());
                assertEquals(design, after(EDITS.remove(after(added), added.subjects())), kind.noun());
            }
        }
    }

    @Property(tries = 300)
    void whatIsRemovedLeavesOnlyNamesThatAreNoted(@ForAll("designs") Design design, @ForAll long seed) {
        Subject subject = one(listed(design), seed);
        Edit removed = done(EDITS.remove(design, List.of(subject)));
        saved(after(removed));
        boolean dangling = errors(after(removed)).stream().anyMatch(error -> error.contains("dangling"));
        assertEquals(dangling, !removed.message().isEmpty(), () -> removed.message() + " " + errors(after(removed)));
    }

    @Property(tries = 300)
    void duplicatesAreSoundAndTheOriginalStays(@ForAll("designs") Design design, @ForAll long seed) {
        Subject subject = one(listed(design), seed);
        Edit twice = done(EDITS.duplicate(design, List.of(subject)));
        soundButForNewBays(after(twice));
        assertEquals(subject.noun(design), subject.noun(after(twice)));
        assertEquals(subject.index(design).orElseThrow() + 1, twice.subjects().getFirst().index(after(twice)).orElseThrow());
        assertEquals(design, after(EDITS.remove(after(twice), twice.subjects())));
    }

    @Property(tries = 300)
    void allThatIsCopiedAndPastedIsSound(@ForAll("designs") Design design, @ForAll long seed) {
        Random random = new Random(seed);
        List<Subject> some = listed(design).stream().filter(subject -> random.nextBoolean()).toList();
        Optional<String> text = EDITS.copy(design, some);
        assertEquals(some.isEmpty(), text.isEmpty());
        if (text.isPresent()) {
            assertTrue(Edits.canPaste(text.get()));
            Edit pasted = done(EDITS.paste(design, text.get(), Optional.empty()));
            assertEquals("", pasted.message());
            soundButForNewBays(after(pasted));
            assertEquals(some.size(), pasted.subjects().size());
            assertEquals(design, after(EDITS.remove(after(pasted), pasted.subjects())));
        }
    }

    @Property(tries = 200)
    void everythingPastedIntoAnEmptyDesignIsTheSame(@ForAll("designs") Design design) {
        String text = EDITS.copy(design, Subject.all(design)).orElseThrow();
        Edit pasted = done(EDITS.paste(Design.EMPTY, text, Optional.empty()));
        assertEquals("", pasted.message());
        for (Subject.Kind kind : Subject.Kind.values()) {
            if (kind.isListed()) {
                assertEquals(kind.of(design), kind.of(after(pasted)));
            }
        }
    }

    @Property(tries = 300)
    void movingThereAndBackIsEqual(@ForAll("designs") Design design, @ForAll long seed, @ForAll int to) {
        Subject subject = one(listed(design), seed);
        Edit moved = done(EDITS.move(design, subject, to));
        sound(after(moved));
        List<? extends Noun> all = subject.kind().of(design);
        assertEquals(Set.copyOf(all), Set.copyOf(subject.kind().of(after(moved))));
        assertEquals(design, after(EDITS.move(after(moved), moved.subjects().getFirst(), subject.index(design).orElseThrow())));
    }
}
