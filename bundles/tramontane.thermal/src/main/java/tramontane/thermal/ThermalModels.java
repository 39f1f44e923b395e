package tramontane.thermal;

import java.util.List;
import java.util.Map;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import org.osgi.service.component.annotations.ReferenceCardinality;
import org.osgi.service.component.annotations.ReferencePolicyOption;
import tramontane.analysis.Kinds;
import tramontane.analysis.LinkKind;
import tramontane.analysis.PassageKind;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.SpeedLaws;
import tramontane.model.Condition;
import tramontane.model.Design;

/**
 * Makes models with what is loaded. It is made anew when a kind or a speed law comes or goes, and with it the analyses that use it.
 */
@Component(service = ThermalModels.class)
public final class ThermalModels {

    private final List<PassageKind> passageKinds;
    private final List<LinkKind> linkKinds;
    private final List<SpeedLaw> speedLaws;

    /**
     * Made by the framework.
     *
     * @param passageKinds the loaded passage kinds
     * @param linkKinds    the loaded link kinds
     * @param speedLaws    the loaded speed laws with their service properties, by which they are ranked
     */
    @Activate
    public ThermalModels(
            @Reference(cardinality = ReferenceCardinality.MULTIPLE, policyOption = ReferencePolicyOption.GREEDY)
            List<PassageKind> passageKinds,
            @Reference(cardinality = ReferenceCardinality.MULTIPLE, policyOption = ReferencePolicyOption.GREEDY)
            List<LinkKind> linkKinds,
            @Reference(cardinality = ReferenceCardinality.MULTIPLE, policyOption = ReferencePolicyOption.GREEDY,
                    service = SpeedLaw.class)
            List<Map.Entry<Map<String, Object>, SpeedLaw>> speedLaws) {
        this.passageKinds = Kinds.byName(passageKinds, PassageKind::form);
        this.linkKinds = Kinds.byName(linkKinds, LinkKind::form);
        this.speedLaws = SpeedLaws.ranked(speedLaws);
    }

    /** The speed laws, highest ranked first. */
    public List<SpeedLaw> speedLaws() {
        return speedLaws;
    }

    /** The model of a design in a condition. */
    public ThermalModel model(Design design, Condition condition) {
        return ThermalModel.of(design, condition, passageKinds, linkKinds, speedLaws);
    }

    /** What temperatures are computed from; of the requirements those on temperatures, which say that somebody asks for them. */
    public Design reads(Design design) {
        return reads(design, speedLaws);
    }

    /**
     * The same where other speed laws are loaded.
     *
     * @param design the whole design
     * @param laws   the speed laws, which read sections of the design itself; none for who asks for no speeds
     */
    public static Design reads(Design design, List<? extends SpeedLaw> laws) {
        return Design.EMPTY.withAirPath(design.airPath()).withAirMovers(design.airMovers())
                .withHeatSources(design.heatSources()).withConditions(design.conditions()).withControlLaws(design.controlLaws())
                .withRequirements(design.requirements().stream().filter(requirement -> requirement.figure().startsWith("thermal.")).toList())
                .withMore(SpeedLaws.read(design, laws));
    }
}
