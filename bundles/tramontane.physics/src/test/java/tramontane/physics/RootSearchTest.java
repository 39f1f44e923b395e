package tramontane.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleUnaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class RootSearchTest {

    private static RootSearch between(DoubleUnaryOperator f, double a, double b) {
        return RootSearch.between(f, a, b, f.applyAsDouble(a), f.applyAsDouble(b), 1e-13, 0);
    }

    @Test
    void findsWhereTheCosineIsItsArgument() {
        assertEquals(0.7390851332151607, between(x -> Math.cos(x) - x, 0, 1).at(), 1e-12, "the root of cos x = x");
        assertEquals(0.7390851332151607, between(x -> x - Math.cos(x), 1, 0).at(), 1e-12, "whichever way it goes");
    }

    @Test
    void endsWhereTheFunctionJumpsOrIsFlat() {
        assertEquals(0.3, between(x -> x < 0.3 ? -1 : 2, 0, 1).at(), 1e-12);
        assertEquals(0, between(x -> x * x * x, -1, 2).at(), 1e-4);
    }

    @Test
    void stopsAtWhatIsNoNumber() {
        assertTrue(Double.isNaN(between(x -> x > 0.2 && x < 0.9 ? Double.NaN : x - 0.5, 0, 1).value()));
        assertThrows(IllegalArgumentException.class, () -> between(x -> x + 1, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> between(x -> Double.NaN, 0, 1));
    }

    @Property
    void findsTheRootOfAnyRisingCubic(@ForAll @DoubleRange(min = -50, max = 50) double root, @ForAll @DoubleRange(min = 0.01, max = 9) double slope) {
        DoubleUnaryOperator f = x -> (x - root) * (slope + (x - root) * (x - root));
        assertEquals(root, between(f, -60, 70).at(), 1e-11 * (1 + Math.abs(root)));
    }
}
