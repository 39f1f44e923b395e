package tramontane.catalogue.internal;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import tramontane.catalogue.MotorSection;
import tramontane.model.AirMover;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Noun;
import tramontane.model.Range;
import tramontane.model.Shape;
import tramontane.model.Value;
import tramontane.model.file.TreeFile;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Unit;
import tramontane.physics.units.Units;

/** Makes files of parts: sound ones with every field in every way of writing, and ones with mistakes of many kinds. */
final class RandomPartFiles {

    private final Random random;

    RandomPartFiles(Random random) {
        this.random = random;
    }

    /** A file whose parts are all sound. */
    Value.Tree sound() {
        if (random.nextInt(3) == 0) {
            Value.Tree part = part("p" + random.nextInt(100));
            return random.nextBoolean() ? part : part.with("format", Value.Num.of(1));
        }
        Value.Tree file = Value.Tree.EMPTY;
        Value.Tree shared = part("shared").without("id");
        for (String member : shared.members().keySet()) {
            if (random.nextInt(3) == 0 && !member.equals("fixedLoss") && !member.equals("ratedPower")
                    && !member.endsWith("Temperature")) {
                file = file.with(member, shared.members().get(member));
            }
        }
        file = random.nextBoolean() ? file.with("format", Value.Num.of(1)) : file;
        file = random.nextBoolean() ? file.with("notes", new Value.Text("notes of the file")) : file;
        List<Value> parts = new ArrayList<>();
        for (int i = 0; i <= random.nextInt(4); i++) {
            Value.Tree own = part("p" + i);
            for (String member : List.copyOf(own.members().keySet())) {
                // curves and losses must go together
                boolean needed = member.equals("id") || member.equals("curves");
                own = !needed && random.nextInt(3) == 0 && !file.get(member).isEmpty() ? own.without(member) : own;
            }
            parts.add(own);
        }
        file = file.without("curves");
        Value.Items items = new Value.Items(parts);
        return random.nextBoolean() ? file.with("parts", items) : Value.Tree.EMPTY.with("parts", items).with(file);
    }

    private Value.Tree part(String id) {
        LinkedHashMap<String, Value> members = new LinkedHashMap<>(fields(AirMover.FORM).members());
        members.put("id", new Value.Text(id));
        List<Value> curves = new ArrayList<>();
        for (int i = 0; i <= random.nextInt(3); i++) {
            curves.add(curve());
        }
        members.put("curves", new Value.Items(curves));
        members.replace("lowestTemperature", new Value.Text("-" + random.nextInt(40) + " °C"));
        members.replace("highestTemperature", new Value.Text(40 + random.nextInt(40) + " °C"));
        members.replace("fixedLoss", new Value.Text("0." + random.nextInt(5) + " W"));
        members.replace("ratedPower", Value.Num.of(1 + random.nextInt(5)));
        members.replace("ingress", new Value.Text("IP" + random.nextInt(7) + random.nextInt(9)));
        if (random.nextInt(3) > 0) {
            LinkedHashMap<String, Value> sections = new LinkedHashMap<>();
            if (random.nextBoolean()) {
                Value.Tree motor = fields(new MotorSection(1).form());
                sections.put("motor", random.nextInt(4) == 0 ? motor.with("version", Value.Num.of(1)) : motor);
            }
            if (random.nextBoolean()) {
                sections.put("lab", any(0));
            }
            members.put(Noun.SECTIONS, new Value.Tree(sections));
        }
        for (String name : List.of("notes", "layout", "$schema")) {
            if (random.nextInt(6) == 0) {
                members.put(name, any(0));
            }
        }
        return new Value.Tree(members);
    }

