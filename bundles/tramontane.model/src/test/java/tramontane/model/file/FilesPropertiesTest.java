package tramontane.model.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.Value;

/** What holds for every file, sound or broken. */
class FilesPropertiesTest {

    private static final byte[] SOUND = DesignFileTest.rack().getBytes(StandardCharsets.UTF_8);

    @Provide
    Arbitrary<Value.Tree> files() {
        return Arbitraries.randomValue(random -> new RandomFiles(random).design());
    }

    /** A sound file after some accidents: bytes flipped, parts cut out, doubled, moved, the end missing. */
    @Provide
    Arbitrary<byte[]> accidents() {
        return Arbitraries.randomValue(random -> {
            byte[] bytes = SOUND;
            for (int i = 1 + random.nextInt(4); i > 0; i--) {
                bytes = accident(bytes, random);
            }
            return bytes;
        });
    }

    private static byte[] accident(byte[] bytes, Random random) {
        if (bytes.length < 2) {
            return bytes;
        }
        int at = random.nextInt(bytes.length);
        int length = Math.min(bytes.length - at, 1 + random.nextInt(random.nextBoolean() ? 4 : 200));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(bytes, 0, at);
        switch (random.nextInt(6)) {
            case 0 -> {
                out.write(bytes[at] ^ 1 << random.nextInt(8));
                out.write(bytes, at + 1, bytes.length - at - 1);
            }
            case 1 -> out.write(bytes, at + length, bytes.length - at - length);
            case 2 -> {
                out.write(bytes, at, length);
                out.write(bytes, at, bytes.length - at);
            }
            case 3 -> {
                out.write(bytes, random.nextInt(bytes.length - length + 1), length);
                out.write(bytes, at, bytes.length - at);
            }
            case 4 -> {
                String[] pieces = {"[", "]", "{", "}", ",", ":", "\"", "null", "-", "1e999999999", "NaN", "\\u", "\"format\":", "0",
                    "°C", "[[[[", "\u0000", "\uFEFF", "0.0000000001", "\"\"", "\"outside\""};
                out.writeBytes(pieces[random.nextInt(pieces.length)].getBytes(StandardCharsets.UTF_8));
                out.write(bytes, at + length - 1, bytes.length - at - length + 1);
            }
            default -> {
                // the end is missing
            }
        }
        return out.toByteArray();
    }

    @Property(tries = 300)
    void whatIsReadIsWrittenBackWhole(@ForAll("files") Value.Tree tree) {
        String written = TreeFile.write(tree);
        TreeFile.Read read = TreeFile.parse(written.getBytes(StandardCharsets.UTF_8), Limits.STANDARD);
        assertEquals(Optional.of(tree), read.tree());
        assertEquals(tree.toString(), read.tree().orElseThrow().toString()); // the order, too
        assertTrue(JsonMistake.in(written, 200).isEmpty());

        Loaded first = DesignFile.parse(written);
        assertTrue(first.design().isPresent(), () -> first.problems().toString());
        String saved = DesignFile.write(first.design().orElseThrow());
        Loaded second = DesignFile.parse(saved);
        assertEquals(first.design(), second.design());
        assertEquals(saved, DesignFile.write(second.design().orElseThrow()));
        // nothing lost, every literal as written
        assertEquals("", difference("", tree, second.design().orElseThrow().tree()));
        first.allProblems();
    }

    /** Where two values first differ; nothing where they are equal. */
    private static String difference(String place, Value one, Value other) {
        if (one instanceof Value.Tree(var first) && other instanceof Value.Tree(var second) && first.keySet().equals(second.keySet())) {
            return first.keySet().stream().map(name -> difference(place + "." + name, first.get(name), second.get(name)))
                    .filter(found -> !found.isEmpty()).findFirst().orElse("");
        }
        if (one instanceof Value.Items(var first) && other instanceof Value.Items(var second) && first.size() == second.size()) {
            return IntStream.range(0, first.size()).mapToObj(i -> difference(place + "[" + i + "]", first.get(i), second.get(i)))
                    .filter(found -> !found.isEmpty()).findFirst().orElse("");
        }
        return one.equals(other) ? "" : place + ": " + one + " became " + other;
    }

    @Property(tries = 3000)
    void noAccidentMakesReadingThrow(@ForAll("accidents") byte[] bytes) {
        Loaded loaded = DesignFile.parse(bytes, Limits.STANDARD);
        assertEquals(loaded.design().isPresent(), loaded.problems().stream().noneMatch(Problem::isError));
        for (Problem problem : loaded.allProblems()) {
            String sentence = problem.sentence();
            assertFalse(sentence.isBlank() || sentence.contains("\n") || sentence.contains("$.") || sentence.contains("Exception")
                    || sentence.contains("com.google"), sentence);
            assertNotEquals("the file is not JSON; expected an object { … }", sentence, "the place of the mistake was not found");
        }
        if (loaded.design().isPresent()) {
            Design design = loaded.design().get();
            Loaded again = DesignFile.parse(DesignFile.write(design));
            assertTrue(again.design().isPresent(), () -> again.problems().toString());
            assertEquals("", difference("", design.tree(), again.design().get().tree()));
            assertEquals(design, again.design().get());
        }
    }
}
