package tramontane.acoustics.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tramontane.acoustics.internal.Movers.noise;
import static tramontane.acoustics.internal.Movers.part;
import static tramontane.acoustics.internal.Movers.problems;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.acoustics.MoverNoise;
import tramontane.analysis.Sections;
import tramontane.model.Problem;

class MoverNoiseSectionTest {

    @Test
    void oneLevelIsAMeasurementAtFreeDelivery() {
        MoverNoise noise = noise(part("'soundPower': '42 dB', 'speed': '2700 rpm', 'at': 'free delivery'"));
        MoverNoise.Measurement only = noise.measurements().getFirst();
        assertEquals(Optional.of(42.0), only.level());
        assertEquals(2700 * Math.PI / 30, only.speed().orElseThrow(), 1e-9);
        assertEquals(MoverNoise.Place.FREE_DELIVERY, only.place());
        assertEquals(1.2, only.density());
        assertEquals(3, only.tolerance());
        assertTrue(only.distance().isEmpty());
        assertEquals(50, noise.exponent());
    }

    @Test
    void belsAreTenDecibels() {
        assertEquals(Optional.of(55.0), noise(part("'soundPower': '5.5 B'")).measurements().getFirst().level());
    }

    @Test
    void pointsTakeFromAboveWhatTheyDoNotSay() {
        MoverNoise noise = noise(part("'distance': '2 m', 'field': 'half-space', 'tolerance': '1.5 dB', 'density': '1.1 kg/m³', 'lowestOctave': '125 Hz',"
                + " 'points': [{'soundPressure': '30 dB', 'flow': '0.01 m³/s'}, {'octaves': '40 41 dB', 'distance': '1 m', 'density': '1.2 kg/m³'},"
                + " {'soundPower': '45 dB'}]"));
        MoverNoise.Measurement first = noise.measurements().getFirst();
        assertEquals(new MoverNoise.Distance(2, Optional.of(MoverNoise.Field.HALF_SPACE)), first.distance().orElseThrow());
        assertEquals(1.5, first.tolerance());
        assertEquals(1.1, first.density());
        MoverNoise.Measurement second = noise.measurements().get(1);
        assertEquals(1, second.distance().orElseThrow().metres());
        assertEquals(2, second.first());
        assertEquals(1.2, second.density());
        assertTrue(noise.measurements().get(2).distance().isEmpty(), "a sound power level has no distance");
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "'soundPower': '42 dB', 'speed': '2700 rpm', 'blades': 7, 'exponent': 55",
        "'soundPressure': '42 dB', 'distance': '1.5 m', 'field': 'free field', 'octaves': '40 41 42 dB', 'lowestOctave': '125 Hz', 'tolerance': '2 dB'",
        "'thirds': '40 41 42 dB', 'lowestThird': '315 Hz', 'tones': [{'order': 7, 'level': '41 dB'}, {'frequency': '100 Hz', 'level': '20 dB', 'fixed': true}]",
        "'points': [{'soundPower': '42 dB', 'speed': '2700 rpm', 'flow': '0.01 m³/s'}, {'soundPower': '40 dB', 'at': 'best point'}]"})
    void whatIsWrittenReadsBack(String written) {
        MoverNoise noise = noise(part(written));
        List<Problem> problems = new ArrayList<>();
        MoverNoise again = new MoverNoiseSection().decode(Sections.read(new MoverNoiseSection(), new MoverNoiseSection().encode(noise), "", problems)
                .orElseThrow());
        assertEquals(List.of(), problems);
        assertEquals(noise, again);
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "'soundPower': '42 dB', 'soundPressure': '30 dB' | stands beside a sound power level",
        "'octaves': '42 43 dB', 'thirds': '30 31 dB' | stand beside octaves",
        "'octaves': '40 40 40 40 40 40 40 40 40 40 40 dB' | noise.octaves: has 11 values from the octave of"
                + " 63 Hz, beyond that of 16000 Hz; expected at most 9",
        "'thirds': '40 dB', 'lowestThird': '5 Hz' | noise.lowestThird: is no middle frequency of a third-octave; expected one of 25, 31.5",
        "'octaves': '40 41 dB', 'lowestOctave': '100 Hz' | noise.lowestOctave: is no middle frequency of an octave; expected one of 31.5, 63",
        "'octaves': '40 41 dB', 'lowestOctave': '0.001 Hz' | noise.lowestOctave: is no middle frequency",
        "'points': [{'octaves': '40 dB', 'lowestOctave': '100 Hz'}] | noise.points[0].lowestOctave: is no middle frequency",
        "'lowestOctave': '100 Hz', 'points': [{'octaves': '40 dB'}] | noise.lowestOctave: is no middle frequency",
        "'octaves': '40 41 dB(A)', 'bandWeighting': 'none' | noise.octaves: are written in dB(A), but bandWeighting is none",
        "'thirds': ['40 dB(A)', '41 dB'] | noise.thirds: are written in dB and in dB(A)",
        "'octaves': '40 41 dB', 'tones': [{'frequency': '100 Hz', 'level': '20 dBA'}] | noise.tones[0].level: is A-weighted",
        "'points': [{'soundPower': '41 dB'}, {'flow': '0.01 m³/s'}] | noise.points[1]: states no level and does not count; expected soundPower",
        "'soundPower': '42 dB', 'distance': '1 m' | which only sound pressure has",
        "'soundPower': '42 dB', 'tones': [{'level': '30 dB'}] | states neither an order nor a frequency",
        "'soundPower': '42 dB', 'tones': [{'order': 7, 'frequency': '350 Hz', 'level': '30 dB'}] | states both an order and a frequency",
        "'soundPower': '42 dB', 'tones': [{'order': 7, 'fixed': true, 'level': '30 dB'}] | which follows the speed",
        "'soundPower': '42 dB', 'tones': [{'frequency': '1000 Hz', 'level': '50 dB'}] | louder than the A-weighted level",
        "'soundPower': '42 dB', 'speed': '3000 rpm', 'tones': [{'order': 20, 'level': '50 dB'}] | louder than the A-weighted level",
        "'octaves': '45 48 46 44 42 38 33 27 dB', 'speed': '3000 rpm', 'tones': [{'order': 7, 'level': '50 dB'}] | noise.tones: has a tone of"
                + " 50.0 dB at 350 Hz, above the level of the band",
        "'octaves': '45 48 46 44 42 38 33 27 dB', 'tones': [{'frequency': '25 kHz', 'level': '20 dB'}] | noise.tones: has a tone at 25000 Hz, outside"
                + " of 25 Hz to 20 kHz, where nothing counts",
        "'soundPower': '42 dB', 'tones': [{'frequency': '0.001 Hz', 'level': '20 dB'}] | noise.tones: has a tone at 0.001 Hz, outside",
        "'soundPower': '52 dB', 'octaves': '45 48 46 44 42 38 33 27 dB' | its bands add up to 46.6 dB",
        "'octaves': '45 48 46 44 42 38 33 27 dB', 'tones': [{'frequency': '1000 Hz', 'level': '50 dB'}] | above the level of the band",
        "'soundPower': '42 dB', 'points': [{'soundPower': '41 dB'}] | stands beside measured points",
        "'points': [{'soundPower': '41 dB', 'soundPressure': '41 dB'}] | stands beside a sound power level",
        "'at': 'best point', 'points': [{'soundPower': '41 dB'}, {'soundPower': '42 dB', 'flow': '0.01 m³/s'}, {'soundPower': '40 dB'}]"
                + " | points[2]: is at the speed and flow of another point",
        "'points': [{'soundPower': '41 dB', 'flow': '36 m³/h'}, {'soundPower': '42 dB', 'flow': '0.01 m³/s'}] | points[1]: is at the speed and flow",
        "'blades': 7 | states no level",
        "'soundPower': '420 dB' | 160"})
    void mistakesAreSaid(String row) {
        String[] parts = row.split(" \\| ");
        List<String> problems = problems(part(parts[0]));
        assertTrue(problems.stream().anyMatch(problem -> problem.contains(parts[1])), problems.toString());
    }

    /** What is written wrongly is said once, and nothing untrue besides. */
    @ParameterizedTest
    @ValueSource(strings = {
        "'soundPower': '60 Hz'",
        "'soundPower': '1000 dB'",
        "'points': 5",
        "'points': [5, {'soundPower': '41 dB'}]",
        "'points': [{'soundPower': '41 dB'}, {'soundPower': '1000 dB', 'flow': '0.01 m³/s'}]",
        "'points': [{'soundPower': '41 dB', 'flow': '1 K'}, {'soundPower': '40 dB'}]",
        "'octaves': '40 40 40 40 40 40 40 40 40 40 dB', 'lowestOctave': '1 K'",
        "'octaves': '40 41 dB(A)', 'bandWeighting': 'B'",
        "'soundPower': '42 dB', 'tones': [{'order': '7 Hz', 'level': '40 dB'}]",
        "'soundPower': '42 dB', 'tones': [{'order': 7, 'level': '400 dB'}]",
        "'soundPower': '42 dB', 'tones': [5]",
        "'soundPower': '42 dB', 'tones': [{'frequency': '100 Hz'}]",
        "'soundPower': '30 dB', 'speed': '1 K', 'tones': [{'order': 20, 'level': '50 dB'}]"})
    void aMistakeIsSaidOnce(String written) {
        assertEquals(1, problems(part(written)).size(), () -> problems(part(written)).toString());
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "'octaves': '40 41 dB(A)'", "'octaves': '40 41 dBA'", "'octaves': ['40 dB(A)', '41 dB(A)']", "'octaves': '40 41 dB(A)', 'bandWeighting': 'A'",
        "'octaves': ['40 dB(A)', '41 dB'], 'bandWeighting': 'A'", "'points': [{'octaves': '40 41 dB(A)'}]"})
    void theUnitTellsTheWeighting(String written) {
        assertEquals(List.of(), problems(part(written)));
        assertEquals(noise(part("'octaves': '40 41 dB', 'bandWeighting': 'A'")).measurements(), noise(part(written)).measurements());
    }

    @Test
    void levelsInPlainDecibelsStayAsTheyAre() {
        assertEquals(List.of(40.0, 41.0), noise(part("'octaves': '40 41 dB'")).measurements().getFirst().bands());
        assertEquals(Optional.of(42.0), noise(part("'soundPower': '42 dB(A)'")).measurements().getFirst().level());
    }

    /** Tones with an order are where the stated speed puts them; of the rated one nothing is known here. */
    @Test
    void nothingIsSaidOfTonesAtASpeedThatIsNotStated() {
        assertEquals(List.of(), problems(part("'octaves': '45 48 46 44 42 38 33 27 dB', 'tones': [{'order': 7, 'level': '50 dB'}]")));
        assertEquals(List.of(), problems(part("'octaves': '45 48 46 44 42 38 33 27 dB', 'speed': '3000 rpm', 'tones': [{'order': 7, 'level': '43 dB'}]")));
    }
}
