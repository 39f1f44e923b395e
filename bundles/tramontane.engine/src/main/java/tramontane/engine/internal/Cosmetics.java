package tramontane.engine.internal;

import java.util.List;
import java.util.function.UnaryOperator;
import tramontane.model.AirMover;
import tramontane.model.AirPath;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.ControlLaw;
import tramontane.model.Design;
import tramontane.model.Equipment;
import tramontane.model.HeatSource;
import tramontane.model.Link;
import tramontane.model.MoverCurve;
import tramontane.model.Passage;
import tramontane.model.Requirement;
import tramontane.model.Value;

/** Takes out of a design what only people read: notes, positions in diagrams, titles. No result may depend on it. */
final class Cosmetics {

    private Cosmetics() {
    }

    /** The design without notes, layout, its own name and that of its equipment. */
    static Design strip(Design design) {
        return new Design("", equipment(design.equipment()), each(design.airMovers(), Cosmetics::mover),
                new AirPath(each(design.airPath().bays(), bay -> new Bay(bay.id(), bay.height(), bare(bay.more()))),
                        each(design.airPath().passages(), passage -> passage.withParameters(bare(passage.parameters()))),
                        bare(design.airPath().more())),
                each(design.heatSources(), source -> new HeatSource(source.id(), source.power(), source.tolerance(), source.into(),
                        source.row(), source.wake(), each(source.chain(), Cosmetics::link), source.limit(),
                        bare(source.more()))),
                each(design.conditions(), Cosmetics::condition), design.mission(),
                each(design.controlLaws(), law -> new ControlLaw(law.id(), law.sensor(), law.banks(), law.temperature(),
                        law.speed(), law.hysteresis(), law.riseLimit(), law.fallLimit(), bare(law.more()))),
                each(design.requirements(), requirement -> new Requirement(requirement.figure(), requirement.place(),
                        requirement.atLeast(), requirement.atMost(), requirement.conditions(), bare(requirement.more()))),
                bare(design.more()));
    }

    /** The condition without notes and layout. */
    static Condition condition(Condition condition) {
        return new Condition(condition.id(), condition.outsideTemperature(), condition.altitude(), condition.pressure(),
                condition.humidity(), condition.heatFactor(), condition.heatFactors(), condition.clogging(),
                condition.supplyVoltage(), condition.supplyFrequency(), condition.speed(), condition.failed(),
                bare(condition.more()));
    }

    private static Equipment equipment(Equipment equipment) {
        return new Equipment("", equipment.width(), equipment.height(), equipment.depth(), equipment.attitude(),
                equipment.place(), bare(equipment.more()));
    }

    private static AirMover mover(AirMover mover) {
        return new AirMover(mover.id(), mover.maker(), mover.type(), mover.width(), mover.height(), mover.depth(),
                mover.rotorDiameter(), mover.openArea(), mover.ratedSpeed(), mover.motor(), mover.noLoadSpeed(),
                mover.category(), mover.lockedLoss(), mover.freewheelingLoss(), mover.ratedPower(), mover.fixedLoss(), mover.datasheet(),
                each(mover.curves(), Cosmetics::curve),
                bare(mover.more()));
    }

    private static Link link(Link link) {
        return new Link(link.kind(), link.tolerance(), link.heatCapacity(), bare(link.parameters()));
    }

    private static MoverCurve curve(MoverCurve curve) {
        return new MoverCurve(curve.speed(), curve.voltage(), curve.frequency(), curve.density(), curve.rotorDiameter(),
                curve.flow(), curve.pressure(), curve.power(), curve.tolerance(), bare(curve.more()));
    }

    private static Value.Tree bare(Value.Tree more) {
        return more.without("notes").without("layout");
    }

    private static <T> List<T> each(List<T> list, UnaryOperator<T> change) {
        return list.stream().map(change).toList();
    }
}
