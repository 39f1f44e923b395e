package tramontane.airflow.internal;

import java.util.Optional;
import org.osgi.service.component.annotations.Component;
import tramontane.airflow.SupplySpeed;
import tramontane.analysis.SpeedLaw;

/** The speed that a part's own data give at a supply. It ranks low, so that a law that knows more of a motor comes before it. */
@Component(service = SpeedLaw.class, property = "service.ranking:Integer=-100")
public final class SupplySpeedLaw implements SpeedLaw {

    @Override
    public Optional<Double> speed(Supply supply) {
        return SupplySpeed.speed(supply);
    }

    @Override
    public Optional<Origin> origin(Supply supply) {
        return SupplySpeed.origin(supply);
    }
}
