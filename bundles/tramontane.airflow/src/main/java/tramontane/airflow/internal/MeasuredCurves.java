package tramontane.airflow.internal;

import java.util.List;
import java.util.Optional;
import tramontane.model.AirMover;
import tramontane.model.MoverCurve;
import tramontane.model.Quantity;

/**
 * The measured curves of a mover that hold at a supply frequency.
 *
 * <p>A mover with an AC motor is another machine at 60 Hz than at 50 Hz, so that its curves are never mixed across
 * frequencies. Those within 2 % of one frequency belong together: mains frequencies stray by less and are apart by more.
 *
 * @param curves    the curves, in the order of the part
 * @param frequency the frequency they were measured at, Hz; empty where no curve of the part states one
 * @param asked     whether that is the one asked for, or none was
 * @param several   whether the part has curves of other frequencies too
 */
record MeasuredCurves(List<MoverCurve> curves, Optional<Double> frequency, boolean asked, boolean several) {

    private static final double SAME = 0.02;

    /**
     * The curves of a part.
     *
     * @param wanted supply frequency, Hz; that of the first curve that states one where not given
     */
    static MeasuredCurves of(AirMover mover, Optional<Double> wanted) {
        List<Double> stated = mover.curves().stream().flatMap(curve -> curve.frequency().stream()).map(Quantity::si).toList();
        if (stated.isEmpty()) {
            return new MeasuredCurves(mover.curves(), Optional.empty(), true, false);
        }
        double nearest = stated.getFirst();
        for (double each : stated) {
            if (wanted.isPresent() && Math.abs(each - wanted.get()) < Math.abs(nearest - wanted.get())) {
                nearest = each;
            }
        }
        double chosen = nearest;
        boolean several = stated.stream().anyMatch(each -> !same(each, stated.getFirst()));
        return new MeasuredCurves(several ? mover.curves().stream().filter(curve -> curve.frequency().map(Quantity::si)
                .filter(each -> same(each, chosen)).isPresent()).toList() : mover.curves(), Optional.of(chosen),
                wanted.isEmpty() || same(wanted.get(), chosen), several);
    }

    /** Whether two values of a supply count as one. */
    static boolean same(double one, double other) {
        return Math.abs(one - other) <= SAME * other;
    }
}
