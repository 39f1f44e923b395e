package tramontane.acoustics.internal;

import java.util.List;
import tramontane.analysis.Better;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Relation;
import tramontane.physics.units.QuantityKind;

/** What the noise of a condition is measured by, and the relations behind. */
public final class Figures {

    static final FigureKind LEVEL = level("acoustics.level", "sound pressure level", "A-weighted sound pressure level at a listening position,"
            + " dB re 20 µPa; 0 dB where no mover runs.");
    static final FigureKind LEVEL_C = level("acoustics.level.c", "C-weighted level", "C-weighted sound pressure level at a listening position.");
    static final FigureKind LEVEL_TOTAL = level("acoustics.level.total", "level with background", "A-weighted sound pressure level at a listening"
            + " position together with the background that the design states.");
    static final FigureKind RATING_NR = new FigureKind("acoustics.rating.nr", "noise rating NR", QuantityKind.NUMBER, Better.LOWER,
            "Noise rating at a listening position (ISO/R 1996).");
    static final FigureKind RATING_NC = new FigureKind("acoustics.rating.nc", "noise criterion NC", QuantityKind.NUMBER, Better.LOWER,
            "Noise criterion at a listening position (Beranek 1957).");
    static final FigureKind TO_NOISE = level("acoustics.tone.ratio", "tone-to-noise ratio", "Tone-to-noise ratio of the tone that stands out most at"
            + " a listening position (ECMA-418-1).");
    static final FigureKind PROMINENCE = level("acoustics.tone.prominence", "prominence ratio", "Prominence ratio of the tone that stands out most"
            + " at a listening position (ECMA-418-1).");
    static final FigureKind EXCESS = level("acoustics.tone.excess", "tone above criterion", "By how much that tone stands above what makes it"
            + " prominent, by either ratio; below zero for none (ECMA-418-1).");
    static final FigureKind POWER = level("acoustics.power", "sound power level", "A-weighted sound power level of all that leaves the equipment, dB re"
            + " 1 pW.");
    static final FigureKind POWER_DECLARED = level("acoustics.power.declared", "declared sound power level", "Upper limit of the A-weighted sound"
            + " power level of a batch, mean plus adder for verification (ISO 9296).");
    static final FigureKind POWER_BANK = level("acoustics.bank.power", "sound power of bank", "A-weighted sound power level of the running movers of a"
            + " bank where they work.");
    static final FigureKind POWER_OPENING = level("acoustics.opening.power", "sound power of opening", "A-weighted sound power level that leaves by an"
            + " opening.");
    static final FigureKind BLADES = new FigureKind("acoustics.bank.blades", "blade passing frequency", QuantityKind.FREQUENCY, Better.LOWER,
            "Blade passing frequency of the movers of a bank.");

    static final List<FigureKind> ALL = List.of(LEVEL, LEVEL_C, LEVEL_TOTAL, RATING_NR, RATING_NC, TO_NOISE, PROMINENCE, EXCESS, POWER, POWER_DECLARED,
            POWER_BANK, POWER_OPENING, BLADES);

    static final FigureKind EQUIVALENT = level("acoustics.level.equivalent", "equivalent level", "A-weighted sound pressure level at a listening"
            + " position, mean of the power over the times of the mission.");

    static final Relation SUM = new Relation("sum of incoherent sounds", "L = 10 lg Σ 10^(L_i/10)", "definition of the level; sources incoherent", "");
    static final Relation WAY = new Relation("from sound power to a listener", "L_p,i = L_W + 10 lg(share of the power that leaves by the opening)"
            + " + 10 lg(Q/(4πr²) + 4/R), each band on its own", "ISO 3744 and ISO 3745 for the spreading; room equation: Kinsler, Frey, Coppens, Sanders,"
            + " \"Fundamentals of Acoustics\"", "A-weighted sums shown; bands are summed beforehand");
    static final Relation SOURCE = new Relation("sound power at the duty point", "L_W = L_measured + 10 lg(4πr², or 2πr²) of a pressure + k lg(n/n_measured) + 70 lg(D/D_measured)"
            + " + 20 lg(ρ/ρ_measured) + ΔL(flow) + ΔL(obstacle)", "sound law of fans: R. D. Madison, \"Fan Engineering\", 1949; rise off the best point:"
            + " ASHRAE Handbook, from memory; obstacles: common practice", "like points of geometrically similar movers; k is 50 unless stated");
    static final Relation WEIGHTING_C = new Relation("C-weighted level", "L = 10 lg Σ 10^((L_band + C)/10)", "IEC 61672-1:2013", "third-octave bands");
    static final Relation RATING = new Relation("noise rating", "the highest of (L_octave - a)/b", "ISO/R 1996:1971, withdrawn; coefficients as quoted"
            + " with AS 1469", "31.5 Hz to 8 kHz");
    static final Relation CRITERION = new Relation("noise criterion", "the lowest NC curve that no octave exceeds, interpolated between curves",
            "L. L. Beranek, 1957; ASHRAE Handbook", "63 Hz to 8 kHz");
    static final Relation TONES = new Relation("tone in noise", "TNR = L_t - L_n in the critical band; PR = critical band over the mean of its"
            + " neighbours", "ECMA-418-1", "noise even within each third-octave band");
    static final Relation ABOVE = new Relation("tone above criterion", "the higher of TNR - TNR_c and PR - PR_c; TNR_c = 8 dB, PR_c = 9 dB, more below"
            + " 1 kHz; TNR alone below -6 dB, where a tone is lost in the noise", "ECMA-418-1", "89.1 Hz to 11.22 kHz");
    static final Relation LEAVES = new Relation("sound power by an opening", "in each bay E (A + Σ S) = W + Σ S τ E_next; what leaves is S τ E, in each"
            + " band", "energy balance of diffuse fields; division of sound power by area: ASHRAE Handbook, VDI 2081",
            "A-weighted sums shown; bays large against the wavelength");
    static final Relation DECLARED = new Relation("declared sound power level", "L_WA,c = L_WA,m + 0.95 s_t + 0.564 σ_M, s_t² = s_R² + s_P²",
            "ISO 9296:2017, σ_M = 2 dB", "the level computed here taken for the mean of the batch");
    static final Relation PASSING = new Relation("blade passing frequency", "f = B n/(2π)", "definition", "");
    static final Relation MEAN = new Relation("equivalent level", "L_eq = 10 lg(Σ t 10^(L/10)/Σ t)", "definition; ISO 1996-1",
            "each phase steady, the equipment running all the time of the mission");

    static final Relation SILENCE = new Relation("silence", "no mover runs: 0 dB, the reference of the level, stands for it", "assumed", "");

    private Figures() {
    }

    private static FigureKind level(String id, String label, String help) {
        return new FigureKind(id, label, QuantityKind.LEVEL, Better.LOWER, help);
    }
}
