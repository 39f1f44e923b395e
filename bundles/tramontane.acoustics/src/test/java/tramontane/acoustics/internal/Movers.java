package tramontane.acoustics.internal;

import java.util.ArrayList;
import java.util.List;
import tramontane.acoustics.MoverNoise;
import tramontane.analysis.Sections;
import tramontane.model.AirMover;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.file.DesignFile;
import tramontane.model.file.Loaded;

/** Parts and designs written as files, with single quotes for double ones. */
final class Movers {

    /** A mover of 3000 rpm whose best point, by flow times pressure over power, lies at 0.03 m³/s. */
    static final String PART = "'id': 'F', 'type': 'axial', 'width': '0.12 m', 'height': '0.12 m', 'rotorDiameter': '0.11 m', 'openArea': '0.008 m²',"
            + " 'ratedSpeed': '3000 rpm', 'curves': [{'flow': '0 0.01 0.02 0.03 0.04 0.05 m³/s', 'pressure': '100 80 70 60 30 0 Pa',"
            + " 'power': '6 6 6 6 6 6 W'}]";
    static final double RATED = 3000 * Math.PI / 30;

    private Movers() {
    }

    static Design read(String json) {
        Loaded loaded = DesignFile.parse(json.replace('\'', '"'));
        List<Problem> errors = loaded.problems().stream().filter(Problem::isError).toList();
        if (!errors.isEmpty()) {
            throw new AssertionError(errors.toString());
        }
        return loaded.design().orElseThrow();
    }

    /** The part with a noise section. */
    static AirMover part(String noise) {
        return read("{'format': 1, 'airMovers': [{" + PART + ", 'sections': {'noise': {" + noise + "}}}], 'airPath': {'bays': [], 'passages': []}}")
                .airMovers().getFirst();
    }

    static MoverNoise noise(AirMover part) {
        return Sections.decode(new MoverNoiseSection(), part).orElseThrow(() -> new AssertionError(problems(part).toString()));
    }

    /** What is wrong with its noise section. */
    static List<String> problems(AirMover part) {
        List<Problem> problems = new ArrayList<>();
        Value written = part.section("noise").orElseThrow();
        Sections.read(new MoverNoiseSection(), written, "noise", problems)
                .ifPresent(values -> problems.addAll(new MoverNoiseSection().check(values, "noise")));
        return problems.stream().map(Problem::sentence).toList();
    }

    static SoundSource source(String noise) {
        AirMover part = part(noise);
        return SoundSource.of(part, noise(part)).orElseThrow();
    }
}
