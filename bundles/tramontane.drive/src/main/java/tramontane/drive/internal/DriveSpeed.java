package tramontane.drive.internal;

import java.util.Optional;
import java.util.Set;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.SpeedLaw;
import tramontane.drive.Feeding;

/** The speed of movers whose part says how it is driven. */
@Component(service = SpeedLaw.class)
public final class DriveSpeed implements SpeedLaw {

    private final Decoding decoding = new Decoding();

    @Override
    public Set<String> sections() {
        return Set.of(MoverDriveSection.NAME);
    }

    @Override
    public Optional<Double> speed(Supply supply) {
        return FedSpeed.of(supply, decoding).map(Feeding::speed);
    }

    @Override
    public Optional<Origin> origin(Supply supply) {
        return FedSpeed.origin(supply, decoding);
    }
}
