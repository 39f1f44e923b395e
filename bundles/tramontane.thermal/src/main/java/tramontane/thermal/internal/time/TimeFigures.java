package tramontane.thermal.internal.time;

import java.util.List;
import tramontane.analysis.Better;
import tramontane.analysis.FigureKind;
import tramontane.physics.units.QuantityKind;

/** The figures of temperatures in time. */
final class TimeFigures {

    static final FigureKind LIMIT = new FigureKind("thermal.time.limit", "time to the first limit", QuantityKind.TIME, Better.HIGHER,
            "Time from the beginning of the timeline until a heat source first is above its limit, or the first of all; where none ever is,"
                    + " the duration.");
    static final FigureKind PEAK = new FigureKind("thermal.time.peak", "highest temperature", QuantityKind.TEMPERATURE, Better.LOWER,
            "Highest junction temperature of a heat source in the course of the timeline.");
    static final FigureKind END = new FigureKind("thermal.time.end", "temperature at the end", QuantityKind.TEMPERATURE, Better.LOWER,
            "Junction temperature of a heat source at the end of the timeline.");

    /** In the order in which they are shown. */
    static final List<FigureKind> ALL = List.of(LIMIT, PEAK, END);

    private TimeFigures() {
    }
}
