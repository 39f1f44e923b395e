package tramontane.drive;

import java.util.List;
import java.util.Optional;

/**
 * Control laws that hold every temperature in every condition and ask for no more speed than that takes.
 *
 * @param laws one for each law of the design that can be computed, in their order
 */
public record ComputedLaws(List<Law> laws) {

    public ComputedLaws {
        laws = List.copyOf(laws);
    }

    /** A point of a law: sensor temperature, K, and speed setting, 1 for full. */
    public record Point(double temperature, double setting) {
    }

    /**
     * One law.
     *
     * @param law       its id
     * @param sensor    what it reads
     * @param banks     the banks it drives
     * @param aim       what it spares: one of {@link LawDrive#AIMS}
     * @param points    its points, temperatures rising, settings never falling
     * @param slope     steepest slope that it has, 1/K
     * @param holds     whether all temperatures hold with it in all of its cases, the reserve left
     * @param cases     what each case takes
     */
    public record Law(String law, String sensor, List<String> banks, String aim, List<Point> points, double slope, boolean holds, List<Case> cases) {
        public Law {
            banks = List.copyOf(banks);
            points = List.copyOf(points);
            cases = List.copyOf(cases);
        }
    }

    /**
     * What a case takes.
     *
     * @param id     of the case
     * @param condition that it is one of
     * @param needed lowest setting that holds all temperatures, or full speed where none does
     * @param sensor what the sensor reads at that setting, K
     * @param now    setting with the law of the design; empty where that does not come to rest
     * @param then   setting with the computed law
     * @param missing by how much full speed is too little, K; 0 where it is enough
     * @param held   what keeps the setting from being lower: a limit, a requirement's figure, or the lowest setting
     * @param gainMargin of the computed law there; infinite where its loop cannot hunt
     */
    public record Case(String id, String condition, double needed, double sensor, Optional<Double> now, Optional<Double> then, double missing,
            String held,
            double gainMargin) {
    }

    /** The law of that id. */
    public Optional<Law> law(String id) {
        return laws.stream().filter(law -> law.law().equals(id)).findFirst();
    }
}
