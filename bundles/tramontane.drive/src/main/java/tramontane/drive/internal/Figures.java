package tramontane.drive.internal;

import java.util.List;
import tramontane.analysis.Better;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Relation;
import tramontane.physics.units.QuantityKind;

/** What the drive of a condition is measured by, and the relations behind. */
final class Figures {

    static final FigureKind SETTING = new FigureKind("drive.bank.setting", "speed setting", QuantityKind.FRACTION, Better.LOWER,
            "What the movers of a bank are set to.");
    static final FigureKind VOLTAGE = new FigureKind("drive.bank.voltage", "voltage", QuantityKind.VOLTAGE, Better.HIGHER,
            "Voltage at the terminals of each running mover of a bank.");
    static final FigureKind DROP = new FigureKind("drive.bank.drop", "voltage lost", QuantityKind.FRACTION, Better.LOWER,
            "Voltage lost in wires and resistors on the way to a bank, over what is sent.");
    static final FigureKind CURRENT = new FigureKind("drive.bank.current", "current", QuantityKind.CURRENT, Better.LOWER,
            "Current of each running mover of a bank.");
    static final FigureKind PULSES = new FigureKind("drive.bank.pulses", "tacho", QuantityKind.FREQUENCY, Better.HIGHER,
            "Frequency of the pulses of each running mover of a bank.");
    static final FigureKind RUNNING = new FigureKind("drive.supply.current", "running current", QuantityKind.CURRENT, Better.LOWER,
            "Current of a supply while all of its movers run; movers whose rotor is held included.");
    static final FigureKind FULLEST = new FigureKind("drive.supply.fullest", "current at full speed", QuantityKind.CURRENT, Better.LOWER,
            "Current of a supply with all its movers at full setting, at the end of its tolerance that takes most: as when a sensor fails.");
    static final FigureKind STARTING = new FigureKind("drive.supply.starting", "starting current", QuantityKind.CURRENT, Better.LOWER,
            "Highest current of a supply while its movers run up, all at once or one after another.");
    static final FigureKind INRUSH = new FigureKind("drive.supply.inrush", "inrush", QuantityKind.CURRENT, Better.LOWER,
            "Highest peak of the current of a supply when its movers are switched on.");
    static final FigureKind LOAD = new FigureKind("drive.supply.load", "load", QuantityKind.FRACTION, Better.LOWER,
            "Running current of a supply over what it gives for long where it stands.");
    static final FigureKind INPUT = new FigureKind("drive.supply.power", "power taken", QuantityKind.POWER, Better.LOWER,
            "What a supply takes from the mains for the movers, its losses included.");
    static final FigureKind POWER = new FigureKind("drive.power", "power from the mains", QuantityKind.POWER, Better.LOWER,
            "What all movers take, losses of their supplies included.");

    static final List<FigureKind> ALL = List.of(SETTING, VOLTAGE, DROP, CURRENT, PULSES, RUNNING, FULLEST, STARTING, INRUSH, LOAD, INPUT, POWER);

    static final Relation GIVEN = new Relation("speed setting", "what the condition or a control law sets", "the design", "");
    static final Relation OHM = new Relation("voltage at the terminals", "U = U_sent - I cosφ (R_own + N R_shared)",
            "Ohm's law; R of a wire by IEC 60228, both ways, √3 for three phases", "reactance of the wire neglected: up to some 16 mm²");
    static final Relation SHARE = new Relation("share of voltage lost", "(U_sent - U)/U_sent", "definition", "");
    static final Relation BY_POWER = new Relation("current by power", "I = P/(U cosφ), P/(√3 U cosφ) for three phases",
            "definition of the power factor", "sinusoidal or direct");
    static final Relation BY_LOAD = new Relation("current by load", "I = I_rated (n/n_rated)² ρ/ρ1; for a motor that holds its speed"
            + " I_rated (n/n_rated)³ (ρ/ρ1) U_rated/U", "fan laws (ISO 5801); current with torque or with power", "where no power is stated");
    static final Relation TACHO = new Relation("tacho frequency", "f = z n/(2π)", "4-Wire Pulse Width Modulation (PWM) Controlled Fans"
            + " Specification, rev. 1.3, 2005: z = 2 pulses per revolution", "");
    static final Relation SUM = new Relation("sum of currents", "I = Σ N_running I + N_locked I_locked", "Kirchhoff's current law", "");
    static final Relation ALL_OUT = new Relation("current at full speed", "Σ N I(P_0 + (P - P_0) (n_full/n)³, U)", "fan laws (ISO 5801); Ohm's law",
            "U at either end of the supply's tolerance, the larger current counts");
    static final Relation START = new Relation("starting current", "all at once: Σ I_start; one after another: max over k of the first k - 1 running"
            + " and the k-th starting, with as many starting as start within the starting time", "common practice", "");
    static final Relation PEAK = new Relation("inrush", "as the starting current, of the peaks", "common practice; peaks taken to coincide", "");
    static final Relation OVER = new Relation("load of a supply", "I/(I_most (1 - k (T - T_0)))", "derating as its data sheet says", "T above T_0");
    static final Relation TAKEN = new Relation("power from the mains", "P = Σ P_bank (U_sent/U)/η",
            "definition of efficiency; wires and resistors lose the voltage between U_sent and U",
                    "a lowered voltage is taken to be made without loss");

    private Figures() {
    }
}
