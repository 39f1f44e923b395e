package tramontane.physics.control;

import java.util.ArrayList;
import java.util.List;
import tramontane.physics.RootSearch;

/**
 * A control loop near an operating point, opened: L(jω) = -gain · G(jω) · Π 1/(1 + jωτᵢ) · e^(-jωT). The minus is that of a plant
 * that gets colder by more speed; with a gain above zero the loop then counteracts.
 *
 * <p>The plant must be stable by itself. A law that is asked every Δ seconds and holds its setting in between acts about as a further
 * dead time Δ/2, as long as Δ is short against the swing (K. J. Åström, B. Wittenmark, Computer-Controlled Systems, ch. 8, from
 * memory).
 *
 * <p>Found on a logarithmic grid of 40 frequencies a decade, refined where phase or size move by more than 0.2 (rad, e-folds) from one
 * to the next, from 1 % of the slowest to a hundred times the fastest and on to the size of one; responses below 1e-13 of the largest
 * count as none. A pair of a resonance and its opposite narrower than the grid may be missed; heated bodies have none.
 *
 * @param plant    from setting to sensed temperature, K
 * @param gain     slope of the law, setting per kelvin
 * @param lags     time constants τᵢ of sensor, fan and others, s; zero is none
 * @param deadTime T, s
 */
public record ControlLoop(StateSpace plant, double gain, List<Double> lags, double deadTime) {

    private static final int PER_DECADE = 40;
    private static final int FURTHER = 20;
    private static final double LARGEST_MOVE = 0.2;
    private static final double NONE = 1e-13;
    private static final int MOST_HALVINGS = 40;
    /** Crossovers searched one by one between two neighbours; of more, the largest are known from the ends. */
    private static final int MOST_LEVELS = 16;

    /** Refuses numbers that are none and times below zero. */
    public ControlLoop {
        Inputs.finite("gain", gain);
        Inputs.notNegative("dead time", deadTime);
        lags = List.copyOf(lags);
        for (double lag : lags) {
            Inputs.notNegative("lag", lag);
        }
    }

    /** A place of the grid: response without dead time by the logarithm of its size and its phase, followed from standstill. */
    private record Place(double omega, double size, double phase) {
    }

    /** Where the response has the opposite sign. */
    private record Crossover(double omega, double size) {
    }

    /**
     * What goes round the opened loop.
     *
     * @param omega angular frequency, rad/s, not negative
     */
    public Response at(double omega) {
        Response rational = rational(omega);
        double angle = -omega * deadTime;
        return rational.times(new Response(Math.cos(angle), Math.sin(angle)));
    }

    /** Room of gain and phase. */
    public Margins margins() {
        double atRest = rational(0).real();
        double atOnce = atOnce();
        if (gain == 0) {
            return new Margins(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.NaN, Double.NaN);
        }
        List<Place> grid = grid();
        Crossover largest = new Crossover(Double.NaN, 0);
        if (atRest < 0) {
            largest = new Crossover(0, -atRest);
        }
        // with dead time, at all high frequencies some have any sign
        double atLast = deadTime > 0 ? Math.abs(atOnce) : -atOnce;
        if (atLast > largest.size && !grid.isEmpty()) {
            largest = new Crossover(Double.POSITIVE_INFINITY, atLast);
        }
        for (int i = 1; i < grid.size(); i++) {
            largest = crossovers(grid.get(i - 1), grid.get(i), largest);
        }
        double phase = Double.POSITIVE_INFINITY;
        double at = Double.NaN;
        for (Place place : ofSizeOne(grid)) {
            double total = total(place);
            while (total >= Math.PI) {
                total -= 2 * Math.PI;
            }
            if (Math.PI + total < phase) {
                phase = Math.PI + total;
                at = place.omega;
            }
        }
        return new Margins(1 / largest.size, phase, largest.omega, at);
    }

    /**
     * Whether the closed loop is stable, by Nyquist's criterion: the response goes round -1 as often one way as the other. That is so
     * where the gain margin is above one; below one, it may still be so for a loop that would hunt with less gain too.
     */
    public boolean closedLoopStable() {
        double atRest = rational(0).real();
        double atOnce = atOnce();
        if (atRest <= -1 || (deadTime > 0 ? Math.abs(atOnce) >= 1 : atOnce <= -1)) {
            return false;
        }
        if (gain == 0) {
            return true;
        }
        List<Place> grid = grid();
        if (grid.isEmpty()) {
            return true;
        }
        long rounds = 0;
        boolean large = Math.abs(atRest) > 1;
        long level = level(grid.get(0).phase);
        for (Place place : ofSizeOne(grid)) {
            double total = total(place);
            if (large) {
                rounds += level(total) - level;
            }
            level = level(total);
            large = !large;
        }
        if (large) {
            rounds += level(total(grid.get(grid.size() - 1))) - level;
        }
        return rounds == 0;
    }

