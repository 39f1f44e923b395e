package tramontane.airflow.internal;

import java.util.List;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Relation;
import tramontane.analysis.Trace;
import tramontane.physics.units.QuantityKind;

/** Says where the figures come from that tell how well the air goes its way, and what would be if. */
final class PathSteps {

    private static final Relation STALL = new Relation("distance to the stall region", "(q - q_peak)/q",
            "common practice: the stall region is that of flows below the pressure peak right of the dip",
            "q of the running mover with the least flow");
    private static final Relation BEST = new Relation("best static efficiency", "largest Q Δp / P along the curve",
            "ISO 5801:2017 for the efficiency", "P is the electrical input; air taken as incompressible");
    private static final Relation DRAWN_BACK = new Relation("share drawn back",
            "air that leaves the bank is marked; Σ marked mass flow into each bay = share × Σ mass flow into it",
            "balance of mass", "each bay well mixed");
    private static final Relation GAPS = new Relation("share of gaps", "mass flow of gaps in from outside, out, or inside, the most / mass flow from outside",
            "balance of mass", "");
    private static final Relation OTHER_PRESSURE = new Relation("duty point with another pressure",
            "the air path solved again with the bank's pressure at equal flow times the factor",
            "ISO 5801:2017 for what the curve means",
            "the bank stays near where it works; bay temperatures and speeds as they are");

    private PathSteps() {
    }

    static void record(AirflowReading reading, Variations variations, Trace trace) {
        for (OperatingPoint.BankPoint bank : reading.point().banks()) {
            String id = bank.bank();
            reading.stallMargin(bank).ifPresent(margin -> step(trace, Figures.STALL_MARGIN.id(), id, STALL, margin,
                    new Trace.Term("least flow of a running mover q", QuantityKind.FLOW, bank.movers().stream()
                            .filter(OperatingPoint.MoverPoint::running).mapToDouble(OperatingPoint.MoverPoint::flow).min()
                            .orElseThrow(), Figures.BANK_FLOW.id()),
                    new Trace.Term("flow at the pressure peak q_peak", QuantityKind.FLOW, reading.peakFlow(bank).orElse(0),
                            "air mover " + reading.bank(id).mover().id())));
            reading.best(bank).ifPresent(best -> {
                Trace.Term speed = new Trace.Term("speed", QuantityKind.ROTATIONAL_SPEED, bank.speed(), Figures.BANK_SPEED.id());
                Trace.Term density = AirflowSteps.inletDensity(reading, bank);
                step(trace, Figures.BEST_FLOW.id(), id, BEST, best.flow(), speed, density);
                step(trace, Figures.BEST_EFFICIENCY.id(), id, BEST, best.efficiency(), speed, density,
                        new Trace.Term("flow of one mover", QuantityKind.FLOW, best.flow(), Figures.BEST_FLOW.id()));
            });
            reading.drawnBack(bank).ifPresent(share -> step(trace, Figures.DRAWN_BACK.id(), id, DRAWN_BACK, share,
                    reading.point().passages().stream().map(flow -> new Trace.Term("mass flow of " + flow.passage(),
                            QuantityKind.MASS_FLOW, flow.massFlow(), "passage " + flow.passage())).toArray(Trace.Term[]::new)));
            otherPressure(trace, variations.lessPressure().get(id), id, Figures.LESS_PRESSURE.id(), 1 - Variations.PRESSURE,
                    bank);
            otherPressure(trace, variations.morePressure().get(id), id, Figures.MORE_PRESSURE.id(), 1 + Variations.PRESSURE,
                    bank);
        }
        reading.gapShare().ifPresent(share -> step(trace, Figures.GAP_SHARE.id(), "", GAPS, share, reading.gaps().stream()
                .map(gap -> new Trace.Term("mass flow of " + gap.passage(), QuantityKind.MASS_FLOW, gap.massFlow(),
                        Figures.PASSAGE_FLOW.id())).toArray(Trace.Term[]::new)));
    }

    private static void otherPressure(Trace trace, Double flow, String bank, String figure, double factor,
            OperatingPoint.BankPoint point) {
        if (flow != null) {
            step(trace, figure, bank, OTHER_PRESSURE, flow,
                    new Trace.Term("factor on pressure at equal flow", QuantityKind.NUMBER, factor, "bank " + bank),
                    new Trace.Term("flow without it", QuantityKind.FLOW, point.flow(), Figures.BANK_FLOW.id()));
        }
    }

    private static void step(Trace trace, String figure, String place, Relation relation, double value, Trace.Term... inputs) {
        trace.step(new Trace.Step(figure, place, relation, value, List.of(inputs)));
    }
}
