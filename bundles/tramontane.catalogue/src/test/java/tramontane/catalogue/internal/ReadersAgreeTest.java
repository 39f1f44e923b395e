package tramontane.catalogue.internal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import tramontane.catalogue.MotorSection;
import tramontane.model.AirMover;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.file.Limits;
import tramontane.model.file.TreeFile;

/** The quick reader takes a part exactly where the thorough one finds nothing wrong with it, and takes the same values from it. */
class ReadersAgreeTest {

    private static final FieldTree FIELDS = new FieldTree(List.of(new MotorSection(1)));
    private static final QuickReader QUICK = new QuickReader(FIELDS);
    private static final ThoroughReader THOROUGH = new ThoroughReader(FIELDS);

    @Provide
    Arbitrary<Value.Tree> soundFiles() {
        return Arbitraries.randomValue(random -> new RandomPartFiles(random).sound());
    }

    @Provide
    Arbitrary<byte[]> damagedFiles() {
        return Arbitraries.randomValue(random -> {
            RandomPartFiles files = new RandomPartFiles(random);
            return files.damaged(files.sound());
        });
    }

    @Property(tries = 600)
    void soundPartsAreTaken(@ForAll("soundFiles") Value.Tree file) {
        byte[] bytes = TreeFile.write(file).getBytes(StandardCharsets.UTF_8);
        PartTrees trees = PartTrees.of(TreeFile.parse(bytes, Limits.STANDARD));
        for (int i = 0; i < trees.size(); i++) {
            List<Problem> problems = trees.part(i, FIELDS.sections().values()).problems();
            assertEquals(List.of(), problems, "the generator is to make sound files");
        }
        compare(bytes);
    }

    @Property(tries = 2000)
    void damagedPartsAreNot(@ForAll("damagedFiles") byte[] bytes) {
        compare(bytes);
    }

    /** Of files as a lab writes them, without escapes in texts and without members that nothing knows, nearly all go the quick way. */
    @Test
    void theQuickWayIsTheUsualOne() {
        Random random = new Random(5);
        int taken = 0;
        int all = 0;
        for (int i = 0; i < 500; i++) {
            byte[] bytes = TreeFile.write(new RandomPartFiles(random).sound()).getBytes(StandardCharsets.UTF_8);
            try {
                FileIndex index = FileIndex.of(bytes);
                for (int part = 0; part < index.size(); part++) {
                    all++;
                    taken += quick(bytes, index, part).isEmpty() ? 0 : 1;
                }
            } catch (Odd e) {
                all++;
            }
        }
        assertTrue(taken > 0.8 * all, taken + " of " + all);
    }

    private static java.util.Optional<QuickReader.Part> quick(byte[] bytes, FileIndex index, int part) {
        try {
            return java.util.Optional.of(QUICK.read(bytes, index, index.shared(), part));
        } catch (Odd e) {
            return java.util.Optional.empty();
        }
    }

    private static void compare(byte[] bytes) {
        PartTrees trees = PartTrees.of(TreeFile.parse(bytes, Limits.STANDARD));
        List<AirMover> sound = new ArrayList<>();
        List<PartRow> rows = new ArrayList<>();
        Set<Problem> problems = new HashSet<>(trees.problems());
        List<Boolean> clean = new ArrayList<>();
        for (int i = 0; i < trees.size(); i++) {
            PartTrees.Part part = trees.part(i, FIELDS.sections().values());
            problems.addAll(part.problems());
            clean.add(part.mover().isPresent() && part.problems().isEmpty());
            part.mover().ifPresent(mover -> {
                sound.add(mover);
                rows.add(THOROUGH.row(mover, part.tree()));
            });
        }
        // what the quick reader takes, the thorough one has nothing to say about
        try {
            FileIndex index = FileIndex.of(bytes);
            for (int i = 0; i < index.size(); i++) {
                if (quick(bytes, index, i).isPresent() && trees.size() == index.size()) {
                    assertTrue(clean.get(i), () -> problems + " in " + new String(bytes, StandardCharsets.UTF_8));
                }
            }
        } catch (Odd e) {
            // the thorough reader alone
        }
        // and both together say what the thorough one says alone
        Store.Content content = Store.content(Path.of("x.json"), bytes, FIELDS, QUICK, THOROUGH);
        assertEquals(problems, new HashSet<>(content.problems()), () -> new String(bytes, StandardCharsets.UTF_8));
        assertEquals(sound, content.parts().stream().map(StoredPart::mover).toList());
        for (int i = 0; i < sound.size(); i++) {
            assertEquals(sound.get(i).id(), content.parts().get(i).id());
            PartRow got = content.parts().get(i).takeRow();
            assertEquals(values(rows.get(i)), values(got), () -> new String(bytes, StandardCharsets.UTF_8));
        }
    }

    private static Map<String, Object> values(PartRow row) {
        Map<String, Object> values = new TreeMap<>();
        List<FieldColumn> columns = FIELDS.columns();
        for (int i = 0; i < row.numbers().length; i++) {
            values.put(columns.get(row.numbersIn()[i]).path(), row.numbers()[i]);
        }
        for (int i = 0; i < row.texts().length; i++) {
            values.put(columns.get(row.textsIn()[i]).path() + " as text", row.texts()[i]);
        }
        assertEquals(row.numbers().length + row.texts().length, values.size());
        return values;
    }

    @Test
    void placesOfPartsAreFound() throws Odd {
        String text = "\uFEFF {\"maker\": \"m\", \"parts\": [{\"a\": [1, {}]}, {}], \"notes\": \"]\", \"x\" : {\"y\":null}} \n";
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        FileIndex index = FileIndex.of(bytes);
        assertTrue(index.family());
        assertEquals(2, index.size());
        assertEquals("{\"a\": [1, {}]}", new String(bytes, index.start(0), index.end(0) - index.start(0), StandardCharsets.UTF_8));
        assertEquals("{}", new String(bytes, index.start(1), index.end(1) - index.start(1), StandardCharsets.UTF_8));
        int[] shared = index.shared();
        assertEquals(4, shared.length);
        assertEquals("\"maker\": \"m\"", new String(bytes, shared[0], shared[1] - shared[0], StandardCharsets.UTF_8));
        assertEquals("\"x\" : {\"y\":null}", new String(bytes, shared[2], shared[3] - shared[2], StandardCharsets.UTF_8));
        FileIndex single = FileIndex.of("{\"id\": \"a\"}".getBytes(StandardCharsets.UTF_8));
        assertFalse(single.family());
        assertArrayEquals(new int[0], single.shared());
    }
}
