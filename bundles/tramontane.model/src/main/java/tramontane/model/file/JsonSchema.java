package tramontane.model.file;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import tramontane.model.Bay;
import tramontane.model.Design;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Link;
import tramontane.model.Noun;
import tramontane.model.Passage;
import tramontane.model.Range;
import tramontane.model.Shape;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Unit;
import tramontane.physics.units.Units;

/**
 * Describes files in JSON Schema (draft 2020-12), so that editors complete and check them while they are written.
 *
 * <p>Made from forms alone. A schema is more liberal than {@link DesignFile}: it takes any text for a quantity, knows no
 * names in the design and no order of numbers. What it refuses, reading refuses, too.
 */
public final class JsonSchema {

    private static final String DRAFT = "https://json-schema.org/draft/2020-12/schema";
    private static final String DEFINITIONS = "$defs";

    private final Map<Form, Map<String, Form>> kinds;
    private final Map<Form, Map<String, Form>> sections;
    private final LinkedHashMap<String, Value> definitions = new LinkedHashMap<>();
    private final Map<String, Form> defined = new LinkedHashMap<>();

    private JsonSchema(Map<Form, Map<String, Form>> kinds, Map<Form, Map<String, Form>> sections) {
        this.kinds = kinds;
        this.sections = sections;
    }

    /**
     * The schema of design files.
     *
     * @param passageKinds the fields of each passage kind by the kind's name
     * @param linkKinds    the fields of each link kind by the kind's name
     * @param sections     for the form of whatever may carry sections, the fields of each by the section's name
     */
    public static Value.Tree design(Map<String, Form> passageKinds, Map<String, Form> linkKinds,
            Map<Form, Map<String, Form>> sections) {
        return of(Design.FORM, Map.of(Passage.FORM, passageKinds, Link.FORM, linkKinds), sections);
    }

    /** The schema of design files that says nothing of the fields of link kinds. */
    public static Value.Tree design(Map<String, Form> passageKinds, Map<Form, Map<String, Form>> sections) {
        return design(passageKinds, Map.of(), sections);
    }

    /**
     * The schema of files that hold one object of a form.
     *
     * @param form     its fields
     * @param kinds    for each form whose {@code kind} decides the other fields, those fields by the kind's name
     * @param sections for the form of whatever may carry sections, the fields of each by the section's name
     */
    public static Value.Tree of(Form form, Map<Form, Map<String, Form>> kinds, Map<Form, Map<String, Form>> sections) {
        JsonSchema schema = new JsonSchema(kinds, sections);
        Value.Tree root = schema.object(form);
        Value.Tree headed = tree("$schema", text(DRAFT), "title", text(form.name())).with(root);
        return schema.definitions.isEmpty() ? headed : headed.with(DEFINITIONS, Value.Tree.of(schema.definitions));
    }

    private Value.Tree object(Form form) {
        LinkedHashMap<String, Value> members = new LinkedHashMap<>();
        for (Field field : form.fields()) {
            members.put(field.name(), field(field));
        }
        Map<String, Form> carried = sections.getOrDefault(form, Map.of());
        if (!carried.isEmpty()) {
            LinkedHashMap<String, Value> byName = new LinkedHashMap<>();
            carried.forEach((name, section) -> byName.put(name, reference(section)));
            members.put(Noun.SECTIONS, tree("type", text("object"), "properties", Value.Tree.of(byName)));
        }
        Value.Tree schema = tree("type", text("object"), "description", text(form.help()),
                "properties", Value.Tree.of(members));
        List<Value> required = form.fields().stream().filter(Field::required).map(field -> text(field.name())).toList();
        if (!required.isEmpty()) {
            schema = schema.with("required", new Value.Items(required));
        }
        Map<String, Form> byKind = kinds.getOrDefault(form, Map.of());
        if (!byKind.isEmpty()) {
            List<Value> cases = new ArrayList<>();
            byKind.forEach((name, kind) -> cases.add(tree(
                    "if", tree("properties", tree("kind", tree("const", text(name))), "required", items(text("kind"))),
                    "then", reference(kind))));
            schema = schema.with("allOf", new Value.Items(cases));
        }
        return schema;
    }

    private Value.Tree field(Field field) {
        Value.Tree schema = tree("title", text(field.label()), "description", text(field.help() + units(field.shape())))
                .with(shape(field.shape(), field.required()));
        return field.standard().map(value -> schema.with("default", value)).orElse(schema);
    }

