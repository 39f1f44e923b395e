package tramontane.catalogue.internal;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tramontane.analysis.SectionType;
import tramontane.model.AirMover;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Noun;
import tramontane.model.Shape;

/**
 * One place of a part as the quick reader meets it: what may stand there, where its value goes, and what was last read there.
 * Belongs to one thread.
 */
final class Node {

    /** What the reader does with a value. */
    enum Sort {
        /** Keeps scalars, goes into objects and lists. */
        FREE,
        /** A known object. */
        OBJECT,
        /** A list of known objects. */
        OBJECTS,
        /** A text. */
        WORDS,
        /** One of some words. */
        CHOICE,
        /** True or false. */
        YES_NO,
        /** A whole number. */
        WHOLE,
        /** A quantity. */
        AMOUNT,
        /** Several quantities. */
        AMOUNTS,
        /** The version of a section. */
        VERSION,
        /** Anything that is left to the thorough reader. */
        RARE
    }

    /** Members that any object may carry: what they hold is nobody's field. */
    static final List<String> EVERYWHERE = List.of("notes", "layout", "$schema");

    final Sort sort;
    final Shape shape;
    final boolean required;
    final boolean mayBeBlank;
    /** Column of its value, -1 for none. */
    final int column;
    private FieldColumn field;
    private boolean resolved;
    /** Whether objects may have members that are not listed here. */
    final boolean open;
    /** Path of the object that free members hang on; empty text for the part, null where they are no fields. */
    final String path;
    final int version;
    final List<Node> mandatory = new ArrayList<>();
    /** What stands in a list. */
    Node item;

    /** Serial number of the object in which it was last met. */
    int seen;
    /** Number of the part in which it was last met outside lists. */
    int part;
    /** Whether it was an object there. */
    boolean object;
    double number;
    double[] list = new double[16];
    int size;

    private Node[] kids = new Node[8];
    private int kidCount;
    private byte[] name = new byte[0];
    private int hash;

    private Node(Sort sort, Shape shape, boolean required, boolean mayBeBlank, Optional<FieldColumn> field, boolean open, String path,
            int version) {
        this.sort = sort;
        this.shape = shape;
        this.required = required;
        this.mayBeBlank = mayBeBlank;
        this.column = field.map(FieldColumn::number).orElse(-1);
        this.open = open;
        this.path = path;
        this.version = version;
    }

    private static Node free(String path) {
        return new Node(Sort.FREE, null, false, true, Optional.empty(), true, path, 0);
    }

    private static Node object(Form form, boolean required, String path) {
        return new Node(Sort.OBJECT, null, required, false, Optional.empty(), form.open(), path, 0);
    }

    /** The nodes of a part. */
    static Node part(FieldTree fields) {
        Node part = object(AirMover.FORM, true, "");
        part.fields(AirMover.FORM, fields, "", true);
        Node sections = part.kid(Noun.SECTIONS);
        for (SectionType<?> type : fields.sections().values()) {
            String path = Noun.SECTIONS + "." + type.form().name();
            Node section = object(type.form(), false, path);
            if (type.form().field("version").isEmpty()) {
                section.add("version", new Node(Sort.VERSION, null, type.version() > 1, false, Optional.empty(), false, null,
                        type.version()));
            }
            section.fields(type.form(), fields, path + ".", true);
            sections.add(type.form().name(), section);
        }
        return part;
    }

