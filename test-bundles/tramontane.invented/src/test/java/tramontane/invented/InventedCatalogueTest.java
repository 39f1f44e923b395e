package tramontane.invented;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Finding;
import tramontane.catalogue.PartFile;
import tramontane.catalogue.Plausibility;
import tramontane.model.AirMover;
import tramontane.model.Datasheet;
import tramontane.model.FormReader;
import tramontane.model.MoverCurve;
import tramontane.model.Quantity;
import tramontane.model.Value;
import tramontane.model.file.TreeFile;
import tramontane.physics.units.QuantityKind;

class InventedCatalogueTest {

    private static final Path FOLDER = Path.of("../../product/catalogue");

    private static final List<AirMover> SHIPPED = InventedCatalogue.parts(InventedCatalogue.SHIPPED, InventedCatalogue.SEED);

    static Value.Tree noise(AirMover mover) {
        return (Value.Tree) mover.section("noise").orElseThrow();
    }

    /** Points of a test plenum; empty of parts that state one. */
    static List<Value.Tree> points(AirMover mover) {
        return items(noise(mover), "points");
    }

    static List<Value.Tree> items(Value.Tree of, String field) {
        return of.get(field).stream().flatMap(items -> ((Value.Items) items).values().stream()).map(Value.Tree.class::cast).toList();
    }

    static double si(Value.Tree of, String field, QuantityKind kind) {
        return FormReader.quantity(of.get(field).orElseThrow(), kind).orElseThrow().si();
    }

    /** Sound power at rated speed at the highest flow that was measured, dB; of sound pressure at 1 m what it stands for. */
    static double soundPower(AirMover mover) {
        Value.Tree noise = noise(mover);
        if (noise.get("soundPressure").isPresent()) {
            assertEquals(1, si(noise, "distance", QuantityKind.LENGTH));
            double area = noise.text("field").equals(Optional.of("half-space")) ? 2 * Math.PI : 4 * Math.PI;
            return si(noise, "soundPressure", QuantityKind.LEVEL) + 10 * Math.log10(area);
        }
        Value.Tree stated = points(mover).stream().max(Comparator
                .<Value.Tree>comparingDouble(point -> si(point, "speed", QuantityKind.ROTATIONAL_SPEED))
                .thenComparingDouble(point -> si(point, "flow", QuantityKind.FLOW))).orElse(noise);
        assertEquals(mover.ratedSpeedSi().orElseThrow(), si(stated, "speed", QuantityKind.ROTATIONAL_SPEED), 1e-9, mover.id());
        return si(stated, "soundPower", QuantityKind.LEVEL);
    }

    static double bestEfficiency(AirMover mover) {
        MoverCurve curve = mover.curves().getFirst();
        double best = 0;
        for (int i = 0; i < curve.flow().size(); i++) {
            double power = curve.power().isPresent() ? curve.power().get().si().get(i) : mover.ratedPower().orElseThrow().si();
            best = Math.max(best, curve.flow().si().get(i) * curve.pressure().si().get(i) / power);
        }
        return best;
    }

    @Test
    void theShippedFilesAreWhatTheGeneratorMakes() throws IOException {
        Map<String, Value.Tree> made = InventedCatalogue.files(InventedCatalogue.SHIPPED, InventedCatalogue.SEED);
        try (Stream<Path> files = Files.list(FOLDER)) {
            assertEquals(made.keySet(), files.map(file -> file.getFileName().toString()).filter(name -> name.endsWith(".json"))
                    .collect(Collectors.toSet()), "run InventedCatalogue.main on product/catalogue");
        }
        for (Map.Entry<String, Value.Tree> file : made.entrySet()) {
            assertEquals(TreeFile.write(file.getValue()), Files.readString(FOLDER.resolve(file.getKey())), file.getKey());
        }
        assertTrue(made.size() >= 20 && made.size() <= 30, made.size() + " families");
    }

    @Test
    void theShippedFilesReadAsThePartsWithoutProblems() {
        List<AirMover> read = new ArrayList<>();
        for (String name : InventedCatalogue.files(InventedCatalogue.SHIPPED, InventedCatalogue.SEED).keySet()) {
            PartFile.Read file = PartFile.read(FOLDER.resolve(name));
            assertEquals(List.of(), file.problems(), name);
            read.addAll(file.parts());
        }
        assertEquals(200, read.size());
        for (int i = 0; i < SHIPPED.size(); i++) {
            assertEquals(SHIPPED.get(i), read.get(i));
        }
    }

    @Test
    void theShippedPartsArePlausible() {
        List<String> findings = SHIPPED.stream().flatMap(mover -> Plausibility.of(mover).stream()).map(InventedCatalogueTest::words).toList();
        assertEquals(List.of(), findings);
    }

