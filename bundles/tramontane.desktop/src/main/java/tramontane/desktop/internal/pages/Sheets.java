package tramontane.desktop.internal.pages;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tramontane.analysis.FigureKind;
import tramontane.analysis.SectionType;
import tramontane.analysis.Sections;
import tramontane.analysis.Severity;
import tramontane.desktop.FigureKey;
import tramontane.desktop.FigureText;
import tramontane.desktop.Results;
import tramontane.desktop.Scene;
import tramontane.desktop.internal.pages.Row.Editor;
import tramontane.model.Design;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.FormReader;
import tramontane.model.Link;
import tramontane.model.MoverCurve;
import tramontane.model.Noun;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Range;
import tramontane.model.References;
import tramontane.model.Requirement;
import tramontane.model.Shape;
import tramontane.model.Value;
import tramontane.model.edit.Edit;
import tramontane.model.edit.Edits;
import tramontane.model.edit.FieldPath;
import tramontane.model.edit.Subject;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/** Makes property pages of a design, and edits of what is typed into them. */
public final class Sheets {

    private static final String VERSION = "version";
    private static final String NOTES = "notes";
    private static final int LONGEST_KEPT = 400;
    private static final Field NOTES_FIELD = Field.words(NOTES, "notes", "Anything worth remembering; no analysis reads it.");
    private static final Set<String> NEVER_SHOWN = Set.of(Noun.SECTIONS, NOTES, "layout", "$schema", "format");

    private final Known known;
    private final Design design;
    private final UnitSystem units;
    private final Subject subject;
    private final Value.Tree tree;
    private final Map<String, Problem> problems = new HashMap<>();
    private final String place;
    private final List<Row> rows = new ArrayList<>();

    private Sheets(Known known, Design design, UnitSystem units, Subject subject, List<Problem> problems) {
        this.known = known;
        this.design = design;
        this.units = units;
        this.subject = subject;
        this.tree = subject.tree(design).orElse(Value.Tree.EMPTY);
        this.place = subject.place(design);
        for (Problem problem : problems) {
            this.problems.merge(problem.place(), problem, (one, other) -> one.isError() ? one : other);
        }
    }

    /** The page of a subject; empty where the design does not have it. */
    public static Optional<Sheet> of(Scene scene, Known known, Subject subject) {
        Design design = scene.document().design();
        if (!subject.isIn(design)) {
            return Optional.empty();
        }
        List<Sheet.Line> figures = figures(design, subject, scene.results(), scene.front(), scene.units());
        if (subject.isOutside()) {
            return Optional.of(new Sheet(subject, "outside", "The air around the equipment. What it is like stands in the conditions.",
                    List.of(), List.of(), figures, scene.front()));
        }
        Sheets pages = new Sheets(known, design, scene.units(), subject, scene.document().problems());
        pages.subject();
        return Optional.of(new Sheet(subject, subject.title(design), pages.caption(), pages.rows, pages.problemsOfTheWhole(), figures,
                scene.front()));
    }

    private String caption() {
        return known.forms().kind(subject.kind().form(), tree).map(kind -> kind.name() + ": " + kind.help())
                .orElse(subject.kind().noun() + ": " + subject.kind().form().help());
    }

    private List<String> problemsOfTheWhole() {
        return Stream.of(problems.get(place)).filter(problem -> problem != null && !place.isEmpty()).map(Problem::message).toList();
    }

    // ---- rows

    private void subject() {
        Form form = subject.kind().form();
        fields(form, tree, FieldPath.WHOLE, 0);
        Optional<Form> kind = known.forms().kind(form, tree);
        field(NOTES_FIELD, tree, FieldPath.WHOLE, 0);
        Set<String> shown = new LinkedHashSet<>(form.fields().stream().map(Field::name).toList());
        kind.ifPresent(own -> own.fields().forEach(field -> shown.add(field.name())));
        kept(tree, FieldPath.WHOLE, shown, 0);
        sections();
    }

