package tramontane.physics.units;

import java.util.List;
import java.util.Optional;

/**
 * What a number is about: its name in a sentence and its SI unit.
 *
 * <p>Two kinds may share a unit and still differ, as a temperature and a temperature difference do. The constants
 * here have a table of units in {@link Units}. A kind made elsewhere with the constructor is understood as a plain
 * number in its SI unit, or a number followed by that unit.
 *
 * @param name   lower-case name that reads after "is not a", for example {@code flow}
 * @param siUnit symbol of the SI unit, {@code 1} for a number without dimension
 */
public record QuantityKind(String name, String siUnit) {

    /** Volume flow, m³/s. */
    public static final QuantityKind FLOW = new QuantityKind("flow", "m³/s");
    /** Mass flow, kg/s. */
    public static final QuantityKind MASS_FLOW = new QuantityKind("mass flow", "kg/s");
    /** Pressure or pressure difference, Pa. */
    public static final QuantityKind PRESSURE = new QuantityKind("pressure", "Pa");
    /** Absolute temperature, K. */
    public static final QuantityKind TEMPERATURE = new QuantityKind("temperature", "K");
    /** Temperature difference, K and no other unit. */
    public static final QuantityKind TEMPERATURE_DIFFERENCE = new QuantityKind("temperature difference", "K");
    /** Length, m. */
    public static final QuantityKind LENGTH = new QuantityKind("length", "m");
    /** Area, m². */
    public static final QuantityKind AREA = new QuantityKind("area", "m²");
    /** Volume, m³. */
    public static final QuantityKind VOLUME = new QuantityKind("volume", "m³");
    /** Velocity, m/s. */
    public static final QuantityKind VELOCITY = new QuantityKind("velocity", "m/s");
    /** Rotational speed, rad/s inside, shown in rpm. */
    public static final QuantityKind ROTATIONAL_SPEED = new QuantityKind("rotational speed", "rad/s");
    /** Power, W. */
    public static final QuantityKind POWER = new QuantityKind("power", "W");
    /** Energy, J. */
    public static final QuantityKind ENERGY = new QuantityKind("energy", "J");
    /** Voltage, V. */
    public static final QuantityKind VOLTAGE = new QuantityKind("voltage", "V");
    /** Electrical current, A. */
    public static final QuantityKind CURRENT = new QuantityKind("current", "A");
    /** Electrical resistance, ohm. */
    public static final QuantityKind RESISTANCE = new QuantityKind("electrical resistance", "Ω");
    /** Frequency, Hz. Not a rotational speed. */
    public static final QuantityKind FREQUENCY = new QuantityKind("frequency", "Hz");
    /** Time, s. */
    public static final QuantityKind TIME = new QuantityKind("time", "s");
    /** Mass, kg. */
    public static final QuantityKind MASS = new QuantityKind("mass", "kg");
    /** Density, kg/m³. */
    public static final QuantityKind DENSITY = new QuantityKind("density", "kg/m³");
    /** Dynamic viscosity, Pa s. */
    public static final QuantityKind VISCOSITY = new QuantityKind("viscosity", "Pa s");
    /** Ratio of two like quantities, 1; may be written in percent. */
    public static final QuantityKind FRACTION = new QuantityKind("fraction", "1");
    /** Probability, 0 to 1; what is left to 1 is shown with as many digits as the rest. */
    public static final QuantityKind PROBABILITY = new QuantityKind("probability", "1");
    /** Plane angle, rad. */
    public static final QuantityKind ANGLE = new QuantityKind("angle", "rad");
    /** Thermal resistance, K/W. */
    public static final QuantityKind THERMAL_RESISTANCE = new QuantityKind("thermal resistance", "K/W");
    /** Thermal conductivity, W/(m K). */
    public static final QuantityKind CONDUCTIVITY = new QuantityKind("conductivity", "W/(m K)");
    /** Heat transfer coefficient, W/(m² K). */
    public static final QuantityKind HEAT_TRANSFER = new QuantityKind("heat transfer coefficient", "W/(m² K)");
    /** Heat capacity of a body, J/K. */
    public static final QuantityKind HEAT_CAPACITY = new QuantityKind("heat capacity", "J/K");
    /** Sound level, dB; the figure's own name says which weighting and which reference. */
    public static final QuantityKind LEVEL = new QuantityKind("level", "dB");
    /** Torque, N m. */
    public static final QuantityKind TORQUE = new QuantityKind("torque", "N m");
    /** Force, N. */
    public static final QuantityKind FORCE = new QuantityKind("force", "N");
    /** Acceleration, m/s². */
    public static final QuantityKind ACCELERATION = new QuantityKind("acceleration", "m/s²");
    /** Activation energy of one particle, J. */
    public static final QuantityKind ACTIVATION_ENERGY = new QuantityKind("activation energy", "J");
    /** How many, 1. */
    public static final QuantityKind COUNT = new QuantityKind("count", "1");
    /** Pressure drop per flow, Pa s/m³. */
    public static final QuantityKind LINEAR_RESISTANCE = new QuantityKind("linear resistance", "Pa s/m³");
    /** Pressure drop per flow squared, Pa s²/m⁶. */
    public static final QuantityKind QUADRATIC_RESISTANCE = new QuantityKind("quadratic resistance", "Pa s²/m⁶");
    /** Coefficient without dimension, 1. */
    public static final QuantityKind NUMBER = new QuantityKind("number", "1");

    private static final List<QuantityKind> STANDARD = List.of(FLOW, MASS_FLOW, PRESSURE, TEMPERATURE,
            TEMPERATURE_DIFFERENCE, LENGTH, AREA, VOLUME, VELOCITY, ROTATIONAL_SPEED, POWER, ENERGY, VOLTAGE, CURRENT,
            RESISTANCE, FREQUENCY, TIME, MASS, DENSITY, VISCOSITY, FRACTION, PROBABILITY, ANGLE, THERMAL_RESISTANCE, CONDUCTIVITY,
            HEAT_TRANSFER, HEAT_CAPACITY, LEVEL, TORQUE, FORCE, ACCELERATION, ACTIVATION_ENERGY, COUNT, LINEAR_RESISTANCE, QUADRATIC_RESISTANCE, NUMBER);

    /** Refuses a kind without name or unit. */
    public QuantityKind {
        if (name.isBlank() || siUnit.isBlank()) {
            throw new IllegalArgumentException(
                    "a kind of quantity needs a name and a unit, got \"" + name + "\" and \"" + siUnit + "\"");
        }
    }

    /** @return the kinds that have a table of units, in a fixed order */
    public static List<QuantityKind> standard() {
        return STANDARD;
    }

    /** @param name name of a standard kind
     *  @return that kind, if there is one */
    public static Optional<QuantityKind> named(String name) {
        for (QuantityKind kind : STANDARD) {
            if (kind.name.equals(name)) {
                return Optional.of(kind);
            }
        }
        return Optional.empty();
    }

    /** @return whether the numbers of this kind carry no dimension */
    public boolean dimensionless() {
        return siUnit.equals("1");
    }

    // Written out: the generated methods of a record are linked at run time, which costs milliseconds at start.
    @Override
    public boolean equals(Object other) {
        return other instanceof QuantityKind kind && name.equals(kind.name) && siUnit.equals(kind.siUnit);
    }

    @Override
    public int hashCode() {
        return name.hashCode() * 31 + siUnit.hashCode();
    }

    @Override
    public String toString() {
        return dimensionless() ? name : name + " [" + siUnit + "]";
    }
}
