package tramontane.analysis;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * Where everything works in one condition: banks, passages, bays.
 *
 * <p>Given by the airflow analysis with every bay at outside temperature, and by a thermal analysis, where loaded, with flow,
 * temperature and speed brought into agreement. Whoever reads it need not know which.
 *
 * @param banks    the banks in the order of the design
 * @param passages all passages in the order of the design, banks among them
 * @param bays     the bays in the order of the design, {@code outside} last
 */
public record OperatingPoint(List<BankPoint> banks, List<PassageFlow> passages, List<BayState> bays) {

    public OperatingPoint {
        banks = List.copyOf(banks);
        passages = List.copyOf(passages);
        bays = List.copyOf(bays);
    }

    /** The duty point of a bank. */
    public Optional<BankPoint> bank(String id) {
        return banks.stream().filter(bank -> bank.bank().equals(id)).findFirst();
    }

    /** The same with the settings of banks. */
    public OperatingPoint withSettings(ToDoubleFunction<String> settings) {
        return new OperatingPoint(banks.stream().map(bank -> bank.withSetting(settings.applyAsDouble(bank.bank()))).toList(), passages, bays);
    }

    /** The flow through a passage. */
    public Optional<PassageFlow> passage(String id) {
        return passages.stream().filter(passage -> passage.passage().equals(id)).findFirst();
    }

    /** The state of a bay. */
    public Optional<BayState> bay(String id) {
        return bays.stream().filter(bay -> bay.bay().equals(id)).findFirst();
    }

    /**
     * The duty point of a bank.
     *
     * @param bank        the bank's id
     * @param flow        actual volume flow at its inlet, m³/s
     * @param massFlow    mass flow, kg/s
     * @param pressure    fan static pressure of the whole bank, Pa
     * @param speed       speed of the running movers, rad/s; 0 where none runs
     * @param power       electrical input of the whole bank, W, where its curves state power
     * @param temperature air temperature at its inlet, K
     * @param density     air density at its inlet, kg/m³
     * @param stable      whether the point is statically stable: the bank's curve crosses the system curve from above
     * @param movers      each mover in it, by position
     * @param setting     the speed setting that it runs at, 1 for full: that of the condition, or of its control laws
     */
    public record BankPoint(String bank, double flow, double massFlow, double pressure, double speed, OptionalDouble power,
            double temperature, double density, boolean stable, List<MoverPoint> movers, double setting) {
        public BankPoint {
            movers = List.copyOf(movers);
        }

        /** The same at a setting. */
        public BankPoint withSetting(double other) {
            return new BankPoint(bank, flow, massFlow, pressure, speed, power, temperature, density, stable, movers, other);
        }
    }

    /**
     * Where one mover works.
     *
     * @param position its position in the bank, counted from 1
     * @param running  whether it turns under power
     * @param flow     volume flow through it, m³/s; negative where air goes backwards
     * @param pressure its fan static pressure, Pa; negative where it is a resistance
     * @param speed    its speed, rad/s
     * @param power    its electrical input, W, where its curve states power
     */
    public record MoverPoint(int position, boolean running, double flow, double pressure, double speed, OptionalDouble power) {
    }

    /**
     * The flow through a passage.
     *
     * @param passage  its id
     * @param massFlow mass flow, kg/s, positive from its first to its second bay
     * @param flow     volume flow at the density of the air that enters it, m³/s
     * @param drop     drop of total pressure in the direction from its first to its second bay, Pa; negative for a bank at work
     */
    public record PassageFlow(String passage, double massFlow, double flow, double drop) {
    }

    /**
     * The air in a bay.
     *
     * @param bay         its id
     * @param pressure    pressure above the air outside, Pa
     * @param temperature temperature, K
     * @param density     density, kg/m³
     */
    public record BayState(String bay, double pressure, double temperature, double density) {
    }
}