    /** The fields of an object and those that its kind brings. */
    private void fields(Form form, Value.Tree object, FieldPath path, int depth) {
        List<Field> fields = new ArrayList<>(form.fields());
        known.forms().kind(form, object).ifPresent(kind -> kind.fields().stream()
                .filter(field -> form.field(field.name()).isEmpty()).forEach(fields::add));
        List<Field> lists = fields.stream().filter(field -> field.shape() instanceof Shape.Amounts).toList();
        boolean together = lists.size() > 1;
        boolean done = false;
        for (Field field : fields) {
            if (together && lists.contains(field)) {
                if (!done) {
                    done = table(form, lists, object, path, depth);
                    if (!done) {
                        together = false;
                        field(field, object, path, depth);
                    }
                }
            } else {
                field(refined(form, field, object), object, path, depth);
            }
        }
    }

    /** What is known of a field beyond its shape. */
    private Field refined(Form form, Field field, Value.Tree object) {
        if (form.equals(Passage.FORM) && field.name().equals("kind")) {
            return with(field, new Shape.Choice(List.copyOf(known.forms().passages().keySet())));
        }
        if (form.equals(Link.FORM) && field.name().equals("kind")) {
            return with(field, new Shape.Choice(List.copyOf(known.forms().links().keySet())));
        }
        if (form.equals(Requirement.FORM) && field.shape() instanceof Shape.AnyAmount) {
            Optional<FigureKind> figure = known.figures().stream()
                    .filter(kind -> object.text("figure").filter(kind.id()::equals).isPresent()).findFirst();
            return figure.map(kind -> with(field, new Shape.Amount(kind.quantity(), Range.ANY))).orElse(field);
        }
        return field;
    }

    private static Field with(Field field, Shape shape) {
        return new Field(field.name(), field.label(), shape, field.required(), field.standard(), field.help());
    }

    private void field(Field field, Value.Tree object, FieldPath path, int depth) {
        FieldPath at = path.member(field.name());
        Optional<Value> written = object.get(field.name());
        switch (field.shape()) {
            case Shape.Part(Form form) -> {
                row(field, at, depth, Editor.PART, "", "", "", written.isPresent(), List.of());
                if (written.orElse(null) instanceof Value.Tree part) {
                    fields(form, part, at, depth + 1);
                    kept(part, at, names(form), depth + 1);
                } else if (written.isPresent()) {
                    keptRow(field.name(), written.get(), at, depth + 1);
                }
            }
            case Shape.Parts(Form form, String shorthand) -> parts(field, form, shorthand, written, at, depth);
            case Shape.AmountsByName byName -> byName(field, byName, written, at, depth);
            case Shape.Anything() -> keptOrNothing(field, written, at, depth);
            default -> line(field, written, at, depth);
        }
    }

    private static Set<String> names(Form form) {
        return new LinkedHashSet<>(form.fields().stream().map(Field::name).toList());
    }

    private void parts(Field field, Form form, String shorthand, Optional<Value> written, FieldPath at, int depth) {
        List<Value> items = written.orElse(null) instanceof Value.Items(List<Value> values) ? values : List.of();
        Shape bare = form.field(shorthand).map(Field::shape).orElse(new Shape.Anything());
        List<String> choices = form.equals(Link.FORM) ? List.copyOf(known.forms().links().keySet())
                : bare instanceof Shape.Reference(Shape.Target target) ? List.copyOf(References.names(design, target)) : List.of();
        rows.add(plain(field, at, depth, Editor.LIST, form.name(), "", "", !items.isEmpty(), choices, -1, items.size(), Optional.empty()));
        for (int i = 0; i < items.size(); i++) {
            FieldPath item = at.item(i);
            Value.Tree object = items.get(i) instanceof Value.Tree each ? each
                    : shorthand.isEmpty() ? Value.Tree.EMPTY : Value.Tree.EMPTY.with(shorthand, items.get(i));
            String title = form.name() + " " + (i + 1) + object.text("kind").map(kind -> ", " + kind).orElse("");
            Field heading = Field.of(field.name(), title, field.shape(), form.help());
            rows.add(plain(heading, item, depth + 1, Editor.ITEM, "", "", "", true, List.of(), i, items.size(), Optional.empty()));
            fields(form, object, item, depth + 2);
            Set<String> shown = names(form);
            known.forms().kind(form, object).ifPresent(kind -> shown.addAll(names(kind)));
            kept(object, item, shown, depth + 2);
        }
        if (written.isPresent() && !(written.get() instanceof Value.Items)) {
            keptRow(field.name(), written.get(), at, depth + 1);
        }
    }

