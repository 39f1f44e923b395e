package tramontane.cli.internal;

import java.io.IOException;
import java.io.Writer;
import tramontane.cli.internal.output.Spelling;

/** Passes on what the encoding behind it can hold. */
final class SpellingWriter extends Writer {

    private final Writer behind;
    private final Spelling spelling;

    SpellingWriter(Writer behind, Spelling spelling) {
        this.behind = behind;
        this.spelling = spelling;
    }

    @Override
    public void write(char[] characters, int from, int length) throws IOException {
        int start = from;
        for (int i = from; i < from + length; i++) {
            char c = characters[i];
            if (c == '\n' || c == '\t' || c == '\r') {
                behind.write(spelling.of(new String(characters, start, i - start)));
                behind.write(c);
                start = i + 1;
            }
        }
        behind.write(spelling.of(new String(characters, start, from + length - start)));
    }

    @Override
    public void flush() throws IOException {
        behind.flush();
    }

    @Override
    public void close() throws IOException {
        behind.close();
    }
}
