package tramontane.acoustics.cli.internal;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.acoustics.RecordedNoise;
import tramontane.acoustics.cli.internal.AnalyseRecording.Report;
import tramontane.acoustics.recording.Measured;
import tramontane.acoustics.recording.NoiseFromRecording;
import tramontane.cli.terminal.CsvRows;
import tramontane.cli.terminal.JsonDocument;
import tramontane.model.Value;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.ToneInNoise;
import tramontane.physics.sound.Weighting;

/** What is in a recording, for programs. */
final class RecordingJson {

    private RecordingJson() {
    }

    static String of(Report report) {
        Measured measured = report.measured();
        return JsonDocument.of(json -> {
            json.beginObject().name("format").value(1).name("name").value(measured.name()).name("coding")
                    .value(report.recording().coding().words())
                    .name("sampleRate").value(measured.sampleRate()).name("channels").value(measured.channels()).name("channel");
            if (measured.channel().isPresent()) {
                json.value(measured.channel().getAsInt() + 1);
            } else {
                json.nullValue();
            }
            json.name("duration").value(measured.duration());
            json.name("calibration").beginObject().name("known").value(measured.calibration().absolute()).name("words")
                    .value(measured.calibration().words())
                    .name("fullScaleSine").value(measured.calibration().fullScaleSine()).name("unit").value(measured.calibration().unit())
                    .endObject();
            number(json, "levelA", measured.levelA());
            number(json, "levelC", measured.levelC());
            number(json, "levelZ", measured.level());
            number(json, "fastA", measured.fastA());
            number(json, "peak", measured.peak());
            json.name("clipped").value(measured.clipped());
            json.name("octaves").beginArray();
            for (int octave = 0; octave < Bands.OCTAVES; octave++) {
                if (measured.octave(octave).isPresent()) {
                    json.beginObject().name("octave").value(Bands.nominalOctave(octave));
                    number(json, "level", measured.octave(octave).getAsDouble());
                    number(json, "deviation", chance(measured.octave(octave).getAsDouble(), RecordingText.deviation(measured, octave)));
                    json.endObject();
                }
            }
            json.endArray().name("thirds").beginArray();
            for (Measured.Band band : measured.bands()) {
                third(json, report, band);
            }
            json.endArray().name("tones").beginArray();
            for (ToneInNoise.Prominence tone : measured.tones()) {
                json.beginObject().name("frequency").value(tone.frequency());
                number(json, "level", tone.level());
                number(json, "toNoise", tone.toneToNoise());
                number(json, "prominence", tone.prominenceRatio());
                json.name("together").value(tone.together()).name("audible").value(measured.audible(tone)).name("prominent")
                        .value(measured.prominent(tone)).endObject();
            }
            json.endArray();
            if (report.part().isPresent()) {
                part(json, report.noise().orElseThrow(), report.part().get());
            }
            json.name("cautions").beginArray();
            for (String caution : report.cautions()) {
                json.value(caution);
            }
            json.endArray().endObject();
        });
    }

    private static void third(JsonWriter json, Report report, Measured.Band band) throws IOException {
        json.beginObject().name("third").value(Bands.nominal(band.third()));
        number(json, "level", band.level());
        number(json, "deviation", chance(band.level(), band.deviation()));
        if (report.background().isPresent()) {
            NoiseFromRecording.Band without = without(report, band).orElseThrow();
            number(json, "background", RecordingText.level(report.background().get(), band.third()));
            number(json, "without", without.level());
            json.name("atMost").value(without.upperBound());
        }
        json.endObject();
    }

    /** Silence has no chance in it. */
    private static double chance(double level, double deviation) {
        return Double.isFinite(level) ? deviation : Double.NaN;
    }

    private static Optional<NoiseFromRecording.Band> without(Report report, Measured.Band band) {
        return report.noise().orElseThrow().bands().stream().filter(each -> each.third() == band.third()).findFirst();
    }

    private static void part(JsonWriter json, NoiseFromRecording noise, RecordedNoise part) throws IOException {
        json.name("part").beginObject().name("distance").value(noise.distance()).name("speed").value(noise.speed());
        number(json, "pressureLevelA", noise.levelA());
        number(json, "powerLevelA", noise.power().level(Weighting.A));
        json.name("section");
        write(json, part.section().orElseThrow());
        json.endObject();
    }

    private static void write(JsonWriter json, Value value) throws IOException {
        switch (value) {
            case Value.Text text -> json.value(text.text());
            case Value.Num number -> json.jsonValue(number.literal());
            case Value.Flag flag -> json.value(flag.on());
            case Value.Nothing nothing -> json.nullValue();
            case Value.Items items -> {
                json.beginArray();
                for (Value each : items.values()) {
                    write(json, each);
                }
                json.endArray();
            }
            case Value.Tree tree -> {
                json.beginObject();
                for (Map.Entry<String, Value> each : tree.members().entrySet()) {
                    json.name(each.getKey());
                    write(json, each.getValue());
                }
                json.endObject();
            }
        }
    }

    private static void number(JsonWriter json, String name, double value) throws IOException {
        json.name(name);
        JsonDocument.number(json, value);
    }

    /** The third-octaves as a table. */
    static String csv(Report report) {
        String unit = " [" + report.measured().calibration().unit() + "]";
        List<String> head = new ArrayList<>(List.of("third [Hz]", "level" + unit, "deviation [dB]"));
        if (report.background().isPresent()) {
            head.addAll(List.of("background" + unit, "without background" + unit, "at most"));
        }
        CsvRows rows = new CsvRows().row(head.toArray(String[]::new));
        for (Measured.Band band : report.measured().bands()) {
            List<String> row = new ArrayList<>(List.of(Double.toString(Bands.nominal(band.third())), number(band.level()),
                    number(chance(band.level(), band.deviation()))));
            if (report.background().isPresent()) {
                NoiseFromRecording.Band without = without(report, band).orElseThrow();
                row.addAll(List.of(number(RecordingText.level(report.background().get(), band.third())), number(without.level()),
                        Boolean.toString(without.upperBound())));
            }
            rows.row(row.toArray(String[]::new));
        }
        return rows.toString();
    }

    private static String number(double value) {
        return RecordingText.finite(value).map(finite -> Double.toString(Math.rint(1000 * finite) / 1000)).orElse("");
    }
}
