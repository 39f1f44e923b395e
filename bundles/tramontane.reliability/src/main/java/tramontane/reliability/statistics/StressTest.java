package tramontane.reliability.statistics;

import java.util.OptionalDouble;

/**
 * A life test at one stress.
 *
 * @param temperature at which the units ran, in kelvin
 * @param speed       at which they ran, in any unit that is the same for all tests, where it is known
 * @param data        what was seen
 */
public record StressTest(double temperature, OptionalDouble speed, LifeData data) {

    /** Refuses temperatures and speeds that are not above zero. */
    public StressTest {
        Requires.positive("temperature", temperature);
        if (speed.isPresent()) {
            Requires.positive("speed", speed.getAsDouble());
        }
    }

    /** A test at a temperature in kelvin. */
    public static StressTest at(double temperature, LifeData data) {
        return new StressTest(temperature, OptionalDouble.empty(), data);
    }

    /** A test at a temperature in kelvin and a speed. */
    public static StressTest at(double temperature, double speed, LifeData data) {
        return new StressTest(temperature, OptionalDouble.of(speed), data);
    }
}
