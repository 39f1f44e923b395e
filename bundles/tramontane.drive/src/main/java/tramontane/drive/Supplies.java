package tramontane.drive;

import java.util.List;
import java.util.Optional;

/**
 * What feeds the movers of a design, and what that costs.
 *
 * @param list     the supplies
 * @param price    price of a kilowatt-hour, in the currency
 * @param currency what prices are in
 */
public record Supplies(List<Source> list, Optional<Double> price, String currency) {

    /** Of which nothing is said. */
    public static final Supplies NONE = new Supplies(List.of(), Optional.empty(), "");

    public Supplies {
        list = List.copyOf(list);
    }

    /** The supply of that name. */
    public Optional<Source> source(String id) {
        return list.stream().filter(source -> source.id().equals(id)).findFirst();
    }

    /**
     * One supply.
     *
     * @param id         its name
     * @param current    kind of current
     * @param voltage    nominal voltage, V; below zero where the positive pole is earthed
     * @param below      how far it may be below that, as a share
     * @param above      how far it may be above that, as a share
     * @param frequency  Hz
     * @param most       current that it gives for long, A
     * @param peak       current that it gives for a short time, A
     * @param peakTime   for how long, s
     * @param efficiency what it gives over what it takes from the mains
     * @param fuse       the fuse before all movers; empty where nothing is said
     * @param place      bay in whose air it stands; outside where not given
     * @param derateFrom temperature of that air from which it gives less, K
     * @param derate     how much less, as a share per kelvin
     */
    public record Source(String id, Current current, double voltage, double below, double above, Optional<Double> frequency,
            Optional<Double> most, Optional<Double> peak, Optional<Double> peakTime, double efficiency, Optional<Fuse> fuse,
            Optional<String> place, Optional<Double> derateFrom, double derate) {
    }

    /**
     * A fuse.
     *
     * @param rated   rated current, A
     * @param slow    whether it is time-lag
     * @param melting melting integral, A² s
     */
    public record Fuse(double rated, boolean slow, Optional<Double> melting) {
    }
}
