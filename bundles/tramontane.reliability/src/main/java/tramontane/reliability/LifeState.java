package tramontane.reliability;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import tramontane.reliability.statistics.LifeDistribution;

/**
 * How long movers would live that worked in one condition all the time.
 *
 * @param banks   banks of whose movers something is known, in the order of the design
 * @param unknown ids of the banks of whose movers nothing is known
 */
public record LifeState(List<BankState> banks, List<String> unknown) {

    public LifeState {
        banks = List.copyOf(banks);
        unknown = List.copyOf(unknown);
    }

    /** The bank of that id. */
    public Optional<BankState> bank(String id) {
        return banks.stream().filter(bank -> bank.bank().equals(id)).findFirst();
    }

    /**
     * The movers of a bank.
     *
     * @param bank   its id
     * @param part   the id of their part
     * @param model  their life wherever they work
     * @param movers those that run, by position
     */
    public record BankState(String bank, String part, LifeModel model, List<MoverState> movers) {
        public BankState {
            movers = List.copyOf(movers);
        }

        /** The mover with the shortest life; empty where none runs. */
        public Optional<MoverState> worst() {
            return movers.stream().min((one, other) -> Double.compare(one.spread().value(lives -> lives.life(0.1)), other.spread().value(lives -> lives.life(0.1))));
        }
    }

    /**
     * A mover that runs.
     *
     * @param position    its position, counted from 1
     * @param temperature of the air at it, K
     * @param speed       rad/s
     * @param spread      its lives
     */
    public record MoverState(int position, double temperature, double speed, Spread spread) {
    }

    /**
     * Lives with what is uncertain about them.
     *
     * @param nominal by what is stated, and defaults
     * @param corners by the ends of what is uncertain, in the order of {@link LifeModel#corners}
     */
    public record Spread(DutyLife nominal, List<DutyLife> corners) {
        public Spread {
            corners = List.copyOf(corners);
        }

        /** Some number of the lives. */
        public double value(ToDoubleFunction<LifeDistribution> number) {
            return number.applyAsDouble(nominal.distribution());
        }

        /** The least it may be. */
        public double lower(ToDoubleFunction<LifeDistribution> number) {
            return Math.min(value(number), corners.stream().mapToDouble(each -> number.applyAsDouble(each.distribution())).min().orElse(Double.POSITIVE_INFINITY));
        }

        /** The most it may be. */
        public double upper(ToDoubleFunction<LifeDistribution> number) {
            return Math.max(value(number), corners.stream().mapToDouble(each -> number.applyAsDouble(each.distribution())).max().orElse(0));
        }

        /**
         * Over a mixture of duties.
         *
         * @param shares of the time at each, some above zero
         * @param at     lives at each, all of one part
         */
        public static Spread mixture(List<Double> shares, List<Spread> at) {
            List<DutyLife> corners = new ArrayList<>();
            for (int i = 0; i < at.getFirst().corners().size(); i++) {
                int corner = i;
                corners.add(DutyLife.mixture(shares, at.stream().map(each -> each.corners().get(corner)).toList()));
            }
            return new Spread(DutyLife.mixture(shares, at.stream().map(Spread::nominal).toList()), corners);
        }
    }
}