    private void byName(Field field, Shape.AmountsByName byName, Optional<Value> written, FieldPath at, int depth) {
        Value.Tree each = written.orElse(null) instanceof Value.Tree given ? given : Value.Tree.EMPTY;
        List<String> open = References.names(design, byName.target()).stream().filter(name -> each.get(name).isEmpty()).toList();
        rows.add(plain(field, at, depth, Editor.LIST, byName.kind().name(), "", "", !each.isEmpty(), open, -1, each.members().size(), Optional.empty()));
        each.members().forEach((name, value) -> line(Field.amount(name, name, byName.kind(), byName.range(), field.help()),
                Optional.of(value), at.member(name), depth + 1));
    }

    private void line(Field field, Optional<Value> written, FieldPath at, int depth) {
        switch (field.shape()) {
            case Shape.Amount(QuantityKind kind, Range range) -> amount(field, kind, written, at, depth);
            case Shape.Amounts(QuantityKind kind, Range range, boolean increasing, int least) -> amounts(field, kind, written, at, depth);
            case Shape.Choice(List<String> words) -> row(field, at, depth, Editor.PICK, words(written), words(written), "", written.isPresent(), words);
            case Shape.YesNo() -> {
                String word = written.orElse(null) instanceof Value.Flag(boolean on) ? (on ? "yes" : "no") : words(written);
                row(field, at, depth, Editor.YES_NO, word, word, "", written.isPresent(), Typing.YES_NO);
            }
            case Shape.Reference(Shape.Target target) -> {
                boolean free = target == Shape.Target.ANYWHERE;
                List<String> names = new ArrayList<>(References.names(design, target));
                if (free) {
                    names.addFirst(Requirement.WORST);
                }
                row(field, at, depth, free ? Editor.TYPE_OR_PICK : Editor.PICK, words(written), words(written), "", written.isPresent(), names);
            }
            case Shape.References(Shape.Target target) -> row(field, at, depth, Editor.NAMES, words(written), words(written), "",
                    written.isPresent(), List.copyOf(References.names(design, target)));
            case Shape.WholeOr(int least, String word) -> row(field, at, depth, Editor.TYPE_OR_PICK, words(written), words(written), "",
                    written.isPresent(), List.of(word));
            case Shape.Words() when field.name().equals("figure") && subject.kind() == Subject.Kind.REQUIREMENT -> row(field, at, depth,
                    Editor.TYPE_OR_PICK, words(written), words(written), "", written.isPresent(), known.figureIds());
            default -> row(field, at, depth, Editor.LINE, words(written), words(written), "", written.isPresent(), List.of());
        }
    }

    private void amount(Field field, QuantityKind kind, Optional<Value> written, FieldPath at, int depth) {
        Optional<Quantity> quantity = written.flatMap(value -> FormReader.quantity(value, kind));
        if (quantity.isEmpty()) {
            String unit = field.standard().flatMap(value -> FormReader.quantity(value, kind)).map(value -> Shown.of(value, kind, units).unit())
                    .orElse(Units.display(kind, units).symbol());
            row(field, at, depth, Editor.LINE, words(written), words(written), unit, written.isPresent(), List.of());
            return;
        }
        Shown shown = Shown.of(quantity.get(), kind, units);
        Shown plain = Shown.written(written.get(), kind);
        String edited = plain.unit().equals(shown.unit()) ? plain.number() : plain.together();
        row(field, at, depth, Editor.LINE, shown.number(), edited, shown.unit(), true, List.of());
    }

    private void amounts(Field field, QuantityKind kind, Optional<Value> written, FieldPath at, int depth) {
        Optional<CurveTable.Column> column = CurveTable.column(field.name(), field.label(), (Shape.Amounts) field.shape(), written, units);
        String text = column.map(each -> String.join(" ", each.shown())).orElse(words(written));
        String edited = written.orElse(null) instanceof Value.Text(String own) ? own : text;
        String unit = column.map(CurveTable.Column::unit).orElse("");
        row(field, at, depth, Editor.LINE, text, edited.equals((text + " " + unit).strip()) ? text : edited, unit, written.isPresent(), List.of());
    }

