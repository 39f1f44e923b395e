package tramontane.selection;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.analysis.Better;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Severity;
import tramontane.analysis.Verdict;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

class SpareTest {

    /** 1 % of a limit, and half a kelvin, is where "just met" ends; a limit of zero has no share. */
    @ParameterizedTest
    @CsvSource({"flow, 0.10, 0.112, 12.0 % to spare", "flow, 0.10, 0.1009, just met", "flow, 0.10, 0.1011, 1.10 % to spare", "flow, 0.10, 0.09, 10.0 % off",
            "temperature, 300, 303.1, 3.10 K to spare", "temperature, 300, 300.4, just met", "temperature, 300, 300.6, 0.600 K to spare",
            "power, 0, 2, 2.00 W to spare", "fraction, 0, 0.005, 0.500 % to spare"})
    void theMarginIsSaidAsPeopleCompareIt(String kind, double limit, double value, String words) {
        FigureKind figure = new FigureKind("x", "x", QuantityKind.named(kind).orElseThrow(), Better.HIGHER, "");
        Requirement requirement = new Requirement("x", "", Optional.of(Quantity.of(limit)), Optional.empty(), List.of(), Value.Tree.EMPTY);
        assertEquals(words, Spare.words(new Verdict(requirement, "nominal", Severity.MET, Optional.of(Figure.of(figure, "fans", value)), value - limit, ""))
                .in(UnitSystem.METRIC));
    }
}
