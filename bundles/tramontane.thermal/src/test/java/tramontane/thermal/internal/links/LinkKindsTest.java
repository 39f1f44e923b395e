package tramontane.thermal.internal.links;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.analysis.AirStream;
import tramontane.analysis.LinkKind;
import tramontane.analysis.PassageKind;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Field;
import tramontane.model.FormReader;
import tramontane.model.HeatSource;
import tramontane.model.Link;
import tramontane.model.Problem;
import tramontane.model.Values;
import tramontane.model.file.DesignFile;
import tramontane.model.file.Loaded;

/** All kinds of link as they stand in a file. */
class LinkKindsTest {

    private static final Map<String, LinkKind> KINDS = Links.KINDS.stream()
            .collect(Collectors.toMap(kind -> kind.form().name(), Function.identity()));

    /** A chain in which each kind stands once, most of their fields among them. */
    private static final String FILE = """
            {"format": 1, "name": "every kind of link", "airPath": {"bays": ["box"], "passages": []},
             "heatSources": [{"id": "cpu", "power": "25 W", "into": ["box"], "chain": [
               {"kind": "junction to case", "resistance": "0.3 K/W", "tolerance": "10 %"},
               {"kind": "interface", "thickness": "100 um", "conductivity": "3 W/mK", "width": "20 mm", "height": "20 mm",
                "contactResistance": 1e-5, "heatCapacity": "30 J/K"},
               {"kind": "spreading", "sourceWidth": "20 mm", "sourceHeight": "20 mm", "width": "60 mm", "length": "60 mm",
                "thickness": "4 mm", "conductivity": 180, "where": "average"},
               {"kind": "measured sink", "flow": "5 10 20 l/s", "resistance": "0.9 0.5 0.3 K/W", "reference": "mean air", "flowShare": "50 %"},
               {"kind": "plate fins", "fins": 16, "finThickness": "0.8 mm", "width": "60 mm", "height": "25 mm", "length": "60 mm",
                "conductivity": "180 W/mK", "ductWidth": "80 mm", "ductHeight": "30 mm", "base": "5 mm", "flowShare": 0.5},
               {"kind": "pin fins", "pinDiameter": "3 mm", "height": "20 mm", "across": 8, "rows": 10, "pitchAcross": "6 mm",
                "pitchAlong": "6 mm", "arrangement": "staggered"},
               {"kind": "board", "width": "160 mm", "length": "220 mm", "sides": 2, "channel": "15 mm", "boards": 2, "flowArea": "48 cm²"},
               {"kind": "package", "width": "15 mm", "length": "20 mm", "height": "2 mm", "velocity": "2 m/s"},
               {"kind": "resistance", "resistance": "2 K/W", "flow": "10 l/s", "reference": "inlet air"},
               {"kind": "surface", "coefficient": "30 W/m2K", "area": "50 cm²", "flow": "5 l/s"}]}]}
            """;

    private static final AirStream AIR = Links.air(0.01, 0.005);

    private static Design design() {
        Loaded loaded = DesignFile.parse(FILE);
        assertEquals(List.of(), loaded.problems());
        return loaded.design().orElseThrow();
    }

    record Read(LinkKind kind, LinkKind.Setting setting, Values values, List<Problem> problems) {
        @Override
        public String toString() {
            return kind.form().name();
        }
    }

    static List<Read> links() {
        Design design = design();
        HeatSource source = design.heatSources().getFirst();
        List<Read> links = new ArrayList<>();
        for (Link link : source.chain()) {
            LinkKind kind = KINDS.get(link.kind());
            LinkKind.Setting setting = new LinkKind.Setting(design, Condition.NOMINAL, source, link);
            List<Problem> problems = new ArrayList<>();
            Values values = FormReader.read(kind.form(), link.parameters(), "", problems);
            problems.addAll(kind.check(values, setting, ""));
            links.add(new Read(kind, setting, values, problems));
        }
        return links;
    }

    @Test
    void theFileHasEveryKindOnceAndComesBack() {
        List<String> kinds = design().heatSources().getFirst().chain().stream().map(Link::kind).toList();
        assertEquals(KINDS.keySet(), Map.copyOf(kinds.stream().collect(Collectors.toMap(kind -> kind, kind -> 1))).keySet());
        assertEquals(design(), DesignFile.parse(DesignFile.write(design())).design().orElseThrow());
    }

    @ParameterizedTest
    @MethodSource("links")
    void readsWithoutProblemsAndGivesAResistance(Read link) {
        assertEquals(List.of(), link.problems());
        double resistance = link.kind().law(link.values(), link.setting()).resistance(AIR, 0.5);
        assertTrue(resistance > 0 && resistance < 100, "" + resistance);
        double other = link.kind().law(link.values(), link.setting()).resistance(AIR, 0.5);
        assertEquals(resistance, other, 0);
    }

    @ParameterizedTest
    @MethodSource("links")
    void saysWhereItsResistanceComesFrom(Read link) {
        PassageKind.Origin origin = link.kind().origin(link.values(), link.setting(), AIR).orElseThrow();
        assertFalse(origin.relation().formula().isBlank());
        assertFalse(origin.relation().source().isBlank());
        assertFalse(origin.inputs().isEmpty());
        origin.inputs().forEach(term -> {
            assertTrue(Double.isFinite(term.value()), term.toString());
            assertTrue(term.from().equals("heat source cpu") || term.from().equals("bay box")
                    || term.from().equals("condition nominal"), term.toString());
        });
        assertEquals(origin.inputs().size(), origin.inputs().stream().map(term -> term.name()).distinct().count(), origin.toString());
    }

    /** Only the last link of a chain sees the air. */
    @ParameterizedTest
    @MethodSource("links")
    void onlySurfacesHaveAir(Read link) {
        if (link.kind().step() != LinkKind.Step.SURFACE) {
            assertFalse(link.kind().fromInlet(link.values(), link.setting()));
            assertEquals(List.of(), link.kind().findings(link.values(), link.setting(), AIR));
            assertEquals(link.kind().law(link.values(), link.setting()).resistance(Links.air(0), 0.5),
                    link.kind().law(link.values(), link.setting()).resistance(AIR, 0.5), 0);
        }
    }

    @Test
    void everyFieldIsExplained() {
        for (LinkKind kind : Links.KINDS) {
            for (Field field : kind.form().fields()) {
                assertTrue(field.help().endsWith("."), kind.form().name() + " " + field.name() + ": " + field.help());
                assertFalse(field.label().isBlank());
            }
            assertTrue(Link.FORM.fields().stream().noneMatch(common -> kind.form().field(common.name()).isPresent()), kind.form().name());
        }
    }

    /** 25 W on 0.1 mm of 3 W/(m K) and 20 by 20 mm: 2.0833 K; R in series add up. */
    @Test
    void aChainWorkedByHand() {
        Links.Case paste = Links.inBox(new InterfaceKind(), "thickness", "0.1 mm", "conductivity", "3 W/mK", "area", "400 mm²");
        Links.Case sink = Links.inBox(new ResistanceKind(), "resistance", "1.5 K/W");
        Links.Case junction = Links.inBox(new JunctionToCaseKind(), "resistance", "0.4 K/W");
        assertEquals(2.0833, 25 * paste.resistance(AIR), 1e-4);
        double beyond = sink.resistance(AIR, 0);
        assertEquals(25 * (0.4 + 0.0833333 + 1.5), 25 * (junction.resistance(AIR, beyond + paste.resistance(AIR, beyond))
                + paste.resistance(AIR, beyond) + beyond), 1e-4);
    }
}