    /** @param before path of the object and a stop, empty for the part itself */
    private void fields(Form form, FieldTree fields, String before, boolean columns) {
        for (Field each : form.fields()) {
            String at = before + each.name();
            Optional<FieldColumn> column = columns && FieldTree.isScalar(each.shape()) ? fields.column(at) : Optional.empty();
            Node kid = switch (each.shape()) {
                case Shape.Part(Form inner) -> {
                    Node node = object(inner, each.required(), columns ? at : null);
                    node.fields(inner, fields, at + ".", columns);
                    yield node;
                }
                case Shape.Parts(Form inner, String shorthand) -> {
                    Node node = new Node(Sort.OBJECTS, each.shape(), each.required(), false, Optional.empty(), false, null, 0);
                    node.item = object(inner, false, null);
                    node.item.fields(inner, fields, at + ".", false);
                    yield node;
                }
                case Shape.Anything() -> free(null);
                case Shape shape -> new Node(sort(shape), shape, each.required(), shape instanceof Shape.Words && !each.required()
                        && each.standard().isEmpty(),
                        column, false, null, 0);
            };
            add(each.name(), kid);
        }
        for (String name : EVERYWHERE) {
            if (form.field(name).isEmpty()) {
                add(name, free(null));
            }
        }
        if (form.field(Noun.SECTIONS).isEmpty()) {
            add(Noun.SECTIONS, new Node(Sort.OBJECT, null, false, false, Optional.empty(), true,
                    columns && before.isEmpty() ? Noun.SECTIONS : null, 0));
        }
    }

    private static Sort sort(Shape shape) {
        return switch (shape) {
            case Shape.Words words -> Sort.WORDS;
            case Shape.Reference reference -> Sort.WORDS;
            case Shape.Choice choice -> Sort.CHOICE;
            case Shape.YesNo yesNo -> Sort.YES_NO;
            case Shape.Whole whole -> Sort.WHOLE;
            case Shape.Amount amount -> Sort.AMOUNT;
            case Shape.Amounts amounts -> Sort.AMOUNTS;
            default -> Sort.RARE;
        };
    }

    /** The free member of that name, made new. */
    Node grow(byte[] bytes, int from, int to) {
        String name = new String(bytes, from, to - from, StandardCharsets.UTF_8);
        String at = path == null ? null : path.isEmpty() ? name : path + "." + name;
        Node kid = free(at);
        add(name, kid);
        return kid;
    }

    /** The field of a value at this free place, made when the first value is met; null for none. */
    FieldColumn freeField(FieldTree fields) {
        if (!resolved) {
            resolved = true;
            field = path == null ? null : fields.free(path).orElse(null);
        }
        return field;
    }

    /** What stands in the lists of this free place. */
    Node freeItem() {
        if (item == null) {
            item = free(null);
        }
        return item;
    }

    private void add(String name, Node kid) {
        kid.name = name.getBytes(StandardCharsets.UTF_8);
        kid.hash = hash(kid.name, 0, kid.name.length);
        if (2 * ++kidCount > kids.length) {
            Node[] old = kids;
            kids = new Node[2 * old.length];
            for (Node each : old) {
                if (each != null) {
                    put(each);
                }
            }
        }
        put(kid);
        if (kid.required) {
            mandatory.add(kid);
        }
    }

    private void put(Node kid) {
        int slot = kid.hash & kids.length - 1;
        while (kids[slot] != null) {
            slot = slot + 1 & kids.length - 1;
        }
        kids[slot] = kid;
    }

    /** The member of that name; null for none. */
    Node kid(byte[] bytes, int from, int to) {
        int wanted = hash(bytes, from, to);
        int slot = wanted & kids.length - 1;
        while (kids[slot] != null) {
            Node kid = kids[slot];
            if (kid.hash == wanted && Arrays.equals(kid.name, 0, kid.name.length, bytes, from, to)) {
                return kid;
            }
            slot = slot + 1 & kids.length - 1;
        }
        return null;
    }

    /** The member of that name, which there is. */
    Node kid(String wanted) {
        byte[] bytes = wanted.getBytes(StandardCharsets.UTF_8);
        return kid(bytes, 0, bytes.length);
    }

    static int hash(byte[] bytes, int from, int to) {
        int hash = to - from;
        for (int i = from; i < to; i++) {
            hash = 31 * hash + bytes[i];
        }
        return hash ^ hash >>> 15;
    }
}
