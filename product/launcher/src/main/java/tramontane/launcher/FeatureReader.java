package tramontane.launcher;

import com.google.gson.Strictness;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonToken;
import com.google.gson.stream.MalformedJsonException;
import java.io.EOFException;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Reads feature files: JSON with comments, as the Feature Service specification (OSGi Compendium Release 8.1, chapter
 * 159) describes them. Keys that it does not know are passed over, so that a file for a newer launcher still loads.
 */
final class FeatureReader {
    private FeatureReader() {
    }

    /** Reads one file. */
    static Feature read(Path file) throws IOException {
        try {
            return parse(Files.readString(file));
        } catch (CharacterCodingException notUtf8) {
            throw new FeatureFormatException("it is not UTF-8 text");
        }
    }

    /** Reads the text of a feature file. */
    static Feature parse(String text) throws FeatureFormatException {
        JsonReader json = new JsonReader(new StringReader(withoutComments(text)));
        json.setStrictness(Strictness.STRICT);
        try {
            Feature feature = feature(json);
            if (json.peek() != JsonToken.END_DOCUMENT) {
                throw wrong(json, "nothing after the closing brace");
            }
            return feature;
        } catch (FeatureFormatException clear) {
            throw clear;
        } catch (EOFException cut) {
            throw new FeatureFormatException("it ends in the middle");
        } catch (MalformedJsonException malformed) {
            throw new FeatureFormatException("it is not correct JSON: " + firstLine(malformed));
        } catch (IOException impossible) {
            throw new FeatureFormatException("it cannot be read: " + firstLine(impossible));
        }
    }

    private static Feature feature(JsonReader json) throws IOException {
        expect(json, JsonToken.BEGIN_OBJECT, "an object");
        Optional<Coordinates> id = Optional.empty();
        List<Coordinates> bundles = new ArrayList<>();
        boolean configured = false;
        json.beginObject();
        while (json.hasNext()) {
            switch (json.nextName()) {
                case "feature-resource-version" -> version(json);
                case "id" -> id = Optional.of(coordinates(json));
                case "bundles" -> {
                    expect(json, JsonToken.BEGIN_ARRAY, "a list of bundles");
                    json.beginArray();
                    while (json.hasNext()) {
                        bundles.add(bundle(json));
                    }
                    json.endArray();
                }
                case "configurations" -> configured = filled(json);
                default -> json.skipValue();
            }
        }
        json.endObject();
        return new Feature(id.orElseThrow(() -> new FeatureFormatException("it has no \"id\"")), bundles, configured);
    }

    private static void version(JsonReader json) throws IOException {
        expect(json, JsonToken.STRING, "the text \"1.0\"");
        String version = json.nextString();
        if (!version.equals("1") && !version.startsWith("1.")) {
            throw new FeatureFormatException("it is written in version " + version
                    + " of the feature format, and this launcher reads version 1");
        }
    }

    private static Coordinates bundle(JsonReader json) throws IOException {
        if (json.peek() == JsonToken.STRING) {
            return coordinates(json);
        }
        expect(json, JsonToken.BEGIN_OBJECT, "a bundle");
        Optional<Coordinates> id = Optional.empty();
        json.beginObject();
        while (json.hasNext()) {
            if (json.nextName().equals("id")) {
                id = Optional.of(coordinates(json));
            } else {
                json.skipValue();
            }
        }
        if (id.isEmpty()) {
            throw wrong(json, "an \"id\" in each bundle");
        }
        json.endObject();
        return id.get();
    }

    private static Coordinates coordinates(JsonReader json) throws IOException {
        expect(json, JsonToken.STRING, "Maven coordinates as text");
        String path = json.getPath();
        try {
            return Coordinates.parse(json.nextString());
        } catch (IllegalArgumentException notCoordinates) {
            throw new FeatureFormatException("at " + path + " " + notCoordinates.getMessage());
        }
    }

    private static boolean filled(JsonReader json) throws IOException {
        if (json.peek() != JsonToken.BEGIN_OBJECT) {
            json.skipValue();
            return false;
        }
        json.beginObject();
        boolean filled = json.hasNext();
        while (json.hasNext()) {
            json.skipValue();
        }
        json.endObject();
        return filled;
    }

    private static void expect(JsonReader json, JsonToken token, String words) throws IOException {
        if (json.peek() != token) {
            throw wrong(json, words);
        }
    }

    private static FeatureFormatException wrong(JsonReader json, String expected) {
        return new FeatureFormatException("at " + json.getPath() + " it should have " + expected);
    }

    private static String firstLine(Exception exception) {
        return String.valueOf(exception.getMessage()).lines().findFirst().orElse("");
    }

    /**
     * Puts blanks in place of comments, so that what is left is strict JSON and the places in error messages stay right.
     */
    private static String withoutComments(String text) {
        StringBuilder plain = new StringBuilder(text);
        boolean quoted = false;
        for (int i = 0; i < plain.length(); i++) {
            char c = plain.charAt(i);
            if (quoted) {
                if (c == '\\') {
                    i++;
                } else if (c == '"') {
                    quoted = false;
                }
            } else if (c == '"') {
                quoted = true;
            } else if (startsWith(plain, i, "//")) {
                i = blank(plain, i, end(plain.indexOf("\n", i), plain)) - 1;
            } else if (startsWith(plain, i, "/*")) {
                int close = plain.indexOf("*/", i + 2);
                i = blank(plain, i, close < 0 ? plain.length() : close + 2) - 1;
            }
        }
        return plain.toString();
    }

    private static boolean startsWith(CharSequence text, int at, String mark) {
        return at + 1 < text.length() && text.charAt(at) == mark.charAt(0) && text.charAt(at + 1) == mark.charAt(1);
    }

    private static int end(int found, CharSequence text) {
        return found < 0 ? text.length() : found;
    }

    private static int blank(StringBuilder text, int from, int to) {
        for (int i = from; i < to; i++) {
            if (text.charAt(i) != '\n') {
                text.setCharAt(i, ' ');
            }
        }
        return to;
    }
}