    private boolean table(Form form, List<Field> lists, Value.Tree object, FieldPath path, int depth) {
        List<CurveTable.Column> columns = new ArrayList<>();
        for (Field field : lists) {
            Optional<CurveTable.Column> column = CurveTable.column(field.name(), field.label(), (Shape.Amounts) field.shape(),
                    object.get(field.name()), units);
            if (column.isEmpty()) {
                return false;
            }
            columns.add(column.get());
        }
        if (form.equals(MoverCurve.FORM)) {
            columns.add(efficiency(object));
        }
        Field field = Field.of("", lists.stream().map(Field::label).collect(Collectors.joining(", ")), new Shape.Anything(),
                lists.stream().map(each -> each.label() + ": " + each.help()).collect(Collectors.joining("\n")));
        String problem = lists.stream().map(each -> problem(path.member(each.name())).map(found -> each.label() + " " + found.message()))
                .flatMap(Optional::stream).collect(Collectors.joining("; "));
        Row row = plain(field, path, depth, Editor.TABLE, "", "", "", true, List.of(), -1, 0, Optional.of(new CurveTable(columns)));
        rows.add(new Row(row.path(), row.label(), row.depth(), row.editor(), row.shape(), "", "", "", true, false, "", row.hover(), List.of(),
                -1, 0, problem, lists.stream().anyMatch(each -> problem(path.member(each.name())).filter(Sheets::isSerious).isPresent()),
                row.table()));
        return true;
    }

    /** Air power over electrical power at each point of a mover's curve. */
    private CurveTable.Column efficiency(Value.Tree object) {
        MoverCurve curve = MoverCurve.from(FormReader.read(MoverCurve.FORM, object, "", new ArrayList<>()));
        List<String> shown = new ArrayList<>();
        int count = curve.power().map(power -> Math.min(power.size(), Math.min(curve.flow().size(), curve.pressure().size()))).orElse(0);
        for (int i = 0; i < count; i++) {
            double power = curve.power().orElseThrow().si().get(i);
            double share = power > 0 ? curve.flow().si().get(i) * curve.pressure().si().get(i) / power : 0;
            shown.add(power > 0 ? Units.format(share, QuantityKind.FRACTION, UnitSystem.METRIC, 3).replace(" %", "") : "");
        }
        return new CurveTable.Column("", "efficiency", new Shape.Amounts(QuantityKind.FRACTION, Range.ANY, false, 0), "%", shown, shown, false);
    }

    private static String words(Optional<Value> written) {
        return switch (written.orElse(null)) {
            case null -> "";
            case Value.Text(String text) -> text;
            case Value.Num(String literal) -> literal;
            case Value.Items(List<Value> items) -> items.stream().map(item -> words(Optional.of(item))).collect(Collectors.joining(", "));
            case Value other -> FormReader.describe(other);
        };
    }

    private void keptOrNothing(Field field, Optional<Value> written, FieldPath at, int depth) {
        written.ifPresent(value -> keptRow(field.label(), value, at, depth));
    }

    /** Members that nobody here knows. */
    private void kept(Value.Tree object, FieldPath path, Set<String> shown, int depth) {
        object.members().forEach((name, value) -> {
            if (!shown.contains(name) && !NEVER_SHOWN.contains(name)) {
                keptRow(name, value, path.member(name), depth);
            }
        });
    }

    private void keptRow(String label, Value value, FieldPath at, int depth) {
        String text = flat(value);
        String clipped = text.length() > LONGEST_KEPT ? text.substring(0, LONGEST_KEPT) + "…" : text;
        Field field = Field.anything("", label, "Nothing loaded here knows it; it is kept as it is.");
        rows.add(plain(field, at, depth, Editor.KEPT, clipped, clipped, "", true, List.of(), -1, 0, Optional.empty()));
    }

