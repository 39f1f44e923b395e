package tramontane.thermal.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import tramontane.analysis.LinkKind;
import tramontane.thermal.PartState;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalState;

/**
 * What would cool a part most.
 *
 * @param part  the part
 * @param gains each change in words with the kelvin that it gains, the largest first
 */
record Improvements(PartState part, List<Gain> gains) {

    /** Relative change that is tried. */
    static final double CHANGE = 0.1;

    /** One change. */
    record Gain(String change, double kelvin) {
    }

    static Improvements of(ThermalModel model, ThermalState state, PartState part, BooleanSupplier stop) {
        List<Gain> gains = new ArrayList<>();
        if (state.point().banks().stream().anyMatch(bank -> bank.speed() > 0)) {
            Optional<ThermalState> faster = model.at(state.drive().faster(1 + CHANGE), Optional.of(state), stop).state();
            faster.flatMap(there -> there.part(part.source())).filter(there -> there.junction().isPresent())
                    .ifPresent(there -> gains.add(new Gain("movers 10 % faster", part.junction().orElseThrow()
                            - there.junction().getAsDouble())));
        }
        Map<LinkKind.Step, Double> steps = new LinkedHashMap<>();
        part.links().forEach(link -> steps.merge(link.step(), link.rise(), Double::sum));
        steps.forEach((step, rise) -> gains.add(new Gain("10 % less resistance " + switch (step) {
            case PACKAGE -> "from junction to case";
            case INTERFACE -> "of the interface";
            case SPREADING -> "of spreading";
            case SURFACE -> "from surface to air";
        }, CHANGE * rise)));
        gains.sort(Comparator.comparingDouble(Gain::kelvin).reversed());
        return new Improvements(part, List.copyOf(gains));
    }
}
