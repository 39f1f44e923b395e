package tramontane.cli.terminal;

import com.google.gson.FormattingStyle;
import com.google.gson.Strictness;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;

/** Documents in JSON, all laid out alike. */
public final class JsonDocument {

    private JsonDocument() {
    }

    /** What writes one value. */
    @FunctionalInterface
    public interface Body {
        /** Writes it. */
        void to(JsonWriter json) throws IOException;
    }

    /** A whole document, indented and ended by a line feed. */
    public static String of(Body body) {
        StringWriter text = new StringWriter();
        try (JsonWriter json = new JsonWriter(text)) {
            json.setFormattingStyle(FormattingStyle.PRETTY);
            json.setStrictness(Strictness.STRICT);
            body.to(json);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text.append('\n').toString();
    }

    /** Writes a number; JSON has no infinity, so what is not finite becomes null. */
    public static void number(JsonWriter json, double number) throws IOException {
        if (Double.isFinite(number)) {
            json.value(number);
        } else {
            json.nullValue();
        }
    }
}
