package tramontane.thermal;

import java.util.List;
import java.util.Optional;
import tramontane.analysis.Finding;

/**
 * What a control law has to deal with at given speed settings.
 *
 * @param drive     the settings
 * @param state     where flow and temperature come to rest at them; empty where they do not
 * @param plant     the bodies as a linear system; empty where there is none
 * @param obstacles why there is none; empty where there is one, or where it was not wanted any more
 */
public record Linearization(Drive drive, Optional<ThermalState> state, Optional<LinearPlant> plant, List<Finding> obstacles) {

    public Linearization {
        obstacles = List.copyOf(obstacles);
    }
}
