package tramontane.model.file;

import com.google.gson.Strictness;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonToken;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedSet;
import tramontane.model.Problem;
import tramontane.model.Value;

/** Turns JSON into a value tree; numbers stay as written, members in their order, names given twice are reported. */
final class JsonTree {

    /** Numbers that occur again and again are held once; more different ones than this are not worth remembering. */
    private static final int REMEMBERED = 10_000;

    /** A file holds more than it may. */
    private static final class TooMuch extends IOException {
        private static final long serialVersionUID = 1L;

        TooMuch(String message) {
            super(message);
        }
    }

    private final JsonReader json;
    private final Limits limits;
    private final List<Problem> problems;
    private final Map<String, Value.Num> numbers = new HashMap<>();
    private final Object[] path;
    private int depth;
    private int values;

    private JsonTree(Reader text, Limits limits, List<Problem> problems) {
        this.json = new JsonReader(text);
        this.limits = limits;
        this.problems = problems;
        this.path = new Object[limits.depth()];
        json.setStrictness(Strictness.STRICT);
        json.setNestingLimit(limits.depth());
    }

    /** The object in a file, unless it is not JSON or no object; what is wrong goes to the problems. */
    static Optional<Value.Tree> read(byte[] bytes, Limits limits, List<Problem> problems) {
        int start = bytes.length >= 3 && bytes[0] == (byte) 0xEF && bytes[1] == (byte) 0xBB && bytes[2] == (byte) 0xBF ? 3 : 0;
        Reader text = new InputStreamReader(new ByteArrayInputStream(bytes, start, bytes.length - start), decoder());
        try {
            return new JsonTree(text, limits, problems).whole();
        } catch (TooMuch e) {
            problems.add(Problem.error("", e.getMessage()));
        } catch (IOException e) {
            // not UTF-8 or not JSON: look again, slowly, for the place and the words
            problems.add(whatIsWrong(bytes, start, limits));
        }
        return Optional.empty();
    }

    private static CharsetDecoder decoder() {
        return StandardCharsets.UTF_8.newDecoder().onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
    }

    private static Problem whatIsWrong(byte[] bytes, int start, Limits limits) {
        ByteBuffer in = ByteBuffer.wrap(bytes, start, bytes.length - start);
        CharBuffer out = CharBuffer.allocate(bytes.length - start);
        CoderResult result = decoder().decode(in, out, true);
        out.flip();
        String text = out.toString();
        if (result.isError()) {
            return Problem.error(JsonMistake.place(text, text.length()),
                    String.format("byte %02X is not UTF-8; expected a file saved as UTF-8", bytes[in.position()]));
        }
        return JsonMistake.in(text, limits.depth())
                .orElse(Problem.error("", "the file is not JSON; expected an object { … }"));
    }

    private Optional<Value.Tree> whole() throws IOException {
        boolean object = json.peek() == JsonToken.BEGIN_OBJECT;
        Value value = value();
        if (json.peek() != JsonToken.END_DOCUMENT) {
            throw new IOException("something follows");
        }
        if (!object) {
            problems.add(Problem.error("", "the file holds " + switch (value) {
                case Value.Items list -> "a list";
                case Value.Text text -> "a text";
                case Value.Num number -> "a number";
                default -> "a single word";
            } + "; expected an object { … }"));
        }
        return value instanceof Value.Tree tree ? Optional.of(tree) : Optional.empty();
    }

    private Value value() throws IOException {
        if (++values > limits.values()) {
            throw new TooMuch("the file holds more than " + limits.values() + " values; expected fewer");
        }
        return switch (json.peek()) {
            case BEGIN_OBJECT -> tree();
            case BEGIN_ARRAY -> items();
            case STRING -> new Value.Text(json.nextString());
            case NUMBER -> number(json.nextString());
            case BOOLEAN -> new Value.Flag(json.nextBoolean());
            case NULL -> {
                json.nextNull();
                yield new Value.Nothing();
            }
            default -> throw new IOException("no value");
        };
    }

    private Value.Num number(String literal) throws IOException {
        if (literal.length() > Value.Num.LONGEST) {
            throw new IOException("too long a number");
        }
        Value.Num known = numbers.get(literal);
        if (known == null) {
            known = new Value.Num(literal);
            if (numbers.size() < REMEMBERED) {
                numbers.put(literal, known);
            }
        }
        return known;
    }

    private Value items() throws IOException {
        json.beginArray();
        depth++;
        List<Value> items = new ArrayList<>();
        while (json.hasNext()) {
            path[depth - 1] = items.size();
            items.add(value());
        }
        depth--;
        json.endArray();
        return new Value.Items(items);
    }

    private Value tree() throws IOException {
        json.beginObject();
        depth++;
        LinkedHashMap<String, Value> members = new LinkedHashMap<>();
        SequencedSet<String> repeated = new LinkedHashSet<>();
        while (json.hasNext()) {
            String name = json.nextName();
            path[depth - 1] = name;
            Value value = value();
            if (members.putIfAbsent(name, value) != null) {
                repeated.add(name);
            }
        }
        for (String name : repeated) {
            path[depth - 1] = name;
            problems.add(Problem.error(place(), "is given twice; expected it once"));
        }
        depth--;
        json.endObject();
        return members.isEmpty() ? Value.Tree.EMPTY : new Value.Tree(members);
    }

    private String place() {
        String place = "";
        for (int i = 0; i < depth; i++) {
            place = path[i] instanceof String name ? Problem.place(place, name) : place + "[" + path[i] + "]";
        }
        return place;
    }
}
