package tramontane.reliability.internal;

import java.util.List;
import tramontane.analysis.Better;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Relation;
import tramontane.physics.units.QuantityKind;

/** What life and redundancy are measured by, and the relations behind. */
final class Figures {

    static final FigureKind L10 = time("reliability.life", "life L10", "Running time by which 10 % of movers would have failed that worked in this"
            + " condition all the time: the shortest of a bank.");
    static final FigureKind L1 = time("reliability.life.l1", "life L1", "The same for 1 %.");
    static final FigureKind L50 = time("reliability.life.l50", "life L50", "The same for half of them.");
    static final FigureKind MEAN = time("reliability.life.mean", "mean life", "Mean of the lives of such movers (MTTF).");
    static final List<FigureKind> CONDITION = List.of(L10, L1, L50, MEAN);

    static final FigureKind MISSION_L10 = time("reliability.mission.life", "life L10 over the mission", "Running time by which 10 % of movers have failed"
            + " over the mission: the shortest of a bank.");
    static final FigureKind MISSION_L1 = time("reliability.mission.life.l1", "life L1 over the mission", "The same for 1 %.");
    static final FigureKind MISSION_L50 = time("reliability.mission.life.l50", "life L50 over the mission", "The same for half of them.");
    static final FigureKind MISSION_MEAN = time("reliability.mission.life.mean", "mean life over the mission", "Mean of the lives of such movers (MTTF).");
    static final FigureKind MISSION_SURVIVAL = probability("reliability.mission.survival", "survival of a mover",
            "How likely one mover of a bank still runs at the end of the service life, unless it is exchanged.");
    static final FigureKind MISSION_USED = new FigureKind("reliability.mission.used", "life used up", QuantityKind.FRACTION, Better.LOWER,
            "Share of the life L10 that a mover of a bank has used up at the end of the service life (Miner's sum).");
    static final List<FigureKind> MISSION = List.of(MISSION_L10, MISSION_L1, MISSION_L50, MISSION_MEAN, MISSION_SURVIVAL, MISSION_USED);

    static final FigureKind SYSTEM_SURVIVAL = probability("reliability.system.survival", "survival", "How likely a bank, or the whole equipment,"
            + " has cooled without a break until the end of the service life, nothing exchanged but at visits.");
    static final FigureKind SYSTEM_L10 = time("reliability.system.life", "L10 of the bank", "Calendar time by which 10 % of such banks, or of such"
            + " equipment, have passed a limit, nothing exchanged.");
    static final FigureKind SYSTEM_MEAN = time("reliability.system.life.mean", "mean time to a limit", "Mean calendar time until a bank, or the whole"
            + " equipment, passes a limit, nothing exchanged.");
    static final FigureKind SYSTEM_SPARE = new FigureKind("reliability.system.spare", "movers to spare", QuantityKind.COUNT, Better.HIGHER,
            "How many movers of a bank may fail, whichever they are, before a limit is passed.");
    static final FigureKind REPAIRED_MEAN = time("reliability.repair.mean", "mean time with repair", "Mean calendar time until a bank, or the whole"
            + " equipment, passes a limit, failed movers exchanged within the time to repair.");
    static final FigureKind REPAIRED_SURVIVAL = probability("reliability.repair.survival", "survival with repair",
            "How likely no limit is passed until the end of the service life, failed movers exchanged within the time to repair.");
    static final FigureKind AVAILABILITY = probability("reliability.repair.availability", "availability",
            "Share of the time in which all limits are kept, failed movers exchanged within the time to repair.");
    static final FigureKind DOWNTIME = new FigureKind("reliability.repair.downtime", "downtime in a year", QuantityKind.TIME, Better.LOWER,
            "Time in a year in which a limit is passed, failed movers exchanged within the time to repair.");
    static final FigureKind VISIT_AVAILABILITY = probability("reliability.visits.availability", "availability by visits",
            "Share of the time in which all limits are kept where failures show at visits only, and everything is renewed then.");
    static final FigureKind INTERVAL = time("reliability.visits.interval", "longest time between visits", "Longest time between visits for the"
            + " availability that is asked for, where failures show at visits only, and everything is renewed then.");
    static final FigureKind FLEET_FAILURES = new FigureKind("reliability.fleet.failures", "failures in a year, no visits", QuantityKind.NUMBER, Better.LOWER,
            "Movers of the fleet that fail in a year in the long run, each exchanged on failure, without visits.");
    static final FigureKind FLEET_SPARES = new FigureKind("reliability.fleet.spares", "spares for these", QuantityKind.COUNT, Better.LOWER,
            "Spare movers of one part that must lie ready so that they last until restocked.");
    static final List<FigureKind> SYSTEM = List.of(SYSTEM_SURVIVAL, SYSTEM_L10, SYSTEM_MEAN, SYSTEM_SPARE, REPAIRED_MEAN, REPAIRED_SURVIVAL, AVAILABILITY,
            DOWNTIME, VISIT_AVAILABILITY, INTERVAL, FLEET_FAILURES, FLEET_SPARES);

