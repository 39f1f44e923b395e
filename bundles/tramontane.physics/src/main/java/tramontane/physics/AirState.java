package tramontane.physics;

/**
 * Air at one place: what density and the other properties follow from.
 *
 * @param pressure    absolute pressure, Pa
 * @param temperature K
 * @param humidity    relative humidity, 0..1
 */
public record AirState(double pressure, double temperature, double humidity) {

    /** Refuses numbers that no air can have, among them a humidity at which water would boil. */
    public AirState {
        Air.vapourFraction(pressure, temperature, humidity);
    }

    /**
     * Air at an altitude: the pressure is that of the standard atmosphere, the temperature is that of the room.
     *
     * @param altitude    geometric altitude above sea level, m, about -2000 to 20000
     * @param temperature K
     * @param humidity    relative humidity, 0..1
     * @return the state
     */
    public static AirState atAltitude(double altitude, double temperature, double humidity) {
        return new AirState(Air.standardPressure(Air.geopotential(altitude)), temperature, humidity);
    }

    /**
     * The same air, no water added or lost, at another temperature and the same pressure.
     *
     * @param newTemperature K
     * @return the state; saturated if the air would be too cold for its water
     */
    public AirState heatedTo(double newTemperature) {
        double fraction = Air.vapourFraction(pressure, temperature, humidity);
        return new AirState(pressure, newTemperature, Math.min(1, Air.humidity(pressure, newTemperature, fraction)));
    }

    /** @return density, kg/m³ */
    public double density() {
        return Air.moistDensity(pressure, temperature, humidity);
    }

    /** @return dynamic viscosity, Pa s, as of dry air */
    public double viscosity() {
        return Air.viscosity(temperature);
    }

    /** @return kinematic viscosity, m²/s */
    public double kinematicViscosity() {
        return viscosity() / density();
    }

    /** @return specific heat at constant pressure per mass of moist air, J/(kg K) */
    public double specificHeat() {
        return Air.specificHeat(Air.vapourFraction(pressure, temperature, humidity));
    }

    /** @return thermal conductivity, W/(m K), as of dry air */
    public double conductivity() {
        return Air.conductivity(temperature);
    }

    /** @return Prandtl number, as of dry air */
    public double prandtl() {
        return Air.prandtl(temperature);
    }
}