    @Test
    void manyOtherPartsArePlausible() {
        List<String> findings = InventedCatalogue.parts(3000, 7).stream().flatMap(mover -> Plausibility.of(mover).stream())
                .map(InventedCatalogueTest::words).limit(20).toList();
        assertEquals(List.of(), findings);
    }

    private static String words(Finding finding) {
        return finding.place() + ": " + finding.message();
    }

    /** What a reader of the shipped catalogue may look for is there. */
    @Test
    void theShippedPartsCoverTheirRange() {
        assertEquals(Set.copyOf(AirMover.TYPES), values(mover -> mover.type().stream()));
        assertEquals(Set.copyOf(AirMover.MOTORS), values(mover -> mover.motor().stream()));
        assertEquals(Set.copyOf(Datasheet.BEARINGS), values(mover -> mover.datasheet().bearing().stream()));
        assertEquals(Set.copyOf(Datasheet.STATUSES), values(mover -> mover.datasheet().status().stream()));
        assertEquals(Set.copyOf(Datasheet.Origin.WAYS), values(mover -> mover.datasheet().origin("curves").stream()
                .flatMap(origin -> origin.from().stream())));
        assertTrue(values(mover -> mover.datasheet().ingress().stream()).containsAll(Set.of("IP20", "IP54", "IP68")));
        assertEquals(Set.of("5 V", "12 V", "24 V", "48 V", "115 V", "230 V"), values(mover -> drive(mover, "supply").text("voltage").stream()));
        assertTrue(values(mover -> drive(mover, "control").text("kind").stream())
                .containsAll(Set.of("none", "voltage", "duty", "control voltage", "thermistor", "bus")));
        assertEquals(Set.of("2", "3", "4"), values(mover -> Stream.of(((Value.Num) ((Value.Tree) mover.section("drive").orElseThrow())
                .get("wires").orElseThrow()).literal())));
        for (String type : AirMover.TYPES) {
            assertTrue(SHIPPED.stream().filter(mover -> mover.type().equals(Optional.of(type))).count() >= 12, type);
        }
        DoubleSummaryStatistics sizes = SHIPPED.stream().mapToDouble(mover -> mover.width().orElseThrow().si()).summaryStatistics();
        assertEquals(0.008, sizes.getMin(), 1e-12);
        assertEquals(0.4, sizes.getMax(), 1e-12);
        assertEquals(Set.of(1, 2, 3), SHIPPED.stream().map(mover -> mover.curves().size()).collect(Collectors.toSet()));
        long current = SHIPPED.stream().filter(mover -> mover.datasheet().status().equals(Optional.of(Datasheet.CURRENT))).count();
        assertTrue(current > 150 && current < 195, current + " current parts of 200");
    }

    private static Set<String> values(Function<AirMover, Stream<String>> of) {
        return SHIPPED.stream().flatMap(of).collect(Collectors.toCollection(TreeSet::new));
    }

    private static Value.Tree drive(AirMover mover, String part) {
        return ((Value.Tree) mover.section("drive").orElseThrow()).tree(part).orElse(Value.Tree.EMPTY);
    }

    @Test
    void fewerPartsAreTheFirstOfMoreAndAllHaveTheirOwnId() {
        List<Value.Tree> many = InventedCatalogue.families(50_000, InventedCatalogue.SEED).values().stream().flatMap(List::stream).toList();
        assertEquals(50_000, many.size());
        Set<String> ids = new HashSet<>();
        many.forEach(part -> assertTrue(ids.add(part.text("id").orElseThrow()), part.text("id").orElseThrow()));
        assertEquals(SHIPPED.stream().map(AirMover::id).toList(), many.subList(0, SHIPPED.size()).stream()
                .map(part -> part.text("id").orElseThrow()).toList());
        assertEquals(SHIPPED, InventedCatalogue.parts(300, InventedCatalogue.SEED).subList(0, SHIPPED.size()));
    }

    @Test
    void currentTimesVoltageIsThePower() {
        for (AirMover mover : SHIPPED) {
            Value.Tree supply = drive(mover, "supply");
            double volts = FormReader.quantity(supply.get("voltage").orElseThrow(), QuantityKind.VOLTAGE).orElseThrow().si();
            double amperes = FormReader.quantity(supply.get("rated").orElseThrow(), QuantityKind.CURRENT).orElseThrow().si();
            double factor = supply.get("powerFactor")
                    .flatMap(value -> FormReader.quantity(value, QuantityKind.FRACTION)).map(Quantity::si).orElse(1.0);
            double power = mover.ratedPower().map(Quantity::si).orElseGet(() -> mover.curves().getFirst().power().orElseThrow().si().stream()
                    .mapToDouble(Double::doubleValue).max().orElseThrow());
            assertEquals(power, volts * amperes * factor, 0.011 * power, mover.id()); // two figures of three digits
        }
    }
}
