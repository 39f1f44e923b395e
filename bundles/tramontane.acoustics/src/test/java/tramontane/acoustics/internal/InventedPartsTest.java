package tramontane.acoustics.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tramontane.acoustics.MoverNoise;
import tramontane.catalogue.PartFile;
import tramontane.invented.InventedCatalogue;
import tramontane.model.AirMover;

/** The noise of invented parts reads without a word of caution, and what it says of a part is what is stated. */
class InventedPartsTest {

    private static final List<AirMover> MANY = InventedCatalogue.parts(10_000, InventedCatalogue.SEED);

    private static List<AirMover> shipped() throws IOException {
        List<AirMover> parts = new ArrayList<>();
        try (Stream<Path> files = Files.list(Path.of("../../product/catalogue"))) {
            for (Path file : files.filter(each -> each.toString().endsWith(".json")).toList()) {
                parts.addAll(PartFile.read(file).parts());
            }
        }
        return parts;
    }

    @Test
    void noiseOfShippedPartsReadsWithoutProblems() throws IOException {
        List<AirMover> shipped = shipped();
        assertEquals(InventedCatalogue.SHIPPED, shipped.size());
        readWithoutProblems(shipped);
    }

    @Test
    void noiseOfTenThousandPartsReadsWithoutProblems() {
        readWithoutProblems(MANY);
    }

    private static void readWithoutProblems(List<AirMover> parts) {
        for (AirMover part : parts) {
            assertEquals(List.of(), Movers.problems(part), part.id());
            MoverNoise noise = Movers.noise(part);
            assertTrue(noise.blades().isPresent(), part.id());
            assertTrue(noise.measurements().size() == 1 || noise.measurements().size() >= 6, part.id());
            assertTrue(noise.measurements().stream().allMatch(each -> each.level().isPresent()), part.id());
        }
    }

    /**
     * Where it was measured, a part is as loud as stated: within 0.1 dB without tones in bands. A tone does not stand in the middle of its
     * octave, so that the A-weighting of octaves is off by up to half a decibel with it.
     */
    @Test
    void aPartIsAsLoudAsStated() {
        double furthest = 0;
        int points = 0;
        for (AirMover part : MANY) {
            MoverNoise noise = Movers.noise(part);
            SoundSource source = SoundSource.of(part, noise).orElseThrow();
            for (MoverNoise.Measurement measured : noise.measurements()) {
                Characteristic curve = Characteristic.of(part, measured.speed().orElseThrow()).orElseThrow();
                double flow = measured.flow().orElseGet(() -> (measured.place() == MoverNoise.Place.BEST_POINT ? curve.best() : curve.free())
                        * measured.speed().orElseThrow());
                double level = source.at(measured.speed().get(), flow, measured.density(), SoundSource.Obstacles.NONE).level();
                double stated = measured.level().orElseThrow() + MoverNoiseSection.toPower(measured);
                boolean inBands = !measured.tones().isEmpty();
                assertEquals(stated, level, inBands ? 0.5 : 0.1, part.id());
                furthest = Math.max(furthest, Math.abs(level - stated));
                points++;
            }
        }
        System.out.printf("%d levels of %d parts are met within %.2f dB%n", points, MANY.size(), furthest);
    }
}