    private Value.Tree curve() {
        int points = 2 + random.nextInt(6);
        double[] flow = random.doubles(points, 0.001, 0.999).sorted().toArray();
        double[] pressure = random.doubles(points, -20, 200).toArray();
        double[] power = random.doubles(points, 1, 20).toArray();
        LinkedHashMap<String, Value> members = new LinkedHashMap<>();
        optional(members, "speed", QuantityKind.ROTATIONAL_SPEED, Range.POSITIVE);
        optional(members, "density", QuantityKind.DENSITY, Range.POSITIVE);
        optional(members, "rotorDiameter", QuantityKind.LENGTH, Range.POSITIVE);
        optional(members, "tolerance", QuantityKind.FRACTION, Range.between(0, 0.5));
        members.put("flow", amounts(QuantityKind.FLOW, flow));
        members.put("pressure", amounts(QuantityKind.PRESSURE, pressure));
        if (random.nextBoolean()) {
            members.put("power", amounts(QuantityKind.POWER, power));
        }
        return new Value.Tree(members);
    }

    private void optional(LinkedHashMap<String, Value> members, String name, QuantityKind kind, Range range) {
        if (random.nextBoolean()) {
            members.put(name, amount(kind, range));
        }
    }

    private Value.Tree fields(Form form) {
        LinkedHashMap<String, Value> members = new LinkedHashMap<>();
        for (Field field : form.fields()) {
            if (field.required() || random.nextInt(3) > 0) {
                switch (field.shape()) {
                    case Shape.Words words -> members.put(field.name(), new Value.Text("word " + random.nextInt(9) + " ü"));
                    case Shape.Choice(var words) -> members.put(field.name(), new Value.Text(words.get(random.nextInt(words.size()))));
                    case Shape.YesNo yesNo -> members.put(field.name(), new Value.Flag(random.nextBoolean()));
                    case Shape.Whole(int least, int most) -> members.put(field.name(), Value.Num.of(least + random.nextInt(most - least + 1)));
                    case Shape.Amount(var kind, var range) -> members.put(field.name(), amount(kind, range));
                    case Shape.Amounts(var kind, var range, var increasing, var least) -> members.put(field.name(),
                            amounts(kind, random.doubles(least + random.nextInt(3), 0.1, 0.9).sorted().toArray()));
                    case Shape.Part(var inner) -> members.put(field.name(), fields(inner));
                    case Shape.Parts(var inner, var shorthand) -> members.put(field.name(), new Value.Items(List.of(fields(inner))));
                    default -> members.put(field.name(), any(0));
                }
            }
        }
        return new Value.Tree(members);
    }

    private Value amount(QuantityKind kind, Range range) {
        double least = Double.isInfinite(range.least()) ? -50 : range.least();
        double most = Double.isInfinite(range.most()) ? least + 500 : range.most();
        double si = least + (0.01 + 0.98 * random.nextDouble()) * (most - least);
        Unit unit = Units.of(kind).get(random.nextInt(Units.of(kind).size()));
        String number = switch (random.nextInt(4)) {
            case 0 -> Double.toString(unit.fromSi(si));
            case 1 -> String.format(Locale.ROOT, "%.3e", unit.fromSi(si));
            default -> String.format(Locale.ROOT, "%.4f", unit.fromSi(si));
        };
        if (random.nextInt(4) == 0) {
            return Value.Num.of(si);
        }
        return new Value.Text(number + (unit.symbol().equals("°") ? "" : " ") + unit.symbol());
    }

    private Value amounts(QuantityKind kind, double[] si) {
        if (random.nextInt(4) == 0) {
            return new Value.Items(Arrays.stream(si).mapToObj(each -> (Value) Value.Num.of(each)).toList());
        }
        Unit unit = Units.of(kind).get(random.nextInt(Units.of(kind).size()));
        StringBuilder text = new StringBuilder();
        for (double each : si) {
            text.append(random.nextInt(5) == 0 ? Double.toString(unit.fromSi(each)) : String.format(Locale.ROOT, "%.7f", unit.fromSi(each)))
                    .append(' ');
        }
        return new Value.Text((text + unit.symbol()).strip());
    }

