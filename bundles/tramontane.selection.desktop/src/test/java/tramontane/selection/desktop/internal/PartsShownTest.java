package tramontane.selection.desktop.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.catalogue.Catalogue;
import tramontane.physics.units.UnitSystem;

class PartsShownTest {

    private final List<PartsShown> shown = new ArrayList<>();
    private final CataloguePresenter presenter = new CataloguePresenter(new AtOnce(), shown::add);

    private List<String> ids() {
        return presenter.state().parts().stream().map(presenter.state().catalogue().orElseThrow()::id).toList();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"''|id|Garbin 40, Garbin 92, Garbin 120, Suvel 120|4 parts", "''|price|Garbin 40, Garbin 92, Suvel 120, Garbin 120|4 parts",
            "suvel|id|Suvel 120|1 of 4 parts", "width > 100 mm|width|Garbin 120, Suvel 120|2 of 4 parts", "axial garbin|width|Garbin 40, Garbin 92, Garbin 120|3 of 4 parts"})
    void partsAreFoundAndSorted(String find, String column, String ids, String words) {
        presenter.catalogue(Given.catalogue());
        presenter.find(find);
        if (!column.equals("id")) {
            presenter.sort(column);
        } else {
            presenter.sort("id");
            presenter.sort("id");
        }
        assertEquals(ids, String.join(", ", ids()));
        assertEquals(words, presenter.state().words());
    }

    @Test
    void theSheetSaysWhereFiguresComeFromAndWhetherTheyCanBeTrue() {
        Catalogue shipped = Given.shipped();
        presenter.catalogue(shipped);
        presenter.select(Optional.of("LW-N1-140x51-48H"));
        Explanation sheet = presenter.state().sheet();
        assertEquals(List.of("Plausibility", "What it says", "Curve 1", "Curve 2", "Curve 3", "Where it stands"), sheet.sections().stream().map(Section::heading).toList());
        String text = TextBlocks.of(sheet.title(), sheet.sections(), UnitSystem.METRIC).text();
        assertTrue(text.contains("Its figures can be true together."), text);
        assertTrue(text.lines().anyMatch(line -> line.startsWith("free delivery") && line.endsWith("curves")), text);
        assertTrue(text.lines().anyMatch(line -> line.startsWith("frame width") && line.contains("140 mm")), text);
    }

    @Test
    void whatIsImpossibleIsSaid() {
        Catalogue odd = Catalogue.of(List.of(Given.part("Garbin 9", "Garbin", 0.009, Optional.of(1.0))), Given.ENGINE.sectionTypes());
        presenter.catalogue(odd);
        presenter.select(Optional.of("Garbin 9"));
        String said = presenter.state().sheet().sections().getFirst().sentences().getFirst().in(UnitSystem.METRIC);
        assertTrue(said.startsWith("error: ") || said.startsWith("caution: "), said);
    }

    @Test
    void emptyOnesSayWhatWouldFillThem() {
        assertEquals("Reading the catalogue", presenter.state().empty().orElseThrow().title());
        presenter.catalogue(Catalogue.of(List.of(), Given.ENGINE.sectionTypes()));
        assertEquals(Candidates.Action.OPEN_FOLDER, presenter.state().empty().orElseThrow().action());
        presenter.catalogue(Given.catalogue());
        presenter.find("nothing like it");
        assertEquals(Candidates.Action.CLEAR_FIND, presenter.state().empty().orElseThrow().action());
    }

    @Test
    void theSheetFollowsTheFile() {
        presenter.catalogue(Given.catalogue());
        presenter.select(Optional.of("Garbin 40"));
        presenter.catalogue(Catalogue.of(List.of(), Given.ENGINE.sectionTypes()));
        assertEquals(Explanation.NONE, presenter.state().sheet());
    }

    @Test
    void textIsSetInStretchesThatLieWithinIt() {
        presenter.catalogue(Given.shipped());
        presenter.select(Optional.of("LW-N1-140x51-48H"));
        TextBlocks blocks = TextBlocks.of(presenter.state().sheet().title(), presenter.state().sheet().sections(), UnitSystem.METRIC);
        int end = 0;
        for (TextBlocks.Style style : blocks.styles()) {
            assertTrue(style.from() >= end && style.from() + style.length() <= blocks.text().length(), style.toString());
            assertEquals(-1, blocks.text().substring(style.from(), style.from() + style.length()).indexOf('\n'), style.toString());
            end = style.from() + style.length();
        }
        List<Integer> widths = blocks.styles().stream().filter(style -> style.kind() == TextBlocks.Kind.HEAD).map(TextBlocks.Style::length).toList();
        assertEquals(4, widths.size(), "the fields and three curves");
    }
}
