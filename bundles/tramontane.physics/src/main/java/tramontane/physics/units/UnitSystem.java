package tramontane.physics.units;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The habit of units in which numbers are shown to a reader; nothing is computed in them. One of three, of which single kinds of
 * quantity may be shown otherwise: {@code METRIC.with(FLOW, litresPerSecond)}.
 */
public final class UnitSystem {

    /** Base and derived SI units, K and m³/s. Only rotational speed is shown in rpm, as everywhere. */
    public static final UnitSystem SI = new UnitSystem("SI", 0, Map.of());
    /** The metric units of a data sheet: m³/h, Pa, °C, mm. */
    public static final UnitSystem METRIC = new UnitSystem("METRIC", 1, Map.of());
    /** The customary units of a data sheet in the United States: cfm, inH2O, °F, in. */
    public static final UnitSystem US = new UnitSystem("US", 2, Map.of());

    private final String name;
    private final int ordinal;
    private final Map<QuantityKind, Unit> chosen;

    private UnitSystem(String name, int ordinal, Map<QuantityKind, Unit> chosen) {
        this.name = name;
        this.ordinal = ordinal;
        this.chosen = chosen;
    }

    /** @return the three habits */
    public static UnitSystem[] values() {
        return new UnitSystem[] {SI, METRIC, US};
    }

    /** @return this one without what was chosen for single kinds */
    public UnitSystem base() {
        return ordinal == 0 ? SI : ordinal == 1 ? METRIC : US;
    }

    /**
     * The same but for one kind of quantity.
     *
     * @param kind kind of quantity
     * @param unit the unit to show it in
     * @return the other habit; {@link #base} where nothing differs from it any more
     * @throws IllegalArgumentException if {@link Units#of} that kind does not have the unit
     */
    public UnitSystem with(QuantityKind kind, Unit unit) {
        if (!Units.of(kind).contains(unit)) {
            throw new IllegalArgumentException("a " + kind.name() + " has no unit \"" + unit.symbol() + "\"");
        }
        Map<QuantityKind, Unit> changed = new LinkedHashMap<>(chosen);
        changed.remove(kind);
        if (!Units.display(kind, base()).equals(unit)) {
            changed.put(kind, unit);
        }
        return changed.isEmpty() ? base() : new UnitSystem(name, ordinal, Collections.unmodifiableMap(changed));
    }

    /** @return the units that differ from those of {@link #base}, by kind */
    public Map<QuantityKind, Unit> chosen() {
        return chosen;
    }

    /** @return a text that {@link #parse} understands: {@code METRIC; flow l/s; pressure mmH2O} */
    public String text() {
        StringBuilder text = new StringBuilder(name);
        chosen.forEach((kind, unit) -> text.append("; ").append(kind.name()).append(' ').append(unit.symbol()));
        return text.toString().stripTrailing();
    }

    /**
     * Reads what {@link #text} gave.
     *
     * @param text the text; what is not understood of units of single kinds is left out
     * @return the habit; empty where it names none of the three
     */
    public static Optional<UnitSystem> parse(String text) {
        String[] parts = text.split(";");
        for (UnitSystem each : values()) {
            if (each.name.equals(parts[0].strip())) {
                UnitSystem system = each;
                for (int i = 1; i < parts.length; i++) {
                    system = system.with(parts[i].strip());
                }
                return Optional.of(system);
            }
        }
        return Optional.empty();
    }

    private UnitSystem with(String kindAndUnit) {
        for (QuantityKind kind : QuantityKind.standard()) {
            for (Unit unit : Units.of(kind)) {
                if (kindAndUnit.equals((kind.name() + " " + unit.symbol()).stripTrailing())) {
                    return with(kind, unit);
                }
            }
        }
        return this;
    }

    /** The place of the three among each other. */
    int ordinal() {
        return ordinal;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof UnitSystem system && ordinal == system.ordinal && chosen.equals(system.chosen);
    }

    @Override
    public int hashCode() {
        return 31 * ordinal + chosen.hashCode();
    }

    @Override
    public String toString() {
        return text();
    }
}
