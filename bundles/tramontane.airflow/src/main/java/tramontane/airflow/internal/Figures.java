package tramontane.airflow.internal;

import java.util.List;
import tramontane.analysis.Better;
import tramontane.analysis.FigureKind;
import tramontane.physics.units.QuantityKind;

/** The figures of the air-flow analysis. */
final class Figures {

    static final FigureKind BANK_FLOW = new FigureKind("airflow.bank.flow", "flow", QuantityKind.FLOW, Better.HIGHER,
            "Actual volume flow at the inlet of a bank.");
    static final FigureKind BANK_STANDARD_FLOW = new FigureKind("airflow.bank.standardFlow", "standard flow",
            QuantityKind.FLOW, Better.HIGHER, "Mass flow of a bank as volume flow of standard air of 1.2 kg/m³.");
    static final FigureKind BANK_PRESSURE = new FigureKind("airflow.bank.pressure", "static pressure", QuantityKind.PRESSURE,
            Better.NEITHER, "Fan static pressure of a bank at its duty point.");
    static final FigureKind BANK_SPEED = new FigureKind("airflow.bank.speed", "speed", QuantityKind.ROTATIONAL_SPEED,
            Better.NEITHER, "Speed of the running movers of a bank.");
    static final FigureKind BANK_POWER = new FigureKind("airflow.bank.power", "electrical power", QuantityKind.POWER,
            Better.LOWER, "Electrical input of all running movers of a bank.");
    static final FigureKind BANK_EFFICIENCY = new FigureKind("airflow.bank.efficiency", "static efficiency",
            QuantityKind.FRACTION, Better.HIGHER,
            "Overall static efficiency of a bank: flow times fan static pressure over electrical input.");
    static final FigureKind BEST_EFFICIENCY = new FigureKind("airflow.bank.bestEfficiency", "best static efficiency",
            QuantityKind.FRACTION, Better.HIGHER, "Highest overall static efficiency of the movers of a bank at their speed.");
    static final FigureKind BEST_FLOW = new FigureKind("airflow.bank.bestFlow", "flow of best efficiency", QuantityKind.FLOW,
            Better.NEITHER, "Flow of one mover of a bank at which its static efficiency is highest.");
    static final FigureKind STALL_MARGIN = new FigureKind("airflow.bank.stallMargin", "distance to the stall region",
            QuantityKind.FRACTION, Better.HIGHER, "Flow of the mover with the least flow less that at its pressure peak, over its"
                    + " flow; below zero in the stall region. For curves with a dip; 100 % for others, where a"
                    + " requirement asks.");
    static final FigureKind DRAWN_BACK = new FigureKind("airflow.bank.drawnBack", "share drawn back", QuantityKind.FRACTION,
            Better.LOWER, "Share of the air that a bank draws that has been through it before.");
    static final FigureKind LESS_PRESSURE = new FigureKind("airflow.bank.flowAtLessPressure", "flow with 10 % less pressure",
            QuantityKind.FLOW, Better.HIGHER, "Flow of a bank if its curve had 10 % less pressure at equal flow.");
    static final FigureKind MORE_PRESSURE = new FigureKind("airflow.bank.flowAtMorePressure", "flow with 10 % more pressure",
            QuantityKind.FLOW, Better.HIGHER, "Flow of a bank if its curve had 10 % more pressure at equal flow.");
    static final FigureKind GAP_SHARE = new FigureKind("airflow.gap.share", "share of gaps", QuantityKind.FRACTION,
            Better.LOWER, "Flow through gaps over the flow from outside; air that comes in by one gap and leaves by another counts once.");
    static final FigureKind PASSAGE_FLOW = new FigureKind("airflow.passage.flow", "flow", QuantityKind.FLOW, Better.HIGHER,
            "Volume flow through a passage, positive from its first to its second bay.");
    static final FigureKind PASSAGE_DROP = new FigureKind("airflow.passage.drop", "pressure drop", QuantityKind.PRESSURE,
            Better.LOWER, "Drop of total pressure of a passage, in the direction from its first to its second bay.");
    static final FigureKind BAY_PRESSURE = new FigureKind("airflow.bay.pressure", "pressure", QuantityKind.PRESSURE,
            Better.NEITHER, "Pressure in a bay above the air outside.");
    static final FigureKind TOTAL_FLOW = new FigureKind("airflow.total.flow", "flow from outside", QuantityKind.FLOW,
            Better.HIGHER, "Volume flow of all air that comes in from outside, at the density outside; what comes back through a bank against"
                    + " its direction does not count.");
    static final FigureKind AIR_DENSITY = new FigureKind("airflow.air.density", "air density outside", QuantityKind.DENSITY,
            Better.NEITHER, "Density of the moist air outside, by CIPM-2007 at the condition's pressure, temperature, humidity.");
    static final FigureKind AIR_RISE = new FigureKind("airflow.air.rise", "mean air temperature rise (estimate)",
            QuantityKind.TEMPERATURE_DIFFERENCE, Better.LOWER,
            "First estimate: the heat of all sources, without the movers' own, spread over all air that comes in from outside.");
    static final FigureKind FLOW_NEEDED = new FigureKind("airflow.flow.needed", "flow needed", QuantityKind.FLOW,
            Better.LOWER, "Flow from outside, at the density outside, that keeps the mean air temperature rise allowed.");
    static final FigureKind PRESSURE_AVAILABLE = new FigureKind("airflow.pressure.available",
            "pressure available at the flow needed", QuantityKind.PRESSURE, Better.HIGHER,
            "What the bank gives at the flow needed, and so what its air path may ask for.");

    static final List<FigureKind> ALL = List.of(BANK_FLOW, BANK_STANDARD_FLOW, BANK_PRESSURE, BANK_SPEED, BANK_POWER,
            BANK_EFFICIENCY, BEST_EFFICIENCY, BEST_FLOW, STALL_MARGIN, DRAWN_BACK, LESS_PRESSURE, MORE_PRESSURE, GAP_SHARE,
            PASSAGE_FLOW, PASSAGE_DROP, BAY_PRESSURE, TOTAL_FLOW,
            AIR_DENSITY, AIR_RISE, FLOW_NEEDED, PRESSURE_AVAILABLE);

    private Figures() {
    }
}
