package tramontane.desktop.internal.judging;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import tramontane.model.edit.Subject;

class PlacesTest {

    private final Places places = Places.of(Samples.DESIGN);

    @Test
    void resultsNameThingsByTheirIds() {
        assertEquals(Optional.of(Subject.passage("fans")), places.subject("fans"));
        assertEquals(Optional.of(Subject.passage("fans")), places.subject("fans 2"));
        assertEquals(Optional.of(Subject.bay("rear")), places.subject("rear"));
        assertEquals(Optional.of(Subject.OUTSIDE), places.subject("outside"));
        assertEquals(Optional.empty(), places.subject(""));
        assertEquals(Optional.empty(), places.subject("fanshaft"));
    }

    @Test
    void textsNameThingsByKindAndId() {
        assertEquals(Optional.of(Subject.heatSource("cpu")), places.named("heat source cpu, condition hot"));
        assertEquals(Optional.of(Subject.passage("fans")), places.named("bank fans"));
        assertEquals(Optional.of(Subject.condition("any one failed")), places.named("drive section of condition any one failed"));
        assertEquals(Optional.empty(), places.named("condition hotter"));
        assertEquals(Optional.empty(), places.named("ISO 5801:2017"));
    }

    @Test
    void placesStandInTheOrderOfTheDesign() {
        assertTrue(places.rank("") < places.rank("front") && places.rank("front") < places.rank("grille")
                && places.rank("grille") < places.rank("fans") && places.rank("fans 2") == places.rank("fans")
                && places.rank("fans") < places.rank("cpu") && places.rank("cpu") < places.rank("nowhere"));
    }
}
