package tramontane.airflow.desktop.internal.duty;

import java.util.List;
import java.util.Map;
import org.eclipse.swt.widgets.Composite;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import org.osgi.service.component.annotations.ReferenceCardinality;
import org.osgi.service.component.annotations.ReferencePolicyOption;
import tramontane.analysis.Kinds;
import tramontane.analysis.PassageKind;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.SpeedLaws;
import tramontane.desktop.Desk;
import tramontane.desktop.Icon;
import tramontane.desktop.Spot;
import tramontane.desktop.View;
import tramontane.desktop.ViewType;

/** Registers the duty chart. It is made anew when a passage kind or speed law comes or goes. */
@Component
public final class DutyViewType implements ViewType {

    static final String ID = "tramontane.airflow.duty";

    private final DutyChart.Physics physics;

    /**
     * Made by the framework.
     *
     * @param kinds     the loaded passage kinds
     * @param speedLaws the loaded speed laws with their service properties, by which they are ranked
     */
    @Activate
    public DutyViewType(
            @Reference(cardinality = ReferenceCardinality.MULTIPLE, policyOption = ReferencePolicyOption.GREEDY)
            List<PassageKind> kinds,
            @Reference(cardinality = ReferenceCardinality.MULTIPLE, policyOption = ReferencePolicyOption.GREEDY,
                    service = SpeedLaw.class)
            List<Map.Entry<Map<String, Object>, SpeedLaw>> speedLaws) {
        physics = new DutyChart.Physics(Kinds.byName(kinds, PassageKind::form), SpeedLaws.ranked(speedLaws));
    }

    @Override
    public String id() {
        return ID;
    }

    @Override
    public String label() {
        return "Duty chart";
    }

    @Override
    public Icon icon() {
        return Icon.read(DutyViewType.class, "duty.svg");
    }

    @Override
    public Spot spot() {
        return Spot.RIGHT;
    }

    @Override
    public int order() {
        return 10;
    }

    @Override
    public String help() {
        return """
                # Duty chart
                Where a bank of air movers works: its curve crosses the system curve, what the rest of the air path asks for at each flow. \
                The duty points are those that were computed for the case in front, at its temperatures and speeds.

                A filled disc is the duty point. A ring is an unstable one: the air does not stay there. A diamond is another stable one, \
                which the air may come to from elsewhere. A square is the duty point of another condition.

                Left of its pressure peak a curve with a dip is shaded: the stall region. The band about the curve is the tolerance that \
                the part states.

                Colours: the bank's curve and the system curve of the case in front are thick. Other conditions have thin system curves, \
                and thin dashed bank curves where air density, supply or failed movers make a difference that can be seen.

                # Reading off
                - point at the chart: the values at that flow stand below it; a click keeps them
                - Ctrl with the left or right arrow moves the place, Home and End go from mark to mark, Esc lets go

                # Zoom
                - wheel, or + and -, about the mouse or the middle
                - drag, or arrows, to pan; drag with Shift for a rectangle
                - 0, or a double click, shows all; until then the zoom stays

                # Numbers
                - As a table lists marks and curves; copying takes picture or rows
                - Save chart as… writes SVG, PNG or CSV
                """;
    }

    @Override
    public View open(Composite parent, Desk desk) {
        return new DutyView(parent, desk, physics);
    }
}
