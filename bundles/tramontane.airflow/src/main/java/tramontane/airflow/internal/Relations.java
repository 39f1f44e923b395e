package tramontane.airflow.internal;

import tramontane.analysis.Relation;

/** The formulas that flows, pressures and powers come from, with their sources. */
final class Relations {

    static final Relation ATMOSPHERE = new Relation("standard atmosphere", "p = 101325 Pa (1 - 0.0065 H/288.15)^5.25588",
            "ISO 2533:1975, Standard Atmosphere, eq. (12)", "up to 11 km");
    static final Relation DENSITY = new Relation("density of moist air", "ρ = p M (1 - x (1 - Mv/M)) / (Z R T)",
            "A. Picard, R. S. Davis, M. Gläser, K. Fujii, Revised formula for the density of moist air (CIPM-2007), "
                    + "Metrologia 45 (2008) 149-155", "600 to 1100 hPa, 15 to 27 °C; smooth beyond");
    static final Relation SPEED = new Relation("speed setting", "n = setting × rated speed", "common practice",
            "speed follows the setting; a speed law for the part says it better");
    static final Relation SPEED_LAW = new Relation("speed law", "n from the supply of the mover", "the loaded speed law", "");
    static final Relation SPEED_BY_VOLTAGE = new Relation("speed at a voltage",
            "n between those of the measured curves, linear in voltage, × setting; n ∝ U outside them", "common practice",
            "the load of the measurement");
    static final Relation SPEED_BY_FREQUENCY = new Relation("speed at a frequency",
            "n of the curve measured at that frequency × setting", "common practice", "the load of the measurement");
    static final Relation DC_MOTOR = new Relation("speed of an unregulated DC motor",
            "(ρ/ρ1)(n/n1)²(1 - n1/n0) = v - n/n0, × setting",
            "linear characteristic of a permanent-magnet DC motor, e.g. A. Hughes, Electric Motors and Drives, ch. 3 (from memory)",
            "steady; torque ∝ ρ n²; n1 and n0 at one voltage, v the voltage over that");
    static final Relation FAN_LAWS = new Relation("fan laws", "Q ∝ n D³, Δp ∝ n² D² ρ, P ∝ n³ D⁵ ρ",
            "ISO 5801:2017; ANSI/AMCA 210",
            "similar fans; speeds, sizes and densities not far apart; pressures below some 2 kPa; between two measured speeds the"
                    + " curves are mixed in proportion to the distance in speed");
    static final Relation FIXED_LOSS = new Relation("fan laws with a fixed loss", "P = P0 + (P1 - P0) (n/n1)³ (D/D1)⁵ ρ/ρ1",
            "ISO 5801:2017; that losses of motor and electronics stand outside of the law is common practice",
            "as the fan laws; P0 does not depend on speed");
    static final Relation DUTY_POINT = new Relation("duty point",
            "fan static pressure of the bank at its flow = what the rest of the air path asks for",
            "ISO 5801:2017 for what the curve means", "steady flow");
    static final Relation NETWORK = new Relation("flow network",
            "Σ mass flow into each bay = 0; pressure difference of the bays = drop of the passage",
            "E. Todini, S. Pilati, A gradient method for the solution of looped pipe networks (1988)",
            "steady flow; bays are plenums");
    static final Relation STACK = new Relation("buoyancy", "Δp = (ρ outside - ρ) g (height of the second bay - that of the first)",
            "hydrostatics, as for the stack effect in ASHRAE Handbook - Fundamentals, ch. Ventilation and Infiltration (from memory)",
            "air of one density in the passage, that of the bay it comes from; g = 9.80665 m/s²");
    static final Relation NETWORK_STACK = new Relation("flow network with buoyancy",
            "Σ mass flow into each bay = 0; pressure difference of the bays + buoyancy = drop of the passage",
            "E. Todini, S. Pilati, A gradient method for the solution of looped pipe networks (1988)",
            "steady flow; bays are plenums; pressures above that outside at the height of the bay");
    static final Relation UNSAID = new Relation("flow law of the passage's kind", "Δp = f(Q, ρ, μ)",
            "the bundle that gives the kind; it does not say more", "");
    static final Relation STANDARD_FLOW = new Relation("standard flow", "Q = mass flow / 1.2 kg/m³", "ISO 5801:2017", "");
    static final Relation EFFICIENCY = new Relation("overall static efficiency", "η = Q Δp / P", "ISO 5801:2017",
            "P is the electrical input; air taken as incompressible");
    static final Relation INTAKE = new Relation("flow from outside", "Q = Σ mass flow from outside / density outside",
            "balance of mass", "");
    static final Relation AIR_RISE = new Relation("mean rise of the air", "ΔT = P / (mass flow cp)",
            "balance of energy, e.g. F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer, ch. 1",
            "steady; all heat goes into the air that goes through");
    static final Relation FLOW_NEEDED = new Relation("flow needed", "Q = P / (ρ cp ΔT)",
            "balance of energy, e.g. F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer, ch. 1",
            "steady; all heat goes into the air that goes through");

    private Relations() {
    }
}
