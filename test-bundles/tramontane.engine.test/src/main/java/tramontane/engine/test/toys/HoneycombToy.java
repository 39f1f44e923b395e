package tramontane.engine.test.toys;

import java.util.Set;
import org.osgi.framework.BundleActivator;
import org.osgi.framework.BundleContext;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Exporter;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.LinkKind;
import tramontane.analysis.LinkLaw;
import tramontane.analysis.PassageKind;
import tramontane.analysis.SectionType;
import tramontane.model.Design;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Range;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.physics.units.QuantityKind;

/** A kind of passage, a kind of link, a section and an exporter of somebody else's. */
public final class HoneycombToy implements BundleActivator {

    /** The section's data. */
    public record Cells(double diameter) {
    }

    private static final Form FORM = Form.of("honeycomb", "A flow straightener of round cells.",
            Field.amount("area", "open area", QuantityKind.AREA, Range.POSITIVE, "Open area of all cells.").mandatory(),
            Field.amount("cell", "cell diameter", QuantityKind.LENGTH, Range.POSITIVE, "Diameter of a cell.").standard("3 mm"),
            Field.amount("length", "length", QuantityKind.LENGTH, Range.POSITIVE, "Length of a cell.").mandatory());
    private static final Form LINK = Form.of("heat pipe", "A heat pipe between two plates.",
            Field.amount("resistance", "resistance", QuantityKind.THERMAL_RESISTANCE, Range.POSITIVE, "Between its ends.")
                    .mandatory());
    private static final Form SECTION = Form.of("cells", "What the toy keeps of its own.",
            Field.amount("diameter", "diameter", QuantityKind.LENGTH, Range.POSITIVE, "Diameter.").mandatory());

    @Override
    public void start(BundleContext context) {
        context.registerService(PassageKind.class, new Honeycomb(), null);
        context.registerService(LinkKind.class, new HeatPipe(), null);
        context.registerService(SectionType.class, new CellsSection(), null);
        context.registerService(Exporter.class, new CellList(), null);
    }

    @Override
    public void stop(BundleContext context) {
        // the framework takes the services back
    }

    /** The kind of passage. */
    static final class Honeycomb implements PassageKind {

        @Override
        public Form form() {
            return FORM;
        }

        @Override
        public FlowLaw law(Values values, Setting setting) {
            double area = values.si("area");
            double cell = values.si("cell");
            double length = values.si("length");
            return (flow, density, viscosity, drop) -> {
                double linear = 32 * viscosity * length / (cell * cell * area);
                drop.set(linear * flow, linear);
            };
        }
    }

    /** The kind of link. */
    static final class HeatPipe implements LinkKind {

        @Override
        public Form form() {
            return LINK;
        }

        @Override
        public Step step() {
            return Step.SPREADING;
        }

        @Override
        public LinkLaw law(Values values, Setting setting) {
            double resistance = values.si("resistance");
            return (air, beyond) -> resistance;
        }
    }

    /** The exporter. */
    static final class CellList implements Exporter {

        @Override
        public String id() {
            return "toy.cells";
        }

        @Override
        public String label() {
            return "conditions, a line each";
        }

        @Override
        public String ending() {
            return "txt";
        }

        @Override
        public Exported write(Design design, Evaluation evaluation, Values settings) {
            StringBuilder lines = new StringBuilder();
            evaluation.cases().forEach(each -> lines.append(each.concrete().id()).append('\n'));
            return Exported.of(lines.toString());
        }
    }

    /** The section. */
    static final class CellsSection implements SectionType<Cells> {

        @Override
        public Form form() {
            return SECTION;
        }

        @Override
        public Set<Owner> owners() {
            return Set.of(Owner.DESIGN);
        }

        @Override
        public Cells decode(Values values) {
            return new Cells(values.si("diameter"));
        }

        @Override
        public Value.Tree encode(Cells section) {
            return Value.Tree.EMPTY.with("diameter", Value.Num.of(section.diameter()));
        }
    }
}
