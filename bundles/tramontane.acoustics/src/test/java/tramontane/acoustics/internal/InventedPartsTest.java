package tramontane.acoustics.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tramontane.acoustics.MoverNoise;
import tramontane.analysis.Importer;
import tramontane.analysis.SectionType;
import tramontane.catalogue.Catalogue;
import tramontane.catalogue.PartFile;
import tramontane.catalogue.PartFilter;
import tramontane.catalogue.PartTable;
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

    /** A level in points, or of pressure, is no sound power of the part: it matches no comparison, whichever way it asks. */
    @Test
    void filtersOnSoundPowerPassOverPartsWithoutIt() {
        Catalogue catalogue = Catalogue.read(List.of(Path.of("../../product/catalogue")), List.of(new MoverNoiseSection()));
        assertEquals(List.of(), catalogue.problems());
        int with = selected(catalogue, "has noise.soundPower");
        int quiet = selected(catalogue, "noise.soundPower < 50 dB");
        int loud = selected(catalogue, "noise.soundPower >= 50 dB");
        assertEquals(with, quiet + loud);
        assertTrue(quiet > 20 && loud > 20, quiet + " and " + loud);
        assertEquals(catalogue.size() - with, selected(catalogue, "not has sections.noise.soundPower"));
        int pressure = selected(catalogue, "has noise.soundPressure");
        int points = (int) IntStream.range(0, catalogue.size()).filter(part -> Movers.noise(catalogue.part(part)).measurements().size() > 1)
                .count();
        assertEquals(catalogue.size(), with + pressure + points);
        assertEquals(catalogue.size(), selected(catalogue, "noise.blades >= 5"));
    }

    private static int selected(Catalogue catalogue, String filter) {
        PartFilter.Read read = PartFilter.parse(filter, catalogue);
        return catalogue.select(read.filter().orElseThrow(() -> new AssertionError(read.problem().toString()))).length;
    }

    /** Points, bands and tones survive a table, as they were written. */
    @Test
    void shippedPartsComeBackFromATable() throws IOException {
        List<SectionType<?>> sections = List.of(new MoverNoiseSection());
        for (AirMover part : shipped()) {
            String table = PartTable.write(List.of(part), List.of(), Optional.empty(), sections);
            Importer.Imported read = PartTable.read("parts.csv", table.getBytes(StandardCharsets.UTF_8), PartTable.automatic(), sections);
            assertEquals(part.section("noise"), read.movers().getFirst().section("noise"), () -> read.problems() + table);
        }
    }
}
