package tramontane.catalogue.internal;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** Texts by their bytes: what occurs again and again is held once. Belongs to one thread. */
final class Words {

    private static final int MOST = 1 << 16;
    private static final int LONGEST = 64;

    private byte[][] keys = new byte[1024][];
    private String[] words = new String[1024];
    private int count;

    /** The text of some bytes in UTF-8. */
    String of(byte[] bytes, int from, int to) {
        if (to - from > LONGEST) {
            return new String(bytes, from, to - from, StandardCharsets.UTF_8);
        }
        int slot = Node.hash(bytes, from, to) & keys.length - 1;
        while (keys[slot] != null) {
            if (Arrays.equals(keys[slot], 0, keys[slot].length, bytes, from, to)) {
                return words[slot];
            }
            slot = slot + 1 & keys.length - 1;
        }
        String word = new String(bytes, from, to - from, StandardCharsets.UTF_8);
        if (count < MOST) {
            keys[slot] = Arrays.copyOfRange(bytes, from, to);
            words[slot] = word;
            if (2 * ++count > keys.length) {
                grow();
            }
        }
        return word;
    }

    private void grow() {
        byte[][] oldKeys = keys;
        String[] oldWords = words;
        keys = new byte[2 * oldKeys.length][];
        words = new String[keys.length];
        for (int i = 0; i < oldKeys.length; i++) {
            if (oldKeys[i] != null) {
                int slot = Node.hash(oldKeys[i], 0, oldKeys[i].length) & keys.length - 1;
                while (keys[slot] != null) {
                    slot = slot + 1 & keys.length - 1;
                }
                keys[slot] = oldKeys[i];
                words[slot] = oldWords[i];
            }
        }
    }
}