    /** Half turns past the negative real axis. */
    private static long level(double phase) {
        return (long) Math.floor((phase + Math.PI) / (2 * Math.PI));
    }

    private Response rational(double omega) {
        Response response = plant.at(omega).times(-gain);
        for (double lag : lags) {
            if (lag > 0) {
                response = response.times(Response.lag(omega, lag));
            }
        }
        return response;
    }

    /** The limit at high frequencies, without dead time. */
    private double atOnce() {
        for (double lag : lags) {
            if (lag > 0) {
                return 0;
            }
        }
        return -gain * plant.directGain();
    }

    private double total(Place place) {
        return place.phase - place.omega * deadTime;
    }

    /** From standstill upwards; empty where nothing depends on frequency. */
    private List<Place> grid() {
        double slow = Math.max(plant.slowest(), deadTime);
        double fast = plant.size() > 0 ? 1 / plant.fastest() : 0;
        fast = deadTime > 0 ? Math.max(fast, 0.1 / deadTime) : fast;
        for (double lag : lags) {
            slow = Math.max(slow, lag);
            fast = lag > 0 ? Math.max(fast, 1 / lag) : fast;
        }
        List<Place> grid = new ArrayList<>();
        if (!(slow > 0)) {
            return grid;
        }
        Response rest = rational(0);
        double low = 0.01 / slow;
        int steps = (int) Math.ceil(Math.log10(100 * fast / low) * PER_DECADE);
        double largest = Math.abs(rest.real());
        // a response of no size at rest has no phase; it gets that of the first frequency
        Response first = rational(low);
        double start = largest > 0 ? rest.real() < 0 ? -Math.PI : 0 : first.phase();
        Place last = new Place(0, Math.log(largest > 0 ? largest : first.magnitude()), start);
        grid.add(last);
        // on to where the size is one, as far as it falls
        int most = atOnce() == 0 ? steps + FURTHER * PER_DECADE : steps;
        for (int i = 0; i <= steps || i <= most && last.size > 0; i++) {
            Place next = follow(last, low * Math.pow(10, (double) i / PER_DECADE));
            refine(grid, last, next, 0);
            last = grid.get(grid.size() - 1);
            largest = Math.max(largest, Math.exp(next.size));
            if (!(Math.exp(next.size) > NONE * largest)) {
                break;
            }
        }
        return grid;
    }

    private Place follow(Place last, double omega) {
        Response response = rational(omega);
        return new Place(omega, Math.log(response.magnitude()),
                last.phase + Math.IEEEremainder(response.phase() - last.phase, 2 * Math.PI));
    }

    /** Adds what lies between, and {@code next}. */
    private void refine(List<Place> grid, Place last, Place next, int halvings) {
        boolean apart = Math.abs(next.phase - last.phase) > LARGEST_MOVE || Math.abs(next.size - last.size) > LARGEST_MOVE;
        if (apart && halvings < MOST_HALVINGS && next.size > Double.NEGATIVE_INFINITY) {
            Place between = follow(last, 0.5 * (last.omega + next.omega));
            refine(grid, last, between, halvings + 1);
            refine(grid, grid.get(grid.size() - 1), follow(between, next.omega), halvings + 1);
        } else {
            grid.add(next);
        }
    }

    /** The larger of what is known and what lies between two neighbours. */
    private Crossover crossovers(Place a, Place b, Crossover known) {
        double from = total(a);
        double to = total(b);
        double top = Math.exp(Math.max(a.size, b.size) + 0.5 * LARGEST_MOVE);
        long low = level(Math.min(from, to));
        long high = level(Math.max(from, to));
        if (low == high || !(top > known.size)) {
            return known;
        }
        Crossover largest = known;
        long levels = high - low;
        for (long k = 0; k < levels; k++) {
            // of many, those next to the ends
            if (levels > MOST_LEVELS && k == MOST_LEVELS / 2) {
                k = levels - MOST_LEVELS / 2;
            }
            double level = (2 * (low + 1 + k) - 1) * Math.PI;
            double omega = RootSearch.between(x -> total(follow(a, x)) - level, a.omega, b.omega, from - level, to - level,
                    1e-14 * b.omega, 1e-14 * Math.max(1, Math.abs(level))).at();
            double size = rational(omega).magnitude();
            if (size > largest.size) {
                largest = new Crossover(omega, size);
            }
        }
        return largest;
    }

    /** All places of the size one, from low to high frequencies. */
    private List<Place> ofSizeOne(List<Place> grid) {
        List<Place> places = new ArrayList<>();
        for (int i = 1; i < grid.size(); i++) {
            Place a = grid.get(i - 1);
            Place b = grid.get(i);
            if (a.size > 0 != b.size > 0) {
                double omega = RootSearch.between(x -> follow(a, x).size, a.omega, b.omega, a.size, b.size, 1e-14 * b.omega, 1e-14).at();
                places.add(follow(a, omega));
            }
        }
        return places;
    }
}
