package tramontane.thermal.internal;

import java.util.List;
import java.util.OptionalDouble;
import tramontane.thermal.PartState;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalState;

/** How far heat sources are from their limits. */
public final class Margins {

    private Margins() {
    }

    /**
     * The least margin of all heat sources with a limit, K: negative where it is not met, and less than any that is computed, minus
     * {@value Balancing#HIGHEST}, where nothing carries off the heat of one or of some bay. Empty where no source has a limit, or
     * what is stated of one with a limit does not tell its temperature.
     */
    public static OptionalDouble least(ThermalModel model, ThermalState state) {
        List<Parts.Part> parts = model.parts().list();
        boolean limited = false;
        boolean bare = !state.balance().unbounded().isEmpty();
        for (int k = 0; k < parts.size(); k++) {
            PartState part = state.parts().get(k);
            if (parts.get(k).source().limit().isEmpty()) {
                continue;
            }
            limited = true;
            if (part.fault().isPresent() && !uncooled(parts.get(k), part, model)) {
                return OptionalDouble.empty();
            }
            bare |= part.fault().isPresent() && part.chainHeat() > 0;
        }
        if (!limited) {
            return OptionalDouble.empty();
        }
        return bare ? OptionalDouble.of(-Balancing.HIGHEST) : Backwards.margin(model, state);
    }

    /** Whether a temperature cannot be told because nothing carries its heat off, all that is stated being there. */
    public static boolean uncooled(Parts.Part part, PartState state, ThermalModel model) {
        if (part.fault().isPresent()) {
            return false;
        }
        if (!(state.air() <= model.condition().temperature() + Balancing.HIGHEST)) {
            return true;
        }
        double beyond = 0;
        for (int i = part.chain().size() - 1; i >= 0; i--) {
            double resistance = part.chain().get(i).law().resistance(state.stream().orElseThrow(), beyond);
            if (!(resistance >= 0) || Double.isInfinite(resistance)) {
                return resistance == Double.POSITIVE_INFINITY;
            }
            beyond += resistance;
        }
        return false;
    }
}
