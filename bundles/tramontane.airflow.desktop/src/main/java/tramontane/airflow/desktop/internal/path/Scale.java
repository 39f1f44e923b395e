package tramontane.airflow.desktop.internal.path;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/** From values to tints, with round ends in the units shown. */
record Scale(ColourBy by, UnitSystem units, double low, double high, double step) {

    private static final double[] STEPS = {1, 2, 2.5, 5, 10};
    private static final int TICKS = 4;

    /** A scale over all values; empty where there are none. */
    static Optional<Scale> over(List<Double> si, ColourBy by, UnitSystem units) {
        double[] shown = si.stream().mapToDouble(each -> Units.toDisplay(each, by.quantity(), units)).filter(Double::isFinite).toArray();
        if (shown.length == 0) {
            return Optional.empty();
        }
        double low = java.util.Arrays.stream(shown).min().orElseThrow();
        double high = java.util.Arrays.stream(shown).max().orElseThrow();
        double least = Math.max(by == ColourBy.PRESSURE ? 1e-3 : 1, 1e-9 * Math.max(Math.abs(low), Math.abs(high)));
        double step = step(Math.max(high - low, least) / TICKS);
        double bottom = Math.floor(low / step + 1e-9) * step;
        double top = Math.ceil(high / step - 1e-9) * step;
        return Optional.of(new Scale(by, units, bottom, Math.max(top, bottom + step), step));
    }

    private static double step(double least) {
        double power = Math.pow(10, Math.floor(Math.log10(least)));
        for (double step : STEPS) {
            if (step * power >= least * (1 - 1e-9)) {
                return step * power;
            }
        }
        return 10 * power;
    }

    /** The tint of a value. */
    OptionalDouble tint(Optional<Double> si) {
        return si.map(value -> OptionalDouble.of(Math.clamp((Units.toDisplay(value, by.quantity(), units) - low) / (high - low), 0.0, 1.0)))
                .orElse(OptionalDouble.empty());
    }

    /** The legend of this scale. */
    PathPicture.Legend legend() {
        List<PathPicture.Tick> ticks = new ArrayList<>();
        int count = (int) Math.round((high - low) / step);
        int decimals = (int) Math.clamp((long) -Math.floor(Math.log10(step) + 1e-9) + (step * Math.pow(10, -Math.floor(Math.log10(step) + 1e-9)) % 1 > 0.1 ? 1 : 0), 0L, 6L);
        for (int i = 0; i <= count; i++) {
            double value = low + i * step;
            String text = String.format(java.util.Locale.ROOT, "%." + decimals + "f", Math.abs(value) < step * 1e-6 ? 0.0 : value);
            ticks.add(new PathPicture.Tick((double) i / count, text.replace('-', '\u2212')));
        }
        return new PathPicture.Legend(by, by.title() + ", " + Units.display(by.quantity(), units).symbol(), ticks);
    }
}
