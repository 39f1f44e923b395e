package tramontane.catalogue.internal;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.model.Datasheet;
import tramontane.model.MoverCurve;
import tramontane.model.Range;
import tramontane.model.Shape;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Unit;

/**
 * Reads parts straight from the bytes of a file that {@link FileIndex} went through, without trees of values. Whatever is wrong,
 * deserves a caution, or is written in a way that hardly occurs, it leaves to {@link ThoroughReader}. Belongs to one thread.
 */
final class QuickReader {

    /** Powers of ten that a double holds exactly. */
    private static final double[] TENS = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17,
        1e18, 1e19, 1e20, 1e21, 1e22};

    /** Below this a whole number and its sum with a digit are exact in a double. */
    private static final long MOST_MANTISSA = 900_000_000_000_000L;

    private static final int LONGEST_TEXT = 100_000;

    private static final int MOST_NODES = 20_000;

    /** One curve of the part that is read. */
    private static final class Curve {
        private double speed;
        private double density;
        private double diameter;
        private double[] flow;
        private double[] pressure;
        private double[] power;
    }

    private final FieldTree fields;
    private final Node root;
    private final Node id;
    private final Node curvesNode;
    private final Node flow;
    private final Node pressure;
    private final Node power;
    private final Node speed;
    private final Node density;
    private final Node diameter;
    private final int ratedSpeed;
    private final int rotorDiameter;
    private final int ratedPower;
    private final int fixedLoss;
    private final int lowest;
    private final int highest;
    private final int ingress;
    private final PartRow.Builder row = new PartRow.Builder();
    private final FreeValues free = new FreeValues();
    private final Words words = new Words();
    private final KnownUnits units = new KnownUnits();
    private final Map<String, Boolean> soundIngress = new IdentityHashMap<>();
    private final List<Node> objects = new ArrayList<>();
    private final List<Curve> curves = new ArrayList<>();

    private byte[] bytes;
    private int at;
    private int serial;
    private int part;
    private int nodes;
    /** Where the number that was read last ends. */
    private int numberEnd;
    private boolean family;

    QuickReader(FieldTree fields) {
        this.fields = fields;
        root = Node.part(fields);
        id = root.kid("id");
        curvesNode = root.kid("curves");
        flow = curvesNode.item.kid("flow");
        pressure = curvesNode.item.kid("pressure");
        power = curvesNode.item.kid("power");
        speed = curvesNode.item.kid("speed");
        density = curvesNode.item.kid("density");
        diameter = curvesNode.item.kid("rotorDiameter");
        ratedSpeed = root.kid("ratedSpeed").column;
        rotorDiameter = root.kid("rotorDiameter").column;
        ratedPower = root.kid("ratedPower").column;
        fixedLoss = root.kid("fixedLoss").column;
        lowest = root.kid("lowestTemperature").column;
        highest = root.kid("highestTemperature").column;
        ingress = root.kid("ingress").column;
    }

    /**
     * A part that was read.
     *
     * @param id  its id
     * @param row its values
     */
    record Part(String id, PartRow row) {
    }

    /**
     * Reads a part.
     *
     * @param file  the bytes of the file
     * @param index where the parts stand in it
     * @param which the part's number in the file
     * @throws Odd where the thorough reader must look
     */
    Part read(byte[] file, FileIndex index, int[] shared, int which) throws Odd {
        bytes = file;
        family = index.family();
        part++;
        row.clear();
        objects.clear();
        curves.clear();
        if (shared.length > 0) {
            int own = ++serial;
            for (int i = 0; i < shared.length; i += 2) {
                at = shared[i];
                member(root, own, true);
            }
        }
        at = index.start(which);
        object(root, true);
        for (Node object : objects) {
            for (Node wanted : object.mandatory) {
                if (wanted.part != part) {
                    throw Odd.FOUND;
                }
            }
        }
        fitsTogether();
        String name = row.text(id.column);
        derive();
        return new Part(name, row.build());
    }

    /** What {@code Consistency} says of an air mover. */
    private void fitsTogether() throws Odd {
        if (row.number(lowest) >= row.number(highest)) {
            throw Odd.FOUND;
        }
        String code = row.text(ingress);
        if (code != null && !soundIngress.computeIfAbsent(code, QuickReader::isIngress)) {
            throw Odd.FOUND;
        }
        double loss = row.number(fixedLoss);
        if (row.number(ratedPower) < loss) {
            throw Odd.FOUND;
        }
        for (Curve curve : curves) {
            if (curve.pressure.length != curve.flow.length || curve.power.length > 0 && curve.power.length != curve.flow.length) {
                throw Odd.FOUND;
            }
            for (double each : curve.power) {
                if (each < loss) {
                    throw Odd.FOUND;
                }
            }
        }
    }

    private static boolean isIngress(String code) {
        Datasheet sheet = new Datasheet(Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(code), Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), List.of());
        return sheet.check("").isEmpty();
    }

    /** As {@code Derived} does it on an air mover. */
    private void derive() {
        double rated = row.number(ratedSpeed);
        for (int i = 0; i < curves.size() && Double.isNaN(rated); i++) {
            rated = curves.get(i).speed;
        }
        Curve nearest = null;
        double least = Double.POSITIVE_INFINITY;
        for (Curve curve : curves) {
            double far = CurveFigures.distance(curve.speed, rated);
            if (nearest == null || far < least) {
                nearest = curve;
                least = far;
            }
        }
        double size = row.number(rotorDiameter);
        CurveFigures figures = CurveFigures.NONE;
        if (nearest != null) {
            double loss = row.number(fixedLoss);
            figures = CurveFigures.of(nearest.flow, nearest.pressure, nearest.power, row.number(ratedPower), Double.isNaN(loss) ? 0 : loss,
                    new CurveFigures.Scale(nearest.speed > 0 && rated > 0 ? rated / nearest.speed : 1,
                            nearest.diameter > 0 && size > 0 ? size / nearest.diameter : 1,
                            MoverCurve.STANDARD_DENSITY / (nearest.density > 0 ? nearest.density : MoverCurve.STANDARD_DENSITY)));
        }
        derived(row, figures, rated, size);
    }

    /** Sets the derived columns. */
    static void derived(PartRow.Builder row, CurveFigures figures, double rated, double size) {
        double[] values = {figures.freeDelivery(), figures.shutOff(), figures.bestFlow(), figures.bestPressure(), figures.bestEfficiency(),
            figures.specificSpeed(rated, MoverCurve.STANDARD_DENSITY), rated * size / 2};
        for (int i = 0; i < values.length; i++) {
            if (Double.isFinite(values[i])) {
                row.set(i, values[i]);
            }
        }
    }

    private void space() {
        while (bytes[at] == ' ' || bytes[at] == '\n' || bytes[at] == '\r' || bytes[at] == '\t') {
            at++;
        }
    }

    /** Reads an object from its brace on. */
    private void object(Node node, boolean top) throws Odd {
        int own = ++serial;
        if (top && !node.mandatory.isEmpty()) {
            objects.add(node);
        }
        at++;
        space();
        if (bytes[at] == '}') {
            at++;
        } else {
            while (true) {
                member(node, own, top);
                space();
                if (bytes[at++] == '}') {
                    break;
                }
                space();
            }
        }
        if (!top) {
            for (Node wanted : node.mandatory) {
                if (wanted.seen != own) {
                    throw Odd.FOUND;
                }
            }
        }
    }

    /** Reads a member from its name on. */
    private void member(Node node, int own, boolean top) throws Odd {
        int name = at + 1;
        int end = textEnd();
        Node kid = node.kid(bytes, name, end);
        if (kid == null) {
            if (node == root && !family && end - name == PartTrees.FORMAT_MEMBER.length()
                    && words.of(bytes, name, end).equals(PartTrees.FORMAT_MEMBER)) {
                at = end;
                while (bytes[at++] != '0' + PartTrees.FORMAT) {
                    continue; // it was looked at before: it is one digit
                }
                return;
            }
            if (!node.open || ++nodes > MOST_NODES) {
                throw Odd.FOUND;
            }
            kid = node.grow(bytes, name, end);
        }
        if (kid.seen == own) {
            throw Odd.FOUND; // given twice
        }
        kid.seen = own;
        at = end + 1;
        space();
        at++;
        space();
        if (top) {
            boolean object = bytes[at] == '{';
            if (kid.part == part && kid.object != object) {
                throw Odd.FOUND; // the part says something else than its family
            }
            kid.part = part;
            kid.object = object;
        }
        value(kid, top);
    }

    private void value(Node node, boolean top) throws Odd {
        switch (node.sort) {
            case FREE -> free(node, top);
            case OBJECT -> {
                if (bytes[at] != '{') {
                    throw Odd.FOUND;
                }
                object(node, top);
            }
            case OBJECTS -> objects(node);
            case WORDS -> {
                String text = node == id ? single() : text();
                if (text.isBlank() && !node.mayBeBlank) {
                    throw Odd.FOUND;
                }
                if (node.column >= 0) {
                    row.set(node.column, text);
                }
            }
            case CHOICE -> {
                String text = text();
                if (!((Shape.Choice) node.shape).words().contains(text)) {
                    throw Odd.FOUND;
                }
                if (node.column >= 0) {
                    row.set(node.column, text);
                }
            }
            case YES_NO -> {
                String flag = flag();
                if (node.column >= 0) {
                    row.set(node.column, flag);
                }
            }
            case WHOLE -> {
                Shape.Whole bounds = (Shape.Whole) node.shape;
                double whole = plainNumber();
                if (whole != Math.rint(whole) || whole < bounds.least() || whole > bounds.most()) {
                    throw Odd.FOUND;
                }
                if (node.column >= 0) {
                    row.set(node.column, whole + 0.0);
                }
            }
            case AMOUNT -> {
                Shape.Amount amount = (Shape.Amount) node.shape;
                node.number = amount(amount.kind(), amount.range());
                if (node.column >= 0) {
                    row.set(node.column, node.number);
                }
            }
            case AMOUNTS -> amounts(node, (Shape.Amounts) node.shape);
            case VERSION -> {
                if (plainNumber() != node.version) {
                    throw Odd.FOUND;
                }
            }
            case RARE -> throw Odd.FOUND;
        }
    }

    private void free(Node node, boolean top) throws Odd {
        if (bytes[at] == '{') {
            object(node, top);
            return;
        }
        FieldColumn field = top ? node.freeField(fields) : null;
        switch (bytes[at]) {
            case '[' -> {
                unset(field);
                at++;
                space();
                if (bytes[at] == ']') {
                    at++;
                    return;
                }
                while (true) {
                    free(node.freeItem(), false);
                    space();
                    if (bytes[at++] == ']') {
                        return;
                    }
                    space();
                }
            }
            case '"' -> {
                if (field == null) {
                    skipText();
                } else {
                    free.text(row, field, text());
                }
            }
            case 't', 'f' -> {
                String flag = flag();
                if (field != null) {
                    row.set(field.number(), flag);
                }
            }
            case 'n' -> {
                at += 4;
                unset(field);
            }
            default -> {
                if (field == null) {
                    skipNumber();
                } else {
                    int start = at;
                    skipNumber();
                    free.number(row, field, Double.parseDouble(new String(bytes, start, at - start, StandardCharsets.ISO_8859_1)));
                }
            }
        }
    }

    private void unset(FieldColumn field) {
        if (field != null) {
            row.unset(field.number());
        }
    }

    private void objects(Node node) throws Odd {
        if (bytes[at] != '[') {
            throw Odd.FOUND;
        }
        boolean ofCurves = node == curvesNode;
        if (ofCurves) {
            curves.clear();
        }
        at++;
        space();
        if (bytes[at] == ']') {
            if (node.required) {
                throw Odd.FOUND;
            }
            at++;
            return;
        }
        while (true) {
            if (bytes[at] != '{') {
                throw Odd.FOUND;
            }
            int own = serial + 1;
            object(node.item, false);
            if (ofCurves) {
                curves.add(curve(own));
            }
            space();
            if (bytes[at++] == ']') {
                return;
            }
            space();
        }
    }

    private Curve curve(int own) {
        Curve curve = new Curve();
        curve.speed = speed.seen == own ? speed.number : Double.NaN;
        curve.density = density.seen == own ? density.number : Double.NaN;
        curve.diameter = diameter.seen == own ? diameter.number : Double.NaN;
        curve.flow = Arrays.copyOf(flow.list, flow.size);
        curve.pressure = Arrays.copyOf(pressure.list, pressure.size);
        curve.power = power.seen == own ? Arrays.copyOf(power.list, power.size) : new double[0];
        return curve;
    }

    private double amount(QuantityKind kind, Range range) throws Odd {
        double si;
        if (bytes[at] == '"') {
            int end = textEnd();
            double number = number(at + 1, end);
            si = unit(kind, numberEnd, end).toSi(number);
            if (!Double.isFinite(si)) {
                throw Odd.FOUND;
            }
            at = end + 1;
        } else {
            si = plainNumber();
        }
        si += 0.0; // no negative zero
        if (!range.contains(si)) {
            throw Odd.FOUND;
        }
        return si;
    }

    private void amounts(Node node, Shape.Amounts shape) throws Odd {
        node.size = 0;
        if (bytes[at] == '[') {
            at++;
            space();
            if (bytes[at] == ']') {
                throw Odd.FOUND;
            }
            while (true) {
                append(node, shape, amount(shape.kind(), shape.range()));
                space();
                if (bytes[at++] == ']') {
                    break;
                }
                space();
            }
        } else if (bytes[at] == '"') {
            int end = textEnd();
            int next = at + 1;
            int first = node.size;
            while (true) {
                double number = number(next, end);
                grow(node);
                node.list[node.size++] = number;
                // a further number stands behind one space; a slash behind its digits shows that it begins a unit, as in 1/min
                next = numberEnd + 1;
                if (numberEnd >= end || bytes[numberEnd] != ' ' || next >= end || bytes[next] != '-' && !isDigit(bytes[next])) {
                    break;
                }
                int behind = next + 1;
                while (behind < end && isDigit(bytes[behind])) {
                    behind++;
                }
                if (behind < end && bytes[behind] == '/') {
                    break;
                }
            }
            Unit unit = unit(shape.kind(), numberEnd, end);
            int count = node.size;
            node.size = first;
            for (int i = first; i < count; i++) {
                double si = unit.toSi(node.list[i]) + 0.0;
                if (!Double.isFinite(si) || !shape.range().contains(si)) {
                    throw Odd.FOUND;
                }
                append(node, shape, si);
            }
            at = end + 1;
        } else {
            throw Odd.FOUND;
        }
        if (node.size < shape.least()) {
            throw Odd.FOUND;
        }
    }

    private static void grow(Node node) {
        if (node.size == node.list.length) {
            node.list = Arrays.copyOf(node.list, 2 * node.size);
        }
    }

    private static void append(Node node, Shape.Amounts shape, double si) throws Odd {
        if (shape.increasing() && node.size > 0 && si <= node.list[node.size - 1]) {
            throw Odd.FOUND;
        }
        grow(node);
        node.list[node.size++] = si;
    }

    private Unit unit(QuantityKind kind, int from, int end) throws Odd {
        if (from < end && (bytes[from] == '.' || bytes[from] == ',' || bytes[from] == '/' || bytes[from] == 'e' || bytes[from] == 'E'
                || isDigit(bytes[from]))) {
            throw Odd.FOUND; // it might belong to the number
        }
        return units.unit(kind, bytes, from, end).orElseThrow(() -> Odd.FOUND);
    }

    private double plainNumber() throws Odd {
        double number = number(at, bytes.length);
        at = numberEnd;
        return number;
    }

    /**
     * Reads a number in decimal notation: exactly, like {@link Double#parseDouble}, since one operation on two doubles that are
     * exact themselves rounds once (W. D. Clinger, How to read floating point numbers accurately, PLDI 1990).
     */
    private double number(int from, int end) throws Odd {
        int i = from;
        boolean negative = i < end && bytes[i] == '-';
        if (negative) {
            i++;
        }
        long mantissa = 0;
        int digits = 0;
        int decimals = 0;
        int first = i;
        while (i < end && isDigit(bytes[i])) {
            mantissa = mantissa < MOST_MANTISSA / 10 ? 10 * mantissa + bytes[i] - '0' : mantissa;
            digits++;
            i++;
        }
        if (i == first) {
            throw Odd.FOUND;
        }
        if (i < end && bytes[i] == '.') {
            int point = ++i;
            while (i < end && isDigit(bytes[i])) {
                mantissa = mantissa < MOST_MANTISSA / 10 ? 10 * mantissa + bytes[i] - '0' : mantissa;
                i++;
            }
            decimals = i - point;
            if (decimals == 0) {
                throw Odd.FOUND;
            }
        }
        numberEnd = i;
        boolean exponent = false;
        if (i < end && (bytes[i] == 'e' || bytes[i] == 'E')) {
            int k = i + 1;
            if (k < end && (bytes[k] == '-' || bytes[k] == '+')) {
                k++;
            }
            int firstDigit = k;
            while (k < end && isDigit(bytes[k])) {
                k++;
            }
            if (k > firstDigit) {
                exponent = true;
                numberEnd = k;
            }
        }
        double value;
        if (!exponent && digits + decimals <= 14) {
            value = decimals == 0 ? mantissa : mantissa / TENS[decimals];
            value = negative ? -value : value;
        } else {
            value = Double.parseDouble(new String(bytes, from, numberEnd - from, StandardCharsets.ISO_8859_1));
            if (Double.isInfinite(value) || value == 0) {
                throw Odd.FOUND; // perhaps beyond the range of a double
            }
        }
        return value;
    }

    private static boolean isDigit(byte b) {
        return b >= '0' && b <= '9';
    }

    private String flag() throws Odd {
        if (bytes[at] == 't') {
            at += 4;
            return "true";
        }
        if (bytes[at] == 'f') {
            at += 5;
            return "false";
        }
        throw Odd.FOUND;
    }

    /** A text that no other part has. */
    private String single() throws Odd {
        if (bytes[at] != '"') {
            throw Odd.FOUND;
        }
        int start = at + 1;
        int end = textEnd();
        at = end + 1;
        return new String(bytes, start, end - start, StandardCharsets.UTF_8);
    }

    private String text() throws Odd {
        if (bytes[at] != '"') {
            throw Odd.FOUND;
        }
        int end = textEnd();
        String text = words.of(bytes, at + 1, end);
        at = end + 1;
        return text;
    }

    /** Where the text that begins here ends, with no escapes in it. */
    private int textEnd() throws Odd {
        int i = at + 1;
        while (bytes[i] != '"') {
            if (bytes[i] == '\\') {
                throw Odd.FOUND;
            }
            i++;
        }
        if (i - at > LONGEST_TEXT) {
            throw Odd.FOUND;
        }
        return i;
    }

    private void skipText() {
        int i = at + 1;
        while (bytes[i] != '"') {
            i += bytes[i] == '\\' ? 2 : 1;
        }
        at = i + 1;
    }

    private void skipNumber() {
        while (at < bytes.length && (isDigit(bytes[at]) || bytes[at] == '-' || bytes[at] == '+' || bytes[at] == '.' || bytes[at] == 'e'
                || bytes[at] == 'E')) {
            at++;
        }
    }
}