    /** Any value. */
    private Value any(int depth) {
        return switch (random.nextInt(depth > 2 ? 5 : 7)) {
            case 0 -> new Value.Text(new String[] {"felt", "3 mm", "7", "-5 °C", "", "12 V", "a\"b\n", "2 parsec"}[random.nextInt(8)]);
            case 1, 2 -> Value.Num.of(random.nextInt(100) / 8.0);
            case 3 -> new Value.Flag(random.nextBoolean());
            case 4 -> new Value.Nothing();
            case 5 -> new Value.Items(List.of(any(depth + 1), any(depth + 1)));
            default -> {
                LinkedHashMap<String, Value> members = new LinkedHashMap<>();
                for (int i = random.nextInt(5); i > 0; i--) {
                    members.put(new String[] {"hours", "seal", "at", "strange name", "x.y", "é", "width"}[random.nextInt(7)], any(depth + 1));
                }
                yield new Value.Tree(members);
            }
        };
    }

    /** The bytes of a file after some accidents: to single bytes, to pieces, to words and numbers. */
    byte[] damaged(Value.Tree file) {
        byte[] bytes = TreeFile.write(file).getBytes(StandardCharsets.UTF_8);
        for (int i = random.nextInt(3); i >= 0; i--) {
            bytes = random.nextBoolean() ? accident(bytes) : slip(bytes);
        }
        return bytes;
    }

    /** Something that a person would write. */
    private byte[] slip(byte[] bytes) {
        String text = new String(bytes, StandardCharsets.UTF_8);
        String[][] slips = {{"mm", "kg"}, {"mm", "mm 3"}, {"\"id\"", "\"ID\""}, {" W\"", "W\""}, {"rpm", "1/min"}, {"rpm", "rounds"}, {"0.", "-0."},
            {"0.", "0.."}, {"0.", "."}, {": \"", ": \" "}, {"\",", " \","}, {"\"flow\"", "\"pressure\""}, {"\"ball\"", "\"balls\""}, {"{", "{\"id\": \"q\", "},
            {"[", "[1, "}, {"true", "1"}, {"\"width\"", "\"height\""}, {" °C", " K"}, {"1", "1e400"}, {"1", "1e-400"}, {"1", "-1"}, {"\"parts\"", "\"p\\u0061rts\""},
            {"\"", "\\\""}, {"word", "w\\u00f6rd"}, {" ", "\u00a0"}, {" ", "  "}, {"-", "\u2212"}, {"\"motor\"", "\"sections\""}, {"\"wires\"", "\"wire\""}, {"{", "[{"},
            {"[", "{"}, {"\"DC\"", "null"}, {"m³", "m3"}, {"\"format\": 1", "\"format\": 1.0"}, {"1", "+1"}, {"1", "01"}, {",", ", ,"}, {"\"a", "\"version\": 2, \"a"},
            {"\"maker\"", "\"notes\""}, {"\"notes\"", "\"maker\""}, {"W\"", "W W\""}, {" W\"", " 5 W\""}, {"0.", "1e1 0."}, {"mm", "1"}, {"5", "5/"}, {"%", ""}};
        String[] slip = slips[random.nextInt(slips.length)];
        int from = text.indexOf(slip[0], random.nextInt(text.length() + 1));
        return from < 0 ? bytes : (text.substring(0, from) + slip[1] + text.substring(from + slip[0].length())).getBytes(StandardCharsets.UTF_8);
    }

    private byte[] accident(byte[] bytes) {
        if (bytes.length < 2) {
            return bytes;
        }
        int at = random.nextInt(bytes.length);
        int length = Math.min(bytes.length - at, 1 + random.nextInt(random.nextBoolean() ? 3 : 100));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(bytes, 0, at);
        switch (random.nextInt(5)) {
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
            default -> {
                out.write(random.nextInt(256));
                out.write(bytes, at, bytes.length - at);
            }
        }
        return out.toByteArray();
    }
}
