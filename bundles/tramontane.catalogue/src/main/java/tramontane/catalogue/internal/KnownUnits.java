package tramontane.catalogue.internal;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Unit;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.Units;

/** Units by the bytes behind a number, each looked up once. Belongs to one thread. */
final class KnownUnits {

    /** Numbers that two different units would not both take to the same SI values. */
    private static final String[] PROBES = {"1", "7.3", "1234.5"};

    private static final int MOST = 10_000;

    /** A way of writing units of one kind: its bytes and what they mean. */
    private static final class Spelling {
        private final byte[] bytes;
        private final Optional<Unit> unit;
        private final Spelling next;

        private Spelling(byte[] bytes, Optional<Unit> unit, Spelling next) {
            this.bytes = bytes;
            this.unit = unit;
            this.next = next;
        }
    }

    private final Map<QuantityKind, Spelling> spellings = new HashMap<>();
    private int count;

    /**
     * The unit of a number.
     *
     * @param kind  kind of quantity
     * @param bytes the text
     * @param from  behind its last number
     * @param to    where the text ends
     * @return empty where it is none of that kind
     */
    Optional<Unit> unit(QuantityKind kind, byte[] bytes, int from, int to) {
        Spelling first = spellings.get(kind);
        for (Spelling each = first; each != null; each = each.next) {
            if (Arrays.equals(each.bytes, 0, each.bytes.length, bytes, from, to)) {
                return each.unit;
            }
        }
        String rest = new String(bytes, from, to - from, StandardCharsets.UTF_8);
        Optional<Unit> unit = Units.of(kind).stream().filter(candidate -> means(rest, kind, candidate)).findFirst();
        if (count < MOST && unit.isPresent()) {
            count++;
            spellings.put(kind, new Spelling(Arrays.copyOfRange(bytes, from, to), unit, first));
        }
        return unit;
    }

    private static boolean means(String rest, QuantityKind kind, Unit candidate) {
        try {
            for (String probe : PROBES) {
                if (Units.parse(probe + rest, kind) != candidate.toSi(Double.parseDouble(probe))) {
                    return false;
                }
            }
            return true;
        } catch (UnitException e) {
            return false;
        }
    }
}
