package tramontane.acoustics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import tramontane.physics.sound.Weighting;

class BandedTest {

    @Test
    void oneValueHoldsEverywhere() {
        Banded one = new Banded(false, 500, List.of(3.0));
        assertEquals(Banded.always(3), one);
        assertEquals(90, Arrays.stream(one.thirds(-1)).sum());
        assertEquals(90, Arrays.stream(one.held()).sum());
    }

    @Test
    void anOctaveIsThreeThirds() {
        Banded octaves = new Banded(true, 63, List.of(1.0, 2.0));
        assertEquals("[-1.0, -1.0, -1.0, 1.0, 1.0, 1.0, 2.0, 2.0, 2.0, -1.0]", Arrays.toString(Arrays.copyOf(octaves.thirds(-1), 10)));
        assertEquals("[1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 2.0, 2.0, 2.0, 2.0]", Arrays.toString(Arrays.copyOf(octaves.held(), 10)));
        Banded thirds = new Banded(false, 50, List.of(1.0, 2.0));
        assertEquals("[-1.0, -1.0, -1.0, 1.0, 2.0, -1.0]", Arrays.toString(Arrays.copyOf(thirds.thirds(-1), 6)));
    }

    /** References 7.2: octaves from 63 Hz, levels with table weightings, 0.05 dB for the analytic ones. */
    @Test
    void levelsMakeASpectrum() {
        Banded levels = new Banded(true, 63, List.of(45.0, 48.0, 46.0, 44.0, 42.0, 38.0, 33.0, 27.0));
        assertEquals(52.6553, levels.spectrum().level(), 1e-4);
        assertEquals(46.6474, levels.spectrum().level(Weighting.A), 0.05);
        assertEquals(48, new Banded(false, 100, List.of(40.0, 48.0)).spectrum().level(7), 1e-12);
        assertEquals(50, Banded.always(50).spectrum().octave(3), 1e-9);
    }

    @Test
    void aRunBeyondTheEndsIsCut() {
        assertEquals(40, new Banded(true, 16000, List.of(40.0, 90.0)).spectrum().level(), 1e-9);
        assertEquals(30, new Banded(true, 16, List.of(90.0, 30.0)).spectrum().level(), 1e-9);
        assertEquals(7, new Banded(true, 16000, List.of(7.0, 9.0)).held()[29]);
    }

    @Test
    void nothingIsNoValue() {
        assertEquals("values by band need a value and a frequency above 0, got [] from 63.0 Hz",
                assertThrows(IllegalArgumentException.class, () -> new Banded(true, 63, List.of())).getMessage());
    }
}