    /** A value in one line, as it stands in the file. */
    private static String flat(Value value) {
        return switch (value) {
            case Value.Text(String text) -> '"' + text.replace("\\", "\\\\").replace("\"", "\\\"").replaceAll("\\p{Cc}", " ") + '"';
            case Value.Items(List<Value> items) -> items.stream().map(Sheets::flat).collect(Collectors.joining(", ", "[", "]"));
            case Value.Tree each -> each.members().entrySet().stream()
                    .map(member -> flat(new Value.Text(member.getKey())) + ": " + flat(member.getValue())).collect(Collectors.joining(", ", "{", "}"));
            default -> words(Optional.of(value));
        };
    }

    // ---- sections

    private void sections() {
        Value.Tree written = tree.tree(Noun.SECTIONS).orElse(Value.Tree.EMPTY);
        FieldPath all = FieldPath.of(Noun.SECTIONS);
        Set<String> understood = new LinkedHashSet<>();
        for (SectionType<?> type : types()) {
            String name = type.form().name();
            if (!understood.add(name)) {
                continue;
            }
            FieldPath at = all.member(name);
            Optional<Value> section = written.get(name);
            Optional<Value.Tree> current = section.flatMap(value -> Sections.current(type, value, "", new ArrayList<>()));
            Field field = Field.part(name, name, type.form(), type.form().help());
            rows.add(plain(field, at, 0, Editor.GROUP, "", "", "", section.isPresent(), List.of(), -1, 0, Optional.empty()));
            if (current.isPresent()) {
                fields(type.form(), current.get(), at, 0);
                Set<String> shown = names(type.form());
                shown.add(VERSION);
                kept(current.get(), at, shown, 0);
            } else {
                section.ifPresent(value -> keptRow(name, value, at, 0));
            }
        }
        written.members().forEach((name, value) -> {
            if (!understood.contains(name)) {
                FieldPath at = all.member(name);
                rows.add(plain(Field.anything("", name, "Nothing loaded here knows this section; it is kept as it is."), at, 0, Editor.GROUP, "", "", "",
                        true, List.of(), -1, 0, Optional.empty()));
                keptRow("as written", value, at, 0);
            }
        });
    }

    private List<SectionType<?>> types() {
        List<SectionType<?>> types = new ArrayList<>();
        for (SectionType<?> type : known.sections()) {
            if (type.owners().stream().anyMatch(owner -> owner.subjects() == subject.kind())) {
                types.add(type);
            }
        }
        return types;
    }

    // ---- parts of a row

    private void row(Field field, FieldPath at, int depth, Editor editor, String text, String written, String unit, boolean given, List<String> choices) {
        rows.add(plain(field, at, depth, editor, text, written, unit, given, choices, -1, 0, Optional.empty()));
    }

    private Row plain(Field field, FieldPath at, int depth, Editor editor, String text, String written, String unit, boolean given,
            List<String> choices, int index, int count, Optional<CurveTable> table) {
        Optional<Problem> problem = problem(at);
        return new Row(at, field.label(), depth, editor, field.shape(), text, written, unit, given, field.required(), standard(field), hover(field, at),
                choices, index, count, problem.map(Problem::message).orElse(""), problem.filter(Sheets::isSerious).isPresent(), table);
    }

    private static boolean isSerious(Problem problem) {
        return problem.isError() && !problem.isMissing();
    }

    private Optional<Problem> problem(FieldPath at) {
        return at.isWhole() ? Optional.empty() : Optional.ofNullable(problems.get(at.place(place)));
    }

    private String standard(Field field) {
        return field.standard().map(value -> field.shape() instanceof Shape.Amount(QuantityKind kind, Range range)
                ? FormReader.quantity(value, kind).map(quantity -> Shown.of(quantity, kind, units).number()).orElse("")
                : words(Optional.of(value))).orElse("");
    }

