package tramontane.selection.desktop.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tramontane.model.AirMover;
import tramontane.model.AirPath;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.model.Value;
import tramontane.selection.Arrangement;
import tramontane.selection.Candidate;
import tramontane.selection.Placement;

class PuttingTest {

    private static final Design OBSERVATORY = Given.sample("observatory");
    private static final Arrangement TWO = new Arrangement(2, 1, 1, false);

    private static Candidate candidate(Design design, AirMover part) {
        Candidate any = Given.candidate(part, 2, 10, true, 0.1);
        return new Candidate(part, TWO, 0.813, any.speed(), true, any.values(), any.steps(), 0, true, any.tightest(), 0,
                Placement.of(design, "fans", part, TWO, 0.813), Optional.empty());
    }

    private static String mover(Design design, String bank) {
        return design.airPath().passage(bank).orElseThrow().parameters().text("mover").orElseThrow();
    }

    @Test
    void itIsWhatTheCommandLinePutsButForTheMoverThatNothingUsesAnyMore() {
        Candidate candidate = candidate(OBSERVATORY, Given.parts().getFirst());
        String before = mover(OBSERVATORY, "fans");
        Design with = Putting.into(OBSERVATORY, "fans", candidate);
        List<AirMover> left = candidate.design().airMovers().stream().filter(mover -> !mover.id().equals(before)).toList();
        assertEquals(candidate.design().withAirMovers(left), with);
        assertTrue(with.airMover(before).isEmpty());
        Passage bank = with.airPath().passage("fans").orElseThrow();
        assertEquals("Garbin 40", mover(with, "fans"));
        assertEquals(Optional.of("81.3 %"), bank.parameters().text("speed"));
        assertEquals(Optional.of(Value.Num.of(2)), bank.parameters().get("across"));
    }

    @Test
    void aMoverThatAnotherBankUsesStays() {
        Passage fans = OBSERVATORY.airPath().passage("fans").orElseThrow();
        List<Passage> more = new ArrayList<>(OBSERVATORY.airPath().passages());
        more.add(new Passage("spare fans", Passage.BANK, fans.from(), fans.to(), fans.parameters()));
        AirPath path = new AirPath(OBSERVATORY.airPath().bays(), more, OBSERVATORY.airPath().more());
        Design design = OBSERVATORY.withAirPath(path);
        Candidate candidate = candidate(design, Given.parts().getFirst());
        assertEquals(candidate.design(), Putting.into(design, "fans", candidate));
    }

    @Test
    void putTwiceItIsTheSame() {
        Candidate candidate = candidate(OBSERVATORY, Given.parts().getFirst());
        Design once = Putting.into(OBSERVATORY, "fans", candidate);
        assertEquals(once, Putting.into(once, "fans", candidate));
    }

    @Test
    void whatWasChangedMeanwhileStays() {
        Candidate candidate = candidate(OBSERVATORY, Given.parts().getFirst());
        assertEquals("another name", Putting.into(OBSERVATORY.withName("another name"), "fans", candidate).name());
    }

    @Test
    void aBankThatIsGoneIsRefused() {
        Candidate candidate = candidate(OBSERVATORY, Given.parts().getFirst());
        assertThrows(IllegalArgumentException.class, () -> Putting.into(Given.duty(), "fans", candidate));
    }
}
