package tramontane.thermal.internal;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import tramontane.airflow.SpeedLaws;
import tramontane.analysis.LinkKind;
import tramontane.analysis.PassageKind;
import tramontane.analysis.SpeedLaw;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Value;
import tramontane.thermal.ThermalModel;

/**
 * Makes models with what is loaded.
 *
 * @param passageKinds kinds of passages, by name
 * @param linkKinds    kinds of links, by name
 * @param speedLaws    speed laws, highest ranked first
 */
public record Models(List<PassageKind> passageKinds, List<LinkKind> linkKinds, List<SpeedLaw> speedLaws) {

    /** With what the framework hands over. */
    public static Models of(List<PassageKind> passageKinds, List<LinkKind> linkKinds, List<Map.Entry<Map<String, Object>, SpeedLaw>> speedLaws) {
        return new Models(passageKinds.stream().sorted(Comparator.comparing(kind -> kind.form().name())).toList(),
                linkKinds.stream().sorted(Comparator.comparing(kind -> kind.form().name())).toList(), SpeedLaws.ranked(speedLaws));
    }

    /** The model of a design in a condition. */
    public ThermalModel model(Design design, Condition condition) {
        return ThermalModel.of(design, condition, passageKinds, linkKinds, speedLaws);
    }

    /** What temperatures are computed from; of the requirements those on temperatures, which say that somebody asks for them. */
    public static Design reads(Design design) {
        return Design.EMPTY.withAirPath(design.airPath()).withAirMovers(design.airMovers())
                .withHeatSources(design.heatSources()).withConditions(design.conditions()).withControlLaws(design.controlLaws())
                .withRequirements(design.requirements().stream().filter(requirement -> requirement.figure().startsWith("thermal.")).toList())
                .withMore(Value.Tree.EMPTY);
    }
}
