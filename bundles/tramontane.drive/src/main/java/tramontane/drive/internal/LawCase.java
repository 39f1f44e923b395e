package tramontane.drive.internal;

import java.util.List;
import java.util.Optional;
import tramontane.analysis.Engine;
import tramontane.model.Condition;
import tramontane.model.Requirement;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalState;

/** What one case takes of all laws, filled in while it is looked for. */
final class LawCase {

    final String id;
    final String declared;
    final Condition condition;
    final ThermalModel model;
    final List<ThermalModel.Acting> laws;
    /** Lowest setting of each law that is looked at. */
    final double[] lowest;
    /** Where it rests with the laws of the design. */
    final Optional<ThermalState> now;
    /** The requirements that more speed helps. */
    List<Requirement> helped = List.of();
    /** Lowest setting of each law that holds; null where there is no answer. */
    double[] needed;
    /** The same as the computed laws aim at it: raised where that did not hold. */
    double[] aimed;
    /** What the sensor of each law reads at the settings needed, K. */
    double[] sensor;
    /** The state at the settings needed. */
    Optional<ThermalState> state = Optional.empty();
    /** By how much full speed is too little, K; the reserve counts. */
    double missing;
    /** What keeps the settings from being lower, and whether that is the limit of a heat source. */
    String held = "";
    boolean limited;
    /** Where it rests with the computed laws, and the gain margin of each there. */
    Optional<ThermalState> then = Optional.empty();
    double[] gain = {};

    LawCase(Engine.Case of, ThermalModel model, List<ThermalModel.Acting> laws, double[] lowest, Optional<ThermalState> now) {
        id = of.concrete().id();
        declared = of.declared();
        condition = of.concrete();
        this.model = model;
        this.laws = laws;
        this.lowest = lowest;
        this.now = now;
    }

    /** The setting of a law's banks in a state. */
    Optional<Double> setting(Optional<ThermalState> there, int law) {
        return laws.get(law).banks().stream().findFirst().flatMap(bank -> there.map(each -> each.feeds().get(bank).setting()));
    }
}
