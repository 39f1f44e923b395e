package tramontane.acoustics.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tramontane.acoustics.EquivalentLevels;
import tramontane.acoustics.NoiseState;
import tramontane.analysis.Finding;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Severity;
import tramontane.analysis.Trace;
import tramontane.model.Design;
import tramontane.physics.sound.Spectrum;

class EquivalentAnalysisTest {

    private static NoiseState heard(double level) {
        return new NoiseState(List.of(), List.of(), List.of(), List.of(new NoiseState.PositionNoise("ear", List.of(), Spectrum.SILENCE,
                Spectrum.SILENCE, List.of(), level, level - 2, level + 3, 0)));
    }

    private static Design design(String mission) {
        return Movers.read("{'format': 1, 'airPath': {'bays': [], 'passages': []}, 'conditions': [{'id': 'day'}, {'id': 'night'}], 'mission': ["
                + mission + "]}");
    }

    private static Result<EquivalentLevels> run(Design design, Map<String, NoiseState> states, List<Trace.Step> steps) {
        return new EquivalentAnalysis().run(new Given(design, Optional.empty(), states), Run.alone(Trace.into(steps)));
    }

    /** L_eq = 10 lg((2 · 10^6 + 1 · 10^5)/3) by hand: 58.4510 dB. */
    @Test
    void powersAreMeanedOverTime() {
        Map<String, NoiseState> states = new LinkedHashMap<>();
        states.put("day", heard(60));
        states.put("night", heard(50));
        List<Trace.Step> steps = new ArrayList<>();
        Result<EquivalentLevels> result = run(design("{'condition': 'day', 'timePerYear': '4000 h'}, {'condition': 'night', 'timePerYear': '2000 h'}"),
                states, steps);
        assertEquals(58.4510, result.figures().getFirst().value(), 1e-4);
        assertEquals(58.4510 - 2, result.figures().getFirst().lower().getAsDouble(), 1e-4);
        assertEquals(58.4510 + 3, result.figures().getFirst().upper().getAsDouble(), 1e-4);
        assertEquals("acoustics.level.equivalent", steps.getFirst().figure());
        assertEquals(58.4510, steps.getFirst().value(), 1e-4);
        assertEquals(3, result.overviews().getFirst().table().rows().size());
    }

    @Test
    void silenceCountsAsNoPower() {
        Map<String, NoiseState> states = new LinkedHashMap<>();
        states.put("day", heard(60));
        states.put("night", heard(Double.NEGATIVE_INFINITY));
        Result<EquivalentLevels> result = run(design("{'condition': 'day', 'timePerYear': '1000 h'}, {'condition': 'night', 'timePerYear': '1000 h'}"),
                states, new ArrayList<>());
        assertEquals(60 - 3.0103, result.figures().getFirst().value(), 1e-4);
        states.put("day", heard(Double.NEGATIVE_INFINITY));
        assertEquals(0, run(design("{'condition': 'day', 'timePerYear': '1000 h'}"), states, new ArrayList<>()).figures().getFirst().value());
    }

    @Test
    void withoutAMissionOrWithoutLevelsNothingIsSaid() {
        Map<String, NoiseState> states = Map.of("day", heard(60));
        assertEquals(List.of(), run(design(""), states, new ArrayList<>()).figures());
        assertEquals(List.of(), run(design("{'condition': 'day', 'timePerYear': '1000 h'}"), Map.of("day", NoiseState.NONE), new ArrayList<>()).figures());
        List<Finding> findings = run(design("{'condition': 'day', 'timePerYear': '1000 h'}, {'condition': 'night', 'timePerYear': '1000 h'}"), states,
                new ArrayList<>()).findings();
        assertTrue(findings.getFirst().severity() == Severity.NOT_JUDGED && findings.getFirst().message().toString().contains("night"));
    }
}
