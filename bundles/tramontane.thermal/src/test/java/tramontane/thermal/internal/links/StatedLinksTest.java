package tramontane.thermal.internal.links;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.Arguments;
import tramontane.analysis.LinkKind;

/** Links whose resistance is stated or follows from a layer. */
class StatedLinksTest {

    /** ASTM D5470 sense, worked by hand: thickness mm, conductivity, contact resistance, side mm, K/W and kelvin at 25 W. */
    @ParameterizedTest
    @CsvSource({"0.1, 3, 0, 20, 0.0833333, 2.083333", "0.1, 3, 1e-5, 20, 0.1083333, 2.708333", "0, 3, 1e-5, 20, 0.025, 0.625",
        "0.025, 1, 0, 10, 0.25, 6.25"})
    void interfaces(double thickness, double conductivity, double contact, double side, double expected, double rise) {
        Links.Case square = Links.inBox(new InterfaceKind(), "thickness", thickness + " mm", "conductivity", conductivity,
                "contactResistance", contact, "width", side + " mm", "height", side + " mm");
        assertEquals(expected, square.resistance(Links.air(0.01)), 1e-6);
        assertEquals(rise, 25 * square.resistance(Links.air(0)), 1e-5);
        Links.Case area = Links.inBox(new InterfaceKind(), "thickness", thickness + " mm", "conductivity", conductivity + " W/(m K)",
                "contactResistance", contact + " m² K/W", "area", side * side + " mm²");
        assertEquals(expected, area.resistance(Links.air(0.01)), 1e-6);
        assertEquals(LinkKind.Step.INTERFACE, new InterfaceKind().step());
        assertEquals(side * side * 1e-6, area.input(Links.air(1), "area A"), 1e-12);
    }

    @Test
    void anInterfaceMayBeItsContactResistanceAlone() {
        assertEquals(0.5e-4 / 1e-4, Links.inBox(new InterfaceKind(), "contactResistance", 0.5e-4, "area", "1 cm²")
                .resistance(Links.air(0)), 1e-12);
    }

    static List<Arguments> badInterfaces() {
        return List.of(
                Arguments.of("conductivity: 0 is out of range; expected a conductivity above 0, as a number in W/(m K) or a text with"
                        + " its unit", new Object[] {"thickness", "0.1 mm", "conductivity", 0, "area", "4 cm²"}),
                Arguments.of("conductivity: is missing; expected with thickness", new Object[] {"thickness", "0.1 mm", "area", "4 cm²"}),
                Arguments.of("thickness: is missing; expected with conductivity",
                        new Object[] {"conductivity", 3, "contactResistance", 1e-5, "area", "4 cm²"}),
                Arguments.of("thickness: is missing, so that its resistance is not known; expected thickness and conductivity, or "
                        + "contactResistance", new Object[] {"area", "4 cm²"}),
                Arguments.of("width: is missing, so that its size is not known; expected width and height, or area",
                        new Object[] {"thickness", "0.1 mm", "conductivity", 3}),
                Arguments.of("height: is missing; expected with width",
                        new Object[] {"thickness", "0.1 mm", "conductivity", 3, "width", "2 cm"}),
                Arguments.of("says its size more than once, by width and by area; expected one of them",
                        new Object[] {"thickness", "0.1 mm", "conductivity", 3, "width", "2 cm", "area", "4 cm²"}),
                Arguments.of("contactResistance: -1 is out of range; expected a contact resistance of at least 0, as a number in m² K/W"
                        + " or a text with its unit", new Object[] {"contactResistance", -1, "area", "4 cm²"}));
    }

    @ParameterizedTest
    @MethodSource("badInterfaces")
    void saysWhatIsWrongWithAnInterface(String expected, Object[] members) {
        assertEquals(List.of(expected), Links.inBox(new InterfaceKind(), members).sentences());
    }

    @Test
    void statedResistancesHoldAtAnyFlow() {
        Links.Case junction = Links.inBox(new JunctionToCaseKind(), "resistance", "0.4 K/W");
        assertEquals(0.4, junction.resistance(Links.air(0)), 1e-12);
        assertEquals(LinkKind.Step.PACKAGE, junction.kind().step());
        assertFalse(junction.fromInlet());
        Links.Case air = Links.inBox(new ResistanceKind(), "resistance", 2.5);
        assertEquals(2.5, air.resistance(Links.air(0.01)), 1e-12);
        assertEquals(LinkKind.Step.SURFACE, air.kind().step());
        assertTrue(air.fromInlet());
        assertFalse(Links.inBox(new ResistanceKind(), "resistance", 2.5, "reference", "mean air").fromInlet());
        // 1/(50 W/(m² K) 0.01 m²)
        Links.Case surface = Links.inBox(new SurfaceKind(), "coefficient", "50 W/m2K", "area", "100 cm²");
        assertEquals(2, surface.resistance(Links.air(0.01)), 1e-12);
        assertFalse(surface.fromInlet());
        assertEquals(List.of("resistance: is missing; expected a thermal resistance above 0, as a number in K/W or a text with its"
                + " unit"), Links.inBox(new JunctionToCaseKind()).sentences());
        assertEquals(List.of("coefficient: 0 is out of range; expected a heat transfer coefficient above 0, as a number in W/(m² K) or"
                + " a text with its unit"), Links.inBox(new SurfaceKind(), "coefficient", 0, "area", 1).sentences());
    }

    @Test
    void saysThatAStatedValueIsUsedWhereLessAirComes() {
        Links.Case stated = Links.inBox(new ResistanceKind(), "resistance", 2.5, "flow", "0.01 m³/s");
        assertEquals(List.of(), stated.findings(Links.air(0.0095)));
        assertEquals(List.of("caution cpu: resistance of cpu is stated for a flow of 0.0100 m³/s but has only 0.00800 m³/s"),
                stated.findings(Links.air(0.008)));
        // at 70 kPa the mass of 0.0095 m³/s is that of 0.0066 m³/s at sea level
        assertEquals(List.of("caution cpu: resistance of cpu is stated for a flow of 0.0100 m³/s but has only 0.00950 m³/s of "
                + "thinner air"), Links.at("box", Links.pressure(70000), new ResistanceKind(), "resistance", 2.5, "flow", 0.01)
                .findings(Links.air(0.0095)));
        Links.Case surface = Links.inBox(new SurfaceKind(), "coefficient", 20, "area", "100 cm²");
        assertEquals(List.of(), surface.findings(Links.air(1e-4)));
        assertEquals(List.of("caution cpu: surface of cpu is taken as stated, though no air goes by it"), surface.findings(Links.air(0)));
    }
}
