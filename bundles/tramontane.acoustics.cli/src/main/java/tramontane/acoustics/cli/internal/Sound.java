package tramontane.acoustics.cli.internal;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.osgi.framework.BundleContext;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import tramontane.analysis.Engine;
import tramontane.cli.Verb;
import tramontane.cli.terminal.Installation;
import tramontane.cli.terminal.VerbGroup;

/** Everything about recordings, and about hearing what was computed. */
@Component(service = Verb.class)
public final class Sound extends VerbGroup {

    /** Made by Declarative Services. */
    @Activate
    public Sound(BundleContext context, @Reference Engine engine) {
        this(Installation.samples(context), engine);
    }

    Sound(Optional<Path> samples, Engine engine) {
        super("sound", "Analyse recordings, listen to designs, rate levels.",
                List.of(new AnalyseRecording(samples, engine), new Listen(samples, engine), new Rate()),
                "Recordings are WAV files: PCM or floating point, of any usual sample rate.", "",
                "Examples:",
                "  tramontane sound recording fan.wav --calibrator calibrator.wav",
                "  tramontane sound listen cabinet --condition nominal --condition \"night, slow\"",
                "                          --output sounds",
                "  tramontane sound rate \"45 48 46 44 42 38 33 27 dB\"");
    }
}
