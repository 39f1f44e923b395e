package tramontane.desktop.internal.pages;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tramontane.analysis.Better;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Result;
import tramontane.analysis.SectionType;
import tramontane.analysis.Severity;
import tramontane.analysis.Verdict;
import tramontane.desktop.Document;
import tramontane.desktop.Palette;
import tramontane.desktop.Results;
import tramontane.desktop.Scene;
import tramontane.model.Condition;
import tramontane.model.Consistency;
import tramontane.model.Design;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Shape;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.edit.Forms;
import tramontane.model.edit.Subject;
import tramontane.model.file.DesignFile;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

/** A design, an invented bundle's kinds and sections, and results to show. */
public final class Scenes {

    static final FigureKind FLOW = new FigureKind("airflow.bank.flow", "flow", QuantityKind.FLOW, Better.HIGHER, "Flow at the inlet of a bank.");

    /** A section whose second version has its only field in another unit's name. */
    static final class Dust implements SectionType<Double> {
        static final Form FORM = Form.of("dust", "Dust in the air that comes in.",
                Field.amount("load", "dust load", QuantityKind.DENSITY, Range.between(0, 0.01), "Dust per volume of air.").mandatory(),
                Field.yesNo("sticky", "sticky", "Whether it stays where it settles."),
                Field.parts("grains", "grains", Form.of("grain", "A size of grain.",
                        Field.amount("size", "size", QuantityKind.LENGTH, Range.POSITIVE, "Its size.").mandatory()), "Sizes of grain."));

        @Override
        public Form form() {
            return FORM;
        }

        @Override
        public Set<Owner> owners() {
            return Set.of(Owner.PASSAGE);
        }

        @Override
        public int version() {
            return 2;
        }

        @Override
        public Value.Tree migrate(Value.Tree tree, int version) {
            return tree.without("amount").with("load", tree.get("amount").orElse(Value.Num.of(0)));
        }

        @Override
        public Double decode(Values values) {
            return values.si("load");
        }

        @Override
        public Value.Tree encode(Double load) {
            return Value.Tree.EMPTY.with("load", Value.Num.of(load));
        }
    }

    public static final Known KNOWN = known();

    private static Known known() {
        Form bank = Form.of("bank", "Movers side by side.", Field.reference("mover", "air mover", Shape.Target.MOVER, "The part.").mandatory(),
                Field.whole("across", "across", 1, 20, "How many stand side by side.").standard(1),
                Field.amount("speed", "speed", QuantityKind.FRACTION, Range.PART_OF_ONE, "Its speed setting.").standard("100 %"),
                Field.yesNo("flaps", "flaps", "Whether it has flaps."));
        Form grille = Form.of("grille", "A grille.", Field.amount("freeArea", "free area", QuantityKind.AREA, Range.POSITIVE, "Its free area."));
        Form board = Form.of("board", "A board.", Field.whole("boards", "boards", 1, 100, "How many."));
        return new Known(new Forms(Map.of("bank", bank, "grille", grille), Map.of("board", board),
                Map.of(Subject.Kind.PASSAGE, Map.of("dust", Dust.FORM))), List.of(new Dust()), List.of(FLOW));
    }

    public static final String BOX = """
            {"format": 1, "name": "box", "equipment": {"width": 0.266},
             "airMovers": [{"id": "M", "type": "axial", "curves": [{"flow": "0 20 40 cfm", "pressure": [90, "60 Pa", 0], "power": "5 6 7 W"}]}],
             "airPath": {"bays": ["front", "rear"], "passages": [
               {"id": "grille", "kind": "grille", "from": "outside", "to": "front", "freeArea": "120.0 cm²", "tolerance": "20 %", "colour": "grey",
                "notes": "by the door", "sections": {"dust": {"amount": "1 g/cm³"}, "strange": {"a": [1, 2]}}},
               {"id": "slot", "kind": "slot", "from": "front", "to": "rear", "gap": "3 mm"},
               {"id": "fans", "kind": "bank", "from": "rear", "to": "outside", "mover": "M", "flaps": true}]},
             "heatSources": [{"id": "cpu", "power": "35 W", "into": ["front", {"place": "rear", "share": "20 %"}],
               "chain": [{"kind": "board", "boards": 3, "old": 1}], "limit": "85 °C"}],
             "conditions": [{"id": "mild"}, {"id": "hot", "outsideTemperature": "104 °F", "heatFactors": {"cpu": "120 %"}}],
             "mission": [{"condition": "mild", "timePerYear": "8000 h"}],
             "controlLaws": [{"id": "law", "sensor": "cpu", "banks": ["fans"], "temperature": "25 45 °C", "speed": "40 100 %"}],
             "requirements": [{"figure": "airflow.bank.flow", "place": "fans", "atLeast": "35 cfm", "conditions": ["hot"]}]}
            """;

    private Scenes() {
    }

    public static Design design(String json) {
        return DesignFile.parse(json).editable().orElseThrow();
    }

    public static Scene scene(Design design, UnitSystem units, Problem... problems) {
        Figure figure = new Figure(FLOW, "fans", "hot", 0.02, OptionalDouble.of(0.019), OptionalDouble.of(0.021));
        Verdict verdict = design.requirements().isEmpty() ? null : new Verdict(design.requirements().getFirst(), "hot", Severity.NOT_MET,
                Optional.of(figure), -0.001, "does not hold at fans");
        Evaluation evaluation = new Evaluation(design, List.of(new Engine.Case("mild", Condition.named("mild")),
                new Engine.Case("hot", Condition.named("hot"))),
                List.of(new Evaluation.Outcome("airflow", "hot", Evaluation.Status.COMPUTED, Result.of(1.0).with(figure))),
                List.of(Finding.caution("slot", "is narrow").in("hot")), verdict == null ? List.of() : List.of(verdict), false);
        List<Problem> all = new ArrayList<>(Consistency.check(design));
        all.addAll(List.of(problems));
        Document document = new Document("1", Optional.empty(), design, false, Optional.empty(), Optional.empty(), all);
        return new Scene(document, new Results(Optional.of(evaluation), Optional.empty(), false), "hot", Optional.empty(), Optional.empty(), units,
                Palette.LIGHT);
    }
}
