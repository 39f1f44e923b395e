package tramontane.thermal.internal.links;

import java.util.ArrayList;
import java.util.List;
import tramontane.analysis.AirStream;
import tramontane.analysis.LinkKind;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Relation;
import tramontane.analysis.Trace;
import tramontane.physics.units.QuantityKind;

/** What goes into a link's resistance, for who asks. */
final class Inputs {

    private final LinkKind.Setting setting;
    private final List<Trace.Term> terms = new ArrayList<>();

    private Inputs(LinkKind.Setting setting) {
        this.setting = setting;
    }

    static Inputs of(LinkKind.Setting setting) {
        return new Inputs(setting);
    }

    /** A value of the link itself. */
    Inputs add(String name, QuantityKind quantity, double value) {
        terms.add(new Trace.Term(name, quantity, value, "heat source " + setting.source().id()));
        return this;
    }

    Inputs number(String name, double value) {
        return add(name, QuantityKind.NUMBER, value);
    }

    Inputs count(String name, int value) {
        return add(name, QuantityKind.COUNT, value);
    }

    Inputs length(String name, double value) {
        return add(name, QuantityKind.LENGTH, value);
    }

    Inputs area(String name, double value) {
        return add(name, QuantityKind.AREA, value);
    }

    Inputs conductivity(String name, double value) {
        return add(name, QuantityKind.CONDUCTIVITY, value);
    }

    Inputs coefficient(String name, double value) {
        return add(name, QuantityKind.HEAT_TRANSFER, value);
    }

    /** A flow at the place of the source. */
    Inputs flow(String name, double value) {
        return ofPlace(name, QuantityKind.FLOW, value);
    }

    /** A velocity at the place of the source. */
    Inputs velocity(String name, double value) {
        return ofPlace(name, QuantityKind.VELOCITY, value);
    }

    /** What relations of moving air take of it. */
    Inputs air(AirStream air) {
        return ofPlace("conductivity of the air", QuantityKind.CONDUCTIVITY, air.conductivity())
                .ofPlace("density of the air", QuantityKind.DENSITY, air.density())
                .ofPlace("viscosity of the air", QuantityKind.VISCOSITY, air.viscosity())
                .ofPlace("Prandtl number", QuantityKind.NUMBER, air.prandtl());
    }

    /** The pressure of the condition over that at sea level. */
    Inputs thinAir() {
        terms.add(new Trace.Term("pressure over that at sea level", QuantityKind.NUMBER, Place.thinness(setting.condition()),
                "condition " + setting.condition().id()));
        return this;
    }

    private Inputs ofPlace(String name, QuantityKind quantity, double value) {
        terms.add(new Trace.Term(name, quantity, value, Place.of(setting).name()));
        return this;
    }

    PassageKind.Origin of(Relation relation) {
        return new PassageKind.Origin(relation, terms);
    }
}
