package tramontane.physics.units;

/** The habit of units in which numbers are shown to a reader; nothing is computed in them. */
public enum UnitSystem {
    /** Base and derived SI units, K and m³/s. Only rotational speed is shown in rpm, as everywhere. */
    SI,
    /** The metric units of a data sheet: m³/h, Pa, °C, mm. */
    METRIC,
    /** The customary units of a data sheet in the United States: cfm, inH2O, °F, in. */
    US
}