    private String hover(Field field, FieldPath at) {
        StringBuilder hover = new StringBuilder(field.help());
        if (field.shape() instanceof Shape.Amount(QuantityKind kind, Range range)) {
            append(hover, "Allowed", Shown.range(range, kind, units));
            field.standard().flatMap(value -> FormReader.quantity(value, kind))
                    .ifPresent(value -> append(hover, "Where not given", Shown.of(value, kind, units).together()));
            at.in(tree).ifPresent(value -> FormReader.quantity(value, kind).ifPresent(quantity -> {
                append(hover, "Written", Shown.written(value, kind).together());
                append(hover, "In full", Shown.full(quantity.si(), kind, units));
            }));
        } else if (field.shape() instanceof Shape.Whole(int least, int most)) {
            append(hover, "Allowed", most == Integer.MAX_VALUE ? "whole numbers of at least " + least : least + " to " + most);
            field.standard().ifPresent(value -> append(hover, "Where not given", words(Optional.of(value))));
        } else if (field.shape() instanceof Shape.Amounts) {
            at.in(tree).ifPresent(value -> append(hover, "Written", words(Optional.of(value))));
        }
        return hover.toString();
    }

    private static void append(StringBuilder hover, String what, String text) {
        if (!text.isEmpty()) {
            hover.append('\n').append(what).append(": ").append(text);
        }
    }

    // ---- figures

    private static List<Sheet.Line> figures(Design design, Subject subject, Results results, String front, UnitSystem units) {
        boolean placed = subject.kind().isNamed() && subject.kind() != Subject.Kind.CONDITION;
        boolean whole = subject.kind() == Subject.Kind.DESIGN || subject.kind() == Subject.Kind.EQUIPMENT || subject.kind() == Subject.Kind.CONDITION;
        if (!placed && !whole) {
            return List.of();
        }
        Set<String> cases = new LinkedHashSet<>(List.of(front));
        if (subject.kind() == Subject.Kind.CONDITION) {
            cases.clear();
            results.cases().stream().filter(each -> each.declared().equals(subject.id())).limit(1).forEach(each -> cases.add(each.concrete().id()));
        }
        Map<FigureKey, Severity> verdicts = new HashMap<>();
        results.verdicts().forEach(verdict -> verdict.value().figure().ifPresent(figure -> verdicts.merge(FigureKey.of(figure),
                verdict.value().severity(), (one, other) -> one.compareTo(other) > 0 ? one : other)));
        return results.figures().stream()
                .filter(each -> each.value().place().equals(placed ? subject.id() : ""))
                .filter(each -> cases.contains(each.value().condition()) || each.value().condition().isEmpty())
                .map(each -> new Sheet.Line(each.value().kind().label(), FigureText.brief(each.value(), units), each.stale(),
                        Optional.ofNullable(verdicts.get(FigureKey.of(each.value()))), FigureText.full(each.value(), units),
                        FigureKey.of(each.value()))).toList();
    }

    // ---- edits

    /** What is typed into a row, as an edit; empty where it says what stands there already. */
    public sealed interface Change {
    }

    /** Nothing is to be done. */
    public record Unchanged() implements Change {
    }

    /** The text cannot stand there. */
    public record Wrong(String sentence) implements Change {
    }

    /** The design is to be changed. */
    public record Changed(Edit edit) implements Change {
    }

    /**
     * Takes a text that was typed into a row.
     *
     * @param design  the design
     * @param known   what is loaded
     * @param subject whose page it is
     * @param row     the row
     * @param text    the text
     * @param units   the units of the reader
     */
    public static Change typed(Design design, Known known, Subject subject, Row row, String text, UnitSystem units) {
        String stripped = text.strip();
        if (stripped.equals(row.written()) || stripped.equals(row.text())) {
            return new Unchanged();
        }
        return switch (Typing.read(stripped, row.shape(), row.unit(), units)) {
            case Typing.Wrong(String sentence) -> new Wrong(sentence);
            case Typing.Read(Optional<Value> value) -> change(design, known, subject, row.path(), value);
        };
    }

    /** Sets a field to a value, or takes it out. */
    public static Change change(Design design, Known known, Subject subject, FieldPath path, Optional<Value> value) {
        Optional<Value> before = subject.tree(design).flatMap(path::in);
        if (before.equals(value)) {
            return new Unchanged();
        }
        return result(edit(design, known, subject, path, value), row(subject, design));
    }

    private static Function<String, String> row(Subject subject, Design design) {
        // beside the field nobody needs to be told which field is meant
        return sentence -> sentence.startsWith(subject.title(design) + ", ") && sentence.contains(": ")
                ? sentence.substring(sentence.indexOf(": ", subject.title(design).length()) + 2) : sentence;
    }

