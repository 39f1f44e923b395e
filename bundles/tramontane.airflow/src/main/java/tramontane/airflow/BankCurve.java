package tramontane.airflow;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.analysis.Chart;

/**
 * What a bank gives over the flow through it, to be drawn; made by {@link AirPathSolver#bankCurve}.
 *
 * @param pieces    fan static pressure, Pa, over actual volume flow at its inlet, m³/s: one piece, or several where unlike columns
 *                  with a dip in their curve may share a flow in more than one way
 * @param power     electrical input of the bank, W, over the same flows, piece by piece; empty where no curve states it
 * @param stallFlow flow of the bank up to which its movers are left of their pressure peak, m³/s; empty for curves that fall all
 *                  the way, and where columns come to their peaks one by one
 */
public record BankCurve(List<Chart.Points> pieces, Optional<List<Chart.Points>> power, OptionalDouble stallFlow) {

    public BankCurve {
        pieces = List.copyOf(pieces);
        power = power.map(List::copyOf);
    }
}
