package tramontane.cli.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.CharRange;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;

class NaturalOrderTest {

    @Test
    void numbersInPlacesCountAsNumbers() {
        List<String> places = new ArrayList<>(List.of("b[10].x", "b[9].x", "b[09].y", "a", "", "b[9]", "b"));
        places.sort(NaturalOrder::compare);
        assertEquals(List.of("", "a", "b", "b[9]", "b[9].x", "b[09].y", "b[10].x"), places);
    }

    @Property
    void theOrderIsTheSameFromBothSides(@ForAll @StringLength(max = 6) @CharRange(from = '/', to = ':') String one,
            @ForAll @StringLength(max = 6) @CharRange(from = '/', to = ':') String other) {
        assertEquals(Integer.signum(NaturalOrder.compare(one, other)), -Integer.signum(NaturalOrder.compare(other, one)));
    }
}