    private static Change result(Edit edit, Function<String, String> words) {
        return edit.isRefused() ? new Wrong(words.apply(edit.message())) : new Changed(edit);
    }

    /** An edit of a field; a section of an older version is brought up to date by it. */
    private static Edit edit(Design design, Known known, Subject subject, FieldPath path, Optional<Value> value) {
        Edits edits = new Edits(known.forms());
        Design current = design;
        if (path.steps().size() > 2 && path.steps().getFirst().equals(new FieldPath.Member(Noun.SECTIONS))
                && path.steps().get(1) instanceof FieldPath.Member(String name)) {
            FieldPath at = FieldPath.of(Noun.SECTIONS, name);
            Optional<Value> written = subject.tree(design).flatMap(at::in);
            for (SectionType<?> type : known.sections()) {
                boolean here = type.form().name().equals(name) && type.owners().stream().anyMatch(owner -> owner.subjects() == subject.kind());
                Optional<Value.Tree> migrated = here && written.isPresent()
                        ? Sections.current(type, written.get(), "", new ArrayList<>()) : Optional.empty();
                if (migrated.isPresent() && !migrated.get().equals(written.get())) {
                    Value.Tree versioned = migrated.get().with(VERSION, Value.Num.of(type.version()));
                    current = Edits.replaced(current, subject, at, versioned);
                }
            }
        }
        return edits.set(current, subject, path, value);
    }

    /**
     * Adds an item to a list, a name to amounts by name, an object or a section.
     *
     * @param row    a row of the list, object or section
     * @param choice one of its choices; empty where it has none
     */
    public static Change add(Design design, Known known, Subject subject, Row row, String choice) {
        return switch (row.shape()) {
            case Shape.Parts(Form form, String shorthand) -> {
                Value item = form.equals(Link.FORM) && !choice.isEmpty() ? Value.Tree.EMPTY.with("kind", new Value.Text(choice))
                        : !shorthand.isEmpty() && !choice.isEmpty() ? new Value.Text(choice) : Value.Tree.EMPTY;
                yield change(design, known, subject, row.path().item(row.count()), Optional.of(item));
            }
            case Shape.AmountsByName byName -> change(design, known, subject, row.path().member(choice),
                    Optional.of(Typing.quantity(byName.range().contains(1) ? "1" : Double.toString(byName.range().least()), byName.kind(), "")));
            default -> change(design, known, subject, row.path(), Optional.of(Value.Tree.EMPTY));
        };
    }

    /** Takes an item, an object, a section or a field out. */
    public static Change remove(Design design, Known known, Subject subject, Row row) {
        return change(design, known, subject, row.path(), Optional.empty());
    }

    /** Moves an item of a list. */
    public static Change move(Design design, Known known, Subject subject, Row row, int by) {
        FieldPath list = row.path().parent();
        int to = row.index() + by;
        if (!(subject.tree(design).flatMap(list::in).orElse(null) instanceof Value.Items(List<Value> items)) || to < 0 || to >= items.size()) {
            return new Unchanged();
        }
        List<Value> moved = new ArrayList<>(items);
        moved.add(to, moved.remove(row.index()));
        return change(design, known, subject, list, Optional.of(new Value.Items(moved)));
    }

    /** Takes the edited columns of a table over. */
    public static Change table(Design design, Known known, Subject subject, Row row, CurveTable table) {
        Design current = design;
        Edit last = Edit.of("", design);
        for (CurveTable.Column column : table.columns()) {
            if (column.changed() && column.isEditable()) {
                FieldPath path = row.path().member(column.name());
                if (CurveTable.written(column).equals(subject.tree(current).flatMap(path::in))) {
                    continue;
                }
                last = edit(current, known, subject, path, CurveTable.written(column));
                if (last.isRefused()) {
                    return new Wrong(column.label() + " " + row(subject, design).apply(last.message()));
                }
                current = last.design().orElseThrow();
            }
        }
        return current.equals(design) ? new Unchanged() : new Changed(last);
    }
}
