package tramontane.catalogue.internal.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tramontane.catalogue.PartTable;
import tramontane.model.AirMover;
import tramontane.physics.units.UnitSystem;

/** What a table of parts looks like. */
class TableWriteTest {

    private static final List<AirMover> PARTS = Tables.read("id,maker,width,curves.flow [m³/h],curves.pressure [Pa],curves.speed [rpm],"
            + "winding.supply.current,winding.supply.voltage [V]\nA,\"=1+1, \"\"x\"\"\",92 mm,0 12 24,50 20 0,2400,DC,24\nB,-b,80 mm,0 30,9 0,1500,AC,230\n").movers();

    private static String write(List<String> fields, Optional<UnitSystem> units) {
        return PartTable.write(PARTS, fields, units, Tables.SECTIONS);
    }

    @Test
    void asWrittenAUnitOfAllStandsInTheHeading() {
        assertEquals("""
                id,maker,width [mm],curves.speed [rpm],curves.flow,curves.pressure,sections.winding.supply.current,sections.winding.supply.voltage [V]
                A,"'=1+1, ""x""\",92,2400,0 12 24 m³/h,50 20 0 Pa,DC,24
                B,'-b,80,1500,0 30 m³/h,9 0 Pa,AC,230
                """.replace("\n", "\r\n"), write(List.of(), Optional.empty()));
    }

    @Test
    void unitsOfAReaderAreUsedThroughout() {
        assertEquals("""
                id,width [mm],curves.flow [m³/h]
                A,92,0 12 24 m³/h
                B,80,0 30 m³/h
                """.replace("\n", "\r\n"), write(List.of("id", "width", "flow"), Optional.of(UnitSystem.METRIC)));
        assertEquals("""
                width [m],curves.flow [m³/s]
                0.092,0 0.00333333333333333 0.00666666666666667 m³/s
                0.08,0 0.00833333333333333 m³/s
                """.replace("\n", "\r\n"), write(List.of("width", "curves.flow"), Optional.of(UnitSystem.SI)));
    }

    @Test
    void fieldsAreChosenByPathOrLabelAndAsAWhole() {
        assertEquals("""
                width [mm],sections.winding.supply.current,sections.winding.supply.voltage [V],mass
                92,DC,24,
                80,AC,230,
                """.replace("\n", "\r\n"), write(List.of("frame width", "winding.supply", "mass"), Optional.empty()));
    }

    @Test
    void aNameThatMeansNothingIsRefusedWithASentence() {
        assertEquals("\"widht\" is no field of an air mover; expected one such as width or curves.flow (did you mean width?)",
                assertThrows(IllegalArgumentException.class, () -> write(List.of("widht"), Optional.empty())).getMessage());
        assertEquals("the field \"remark\" may mean sections.winding.remark or sections.winding.steps.remark; expected one of these",
                assertThrows(IllegalArgumentException.class, () -> write(List.of("remark"), Optional.empty())).getMessage());
    }

    @Test
    void mixedUnitsStandInTheCells() {
        List<AirMover> parts = Tables.read("id,width,flow,pressure [Pa]\nA,92 mm,0 1 cfm,2 1\nB,3.6 in,0 1 l/s,2 1\n").movers();
        assertEquals("""
                id,width,curves.flow
                A,92 mm,0 1 cfm
                B,3.6 in,0 1 l/s
                """.replace("\n", "\r\n"), PartTable.write(parts, List.of("id", "width", "curves.flow"), Optional.empty(), List.of()));
    }

    @Test
    void noPartsAreATableWithoutRows() {
        assertEquals("id,width\r\n", PartTable.write(List.of(), List.of("id", "width"), Optional.empty(), List.of()));
    }
}