    private Value.Tree shape(Shape shape, boolean required) {
        return switch (shape) {
            case Shape.Words() -> required ? name() : tree("type", text("string"));
            case Shape.Choice(List<String> words) -> tree("enum", new Value.Items(words.stream().map(JsonSchema::text).toList()));
            case Shape.YesNo() -> tree("type", text("boolean"));
            case Shape.Whole(int least, int most) -> whole(least, most);
            case Shape.WholeOr(int least, String word) -> tree("anyOf", items(whole(least, Integer.MAX_VALUE),
                    tree("const", text(word))));
            case Shape.Amount(QuantityKind kind, Range range) -> amount(range);
            case Shape.AnyAmount() -> amount(Range.ANY);
            case Shape.Amounts(QuantityKind kind, Range range, boolean increasing, int least) -> tree("anyOf", items(
                    tree("type", text("array"), "items", amount(range), "minItems", Value.Num.of(least)), amount(range)));
            case Shape.Reference reference -> name();
            case Shape.References references -> tree("type", text("array"), "items", name());
            case Shape.Part(Form form) -> reference(form);
            case Shape.Parts(Form form, String shorthand) -> tree("type", text("array"), "items", part(form, shorthand));
            case Shape.AmountsByName(QuantityKind kind, Range range, Shape.Target target) ->
                    tree("type", text("object"), "additionalProperties", amount(range));
            case Shape.Anything() -> Value.Tree.EMPTY;
        };
    }

    private Value.Tree part(Form form, String shorthand) {
        Optional<Field> bare = form.field(shorthand);
        return bare.isEmpty() ? reference(form)
                : tree("anyOf", items(shape(bare.get().shape(), true), reference(form)));
    }

    /** Refers to the description of a form, which is made when it is first needed. */
    private Value.Tree reference(Form form) {
        String name = form.name();
        for (int i = 2; defined.containsKey(name) && !defined.get(name).equals(form); i++) {
            name = form.name() + " " + i;
        }
        if (defined.putIfAbsent(name, form) == null) {
            String key = key(name);
            definitions.put(key, Value.Tree.EMPTY); // takes its place in the order before the forms within it
            definitions.put(key, object(form));
        }
        return tree("$ref", text("#/" + DEFINITIONS + "/" + key(name)));
    }

    /** A name that needs no escapes in a reference. */
    private static String key(String name) {
        return "form-" + name.codePoints().mapToObj(c -> Character.isLetterOrDigit(c) && c < 128 ? Character.toString(c)
                : c == ' ' ? "-" : "u" + Integer.toHexString(c)).collect(Collectors.joining());
    }

    private static Value.Tree name() {
        return tree("type", text("string"), "pattern", text("\\S"));
    }

    private static Value.Tree whole(int least, int most) {
        Value.Tree schema = tree("type", text("integer"), "minimum", Value.Num.of(least));
        return most == Integer.MAX_VALUE ? schema : schema.with("maximum", Value.Num.of(most));
    }

    /** A number in range, or any text: what it means is not for a schema to say. */
    private static Value.Tree amount(Range range) {
        Value.Tree number = tree("type", text("number"));
        if (!Double.isInfinite(range.least())) {
            number = number.with(range.leastIncluded() ? "minimum" : "exclusiveMinimum", Value.Num.of(range.least()));
        }
        if (!Double.isInfinite(range.most())) {
            number = number.with("maximum", Value.Num.of(range.most()));
        }
        return tree("anyOf", items(number, name()));
    }

    private static String units(Shape shape) {
        return switch (shape) {
            case Shape.Amount(QuantityKind kind, Range range) -> " A number" + inSi(kind) + texts(kind, "a text in ");
            case Shape.Amounts amounts -> " A list of numbers" + inSi(amounts.kind())
                    + texts(amounts.kind(), "one text of numbers with a unit at its end: ");
            case Shape.AmountsByName byName -> " Numbers" + inSi(byName.kind()) + texts(byName.kind(), "texts in ");
            case Shape.AnyAmount() -> " A number in SI units, or a text with its unit.";
            case Shape.Reference(Shape.Target target) when target == Shape.Target.BAY -> " The id of a bay, or "
                    + Bay.OUTSIDE + ".";
            default -> "";
        };
    }

    private static String inSi(QuantityKind kind) {
        return kind.dimensionless() ? "" : " in " + kind.siUnit();
    }

    private static String texts(QuantityKind kind, String intro) {
        String symbols = Units.of(kind).stream().map(Unit::symbol).filter(symbol -> !symbol.isEmpty())
                .collect(Collectors.joining(", "));
        return symbols.isEmpty() ? "." : ", or " + intro + symbols + ".";
    }

    private static Value text(String text) {
        return new Value.Text(text);
    }

    private static Value.Items items(Value... values) {
        return new Value.Items(List.of(values));
    }

    private static Value.Tree tree(String name, Value value) {
        return Value.Tree.EMPTY.with(name, value);
    }

    private static Value.Tree tree(String name, Value value, String second, Value another) {
        return tree(name, value).with(second, another);
    }

    private static Value.Tree tree(String name, Value value, String second, Value another, String third, Value last) {
        return tree(name, value, second, another).with(third, last);
    }
}