    static final Relation TEN_KELVIN = new Relation("life at the duty", "L = L_rated q^((T_rated - T)/10 K) (n_rated/n)^k", "common practice: q = 1.5 for grease in"
            + " ball bearings of fans, k = 1 counts revolutions", "q and k hold near the rating; life below its temperature is extrapolated");
    static final Relation ARRHENIUS = new Relation("life at the duty by Arrhenius", "L = L_rated exp(E/k (1/T - 1/T_rated)) (n_rated/n)^k",
            "NIST/SEMATECH e-Handbook of Statistical Methods, 8.1.5.1; the speed: common practice", "one mechanism of failure");
    static final Relation GREASE = new Relation("life at the duty by grease", "lg(L/L_rated) = 2450 K (1/T - 1/T_rated) - 0.260 (n - n_rated)/n_limit",
            "E. R. Booser, \"Grease Life Forecast for Ball Bearings\", Lubrication Engineering 30 (1974), constants from memory",
            "ball bearings with mineral oil grease above about 70 °C");
    static final Relation FATIGUE = new Relation("basic rating life", "L10 = 10^6 (C/P)^p/n, bearings together (Σ L_i^-e)^(-1/e)", "ISO 281:2007; ISO/TR 1281-1",
            "fatigue alone; grease of light bearings does not last as long");
    static final Relation HANDBOOK = new Relation("failure rate of a small motor", "λ = λ1/(A α_B) + λ2/(B α_W)", "MIL-HDBK-217F Notice 2 (1995), section 12.1",
            "rolling bearings, motors below one horsepower, 0 to 140 °C; for comparing, not for predicting");
    static final Relation WEIBULL = new Relation("Weibull distribution", "F(t) = 1 - exp(-(t/η)^β); η = L10/0.10536^(1/β), mean η Γ(1 + 1/β)",
            "IEC 61649; NIST/SEMATECH e-Handbook 8.1.6.2", "");
    static final Relation CONSTANT_RATE = new Relation("constant failure rate", "F(t) = 1 - exp(-λ t)", "NIST/SEMATECH e-Handbook 8.1.6.1", "");
    static final Relation MINER = new Relation("Miner's sum", "1/L = Σ (t_i/Σ t)/L_i", "M. A. Miner, \"Cumulative Damage in Fatigue\", J. Appl. Mech. 12 (1945)",
            "damage adds up whatever the order; no ageing at rest");
    static final Relation CYCLE = new Relation("cycled temperature", "α = Σ h/Σ (h/α_i); α_B,i and α_W,i by the formulas of the handbook at each temperature",
            "MIL-HDBK-217F Notice 2 (1995), section 12.1", "0 to 140 °C");
    static final Relation SURVIVAL = new Relation("survival of a mover", "R(t), t = running time in a year times years of service", "definition", "");
    static final Relation USED = new Relation("life used up", "D = t/L", "M. A. Miner, \"Cumulative Damage in Fatigue\", J. Appl. Mech. 12 (1945)", "");
    static final Relation SYSTEM_RELATION = new Relation("survival of a bank", "sum of the probabilities of all sets of failed movers that are reached"
            + " before a limit is passed; those that are left age by cumulative exposure", "coherent systems: R. E. Barlow, F. Proschan, \"Statistical Theory"
            + " of Reliability and Life Testing\", 1975; cumulative exposure: W. Nelson, \"Accelerated Testing\", 1990",
            "movers fail one by one, independently but for the ageing; which sets keep all limits is asked of airflow and thermal");
    static final Relation SMALLEST = new Relation("movers to spare", "smallest number of failed movers that passes a limit, less one", "definition", "");
    static final Relation MARKOV = new Relation("repair", "Markov chain: each mover fails at 1/mean life, is exchanged at 1/time to repair",
            "IEC 61165; K. S. Trivedi, \"Probability and Statistics\", ch. 8", "long-run rate of movers that are renewed again and again");
    static final Relation VISITS = new Relation("availability by visits", "A = (1/τ) ∫ R dt from 0 to τ", "R. E. Barlow, F. Proschan,"
            + " \"Mathematical Theory of Reliability\", 1965", "down until the next visit, all renewed then");
    static final Relation RENEWAL = new Relation("failures in a year", "movers in the fleet times one year over mean life", "elementary renewal theorem; R. E. Barlow,"
            + " F. Proschan, \"Mathematical Theory of Reliability\", 1965", "in the long run, each exchanged on failure");
    static final Relation POISSON = new Relation("spares", "least s with P(Poisson(rate times restocking time) ≤ s) ≥ confidence",
            "sum of many renewals; NIST/SEMATECH e-Handbook 8.1.7.1", "demands independent");

    private Figures() {
    }

    private static FigureKind time(String id, String label, String help) {
        return new FigureKind(id, label, QuantityKind.TIME, Better.HIGHER, help);
    }

    private static FigureKind probability(String id, String label, String help) {
        return new FigureKind(id, label, QuantityKind.PROBABILITY, Better.HIGHER, help);
    }
}
