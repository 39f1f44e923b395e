package tramontane.model.edit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import tramontane.model.Design;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Range;
import tramontane.model.Shape;
import tramontane.model.Value;
import tramontane.model.file.DesignFile;
import tramontane.model.file.TreeFile;
import tramontane.physics.units.QuantityKind;

/** Designs whose parts fit together, made at random, and the forms of invented bundles that have names in all places. */
final class Designs {

    /** A bank, a passage and a link with names in them, and sections with names for most things. */
    static final Forms FORMS = forms();

    private static Forms forms() {
        Form bank = Form.of("bank", "Movers.",
                Field.reference("mover", "air mover", Shape.Target.MOVER, "The part.").mandatory(),
                Field.whole("across", "across", 1, 20, "Side by side."));
        Form grille = Form.of("grille", "A grille.",
                Field.amount("freeArea", "free area", QuantityKind.AREA, Range.POSITIVE, "Its free area."),
                Field.reference("beside", "beside", Shape.Target.PASSAGE, "Another passage."));
        Form clip = Form.of("clip", "A clip.", Field.reference("onto", "onto", Shape.Target.PLACE, "What it is clipped to."),
                Field.amount("resistance", "resistance", QuantityKind.THERMAL_RESISTANCE, Range.POSITIVE, "Its resistance."));
        Form near = Form.of("near", "What is near.", Field.references("places", "places", Shape.Target.PLACE, "Places."),
                Field.of("weights", "weights", new Shape.AmountsByName(QuantityKind.NUMBER, Range.ANY, Shape.Target.HEAT_SOURCE), "Weights."),
                Field.parts("laws", "laws", Form.of("entry", "An entry.",
                        Field.reference("law", "law", Shape.Target.CONTROL_LAW, "A law."),
                        Field.reference("case", "case", Shape.Target.CONDITION, "A condition.")), "law", "Laws."));
        Map<Subject.Kind, Map<String, Form>> sections = new LinkedHashMap<>();
        for (Subject.Kind kind : Subject.Kind.values()) {
            sections.put(kind, Map.of("near", near));
        }
        return new Forms(Map.of("bank", bank, "grille", grille), Map.of("clip", clip), sections);
    }

    private final Random random;
    private final List<String> bays = names("bay", 1, 4);
    private final List<String> passages = new ArrayList<>();
    private final List<String> sources;
    private final List<String> conditions;
    private final List<String> laws;
    private final List<String> movers;

    private Designs(Random random) {
        this.random = random;
        bays.subList(1 + random.nextInt(bays.size()), bays.size()).clear();
        for (int i = 0; i < bays.size() + random.nextInt(3); i++) {
            passages.add("passage " + (char) ('a' + i));
        }
        sources = names("source", 0, random.nextInt(4));
        conditions = names("case", 0, random.nextInt(4));
        laws = names("law", 0, random.nextInt(3));
        movers = names("mover", 1, 1 + random.nextInt(2));
    }

    private static List<String> names(String noun, int least, int count) {
        List<String> names = new ArrayList<>();
        for (int i = 0; i < Math.max(least, count); i++) {
            names.add(noun + " " + (char) ('a' + i));
        }
        return names;
    }

    /** A design without mistakes other than cautions. */
    static Design random(Random random) {
        Value.Tree tree = new Designs(random).design();
        Optional<Design> design = DesignFile.parse(TreeFile.write(tree)).editable();
        return design.orElseThrow(() -> new AssertionError(DesignFile.parse(TreeFile.write(tree)).problems()));
    }

    private static Value text(String text) {
        return new Value.Text(text);
    }

    private String one(List<String> names) {
        return names.get(random.nextInt(names.size()));
    }

    private String place() {
        return random.nextBoolean() ? one(bays) : one(passages);
    }

    private static Value.Items list(List<? extends Value> values) {
        return new Value.Items(List.copyOf(values));
    }

    private Value.Tree strange(Value.Tree tree) {
        Value.Tree changed = tree;
        if (random.nextInt(3) == 0) {
            changed = changed.with("strange " + random.nextInt(5), random.nextBoolean() ? new Value.Num("1.50")
                    : list(List.of(text(one(bays)), new Value.Nothing())));
        }
        if (random.nextInt(3) == 0) {
            Value.Tree near = Value.Tree.EMPTY.with("places", list(List.of(text(place()))));
            near = sources.isEmpty() ? near : near.with("weights", Value.Tree.EMPTY.with(one(sources), text("2")));
            if (!laws.isEmpty()) {
                List<Value> entries = new ArrayList<>(List.of(text(one(laws))));
                if (!conditions.isEmpty()) {
                    entries.add(Value.Tree.EMPTY.with("law", text(one(laws))).with("case", text(one(conditions))));
                }
                near = near.with("laws", list(entries));
            }
            changed = changed.with("sections", Value.Tree.EMPTY.with("other", Value.Tree.EMPTY.with("x", text(one(bays)))).with("near", near));
        }
        return changed;
    }

    private Value.Tree design() {
        Value.Tree path = Value.Tree.EMPTY;
        List<Value> bayList = new ArrayList<>();
        bays.forEach(bay -> bayList.add(random.nextBoolean() ? text(bay) : strange(Value.Tree.EMPTY.with("id", text(bay)).with("height", text("30 cm")))));
        List<Value> passageList = new ArrayList<>();
        for (int i = 0; i < passages.size(); i++) {
            String from = i == 0 || i >= bays.size() ? "outside" : bays.get(random.nextInt(i));
            String to = i < bays.size() ? bays.get(i) : one(bays);
            Value.Tree passage = Value.Tree.EMPTY.with("id", text(passages.get(i))).with("kind", text(i % 2 == 0 ? "grille" : "bank"))
                    .with("from", text(from)).with("to", text(to));
            passage = i % 2 == 0 ? passage.with("freeArea", text("120 cm²")).with("beside", text(one(passages)))
                    : passage.with("mover", text(one(movers))).with("across", Value.Num.of(2));
            passageList.add(strange(passage));
        }
        path = path.with("bays", list(bayList)).with("passages", list(passageList));
        if (random.nextBoolean()) {
            path = path.with("layout", Value.Tree.EMPTY.with(one(bays), list(List.of(Value.Num.of(1), Value.Num.of(2)))));
        }
        List<Value> sourceList = new ArrayList<>();
        for (String source : sources) {
            sourceList.add(strange(Value.Tree.EMPTY.with("id", text(source)).with("power", text("35.0 W"))
                    .with("into", list(List.of(random.nextBoolean() ? text(place()) : Value.Tree.EMPTY.with("place", text(place())))))
                    .with("chain", list(List.of(Value.Tree.EMPTY.with("kind", text("clip")).with("onto", text(place()))
                            .with("resistance", text("2 K/W")))))));
        }
        List<Value> conditionList = new ArrayList<>();
        for (String condition : conditions) {
            Value.Tree tree = Value.Tree.EMPTY.with("id", text(condition)).with("outsideTemperature", text("55 °C"));
            tree = sources.isEmpty() ? tree : tree.with("heatFactors", Value.Tree.EMPTY.with(one(sources), text("120 %")));
            tree = passages.size() < 2 ? tree : tree.with("failed", list(List.of(Value.Tree.EMPTY.with("bank", text(passages.get(1)))
                    .with("position", text("any one")).with("state", text("locked")))));
            conditionList.add(strange(tree));
        }
        List<Value> lawList = new ArrayList<>();
        for (String law : laws) {
            lawList.add(strange(Value.Tree.EMPTY.with("id", text(law)).with("sensor", text(sources.isEmpty() || random.nextBoolean() ? place() : one(sources)))
                    .with("banks", list(passages.size() < 2 ? List.of() : List.of(text(passages.get(1)))))
                    .with("temperature", text("25 45 °C")).with("speed", text("40 100 %"))));
        }
        List<Value> moverList = new ArrayList<>();
        for (String mover : movers) {
            moverList.add(strange(Value.Tree.EMPTY.with("id", text(mover)).with("curves", list(List.of(Value.Tree.EMPTY
                    .with("flow", text("0 20 40 cfm")).with("pressure", text("90 60 0 Pa")))))));
        }
        List<Value> missionList = conditions.isEmpty() ? List.of()
                : List.of(strange(Value.Tree.EMPTY.with("condition", text(one(conditions))).with("timePerYear", text("2000 h"))));
        Value.Tree required = Value.Tree.EMPTY.with("figure", text("airflow.bank.flow")).with("place", text(place())).with("atLeast", text("35 cfm"));
        required = conditions.isEmpty() ? required : required.with("conditions", list(List.of(text(one(conditions)))));
        return strange(Value.Tree.EMPTY.with("format", Value.Num.of(1)).with("name", text("a design"))
                .with("equipment", strange(Value.Tree.EMPTY.with("name", text("box")).with("width", text("483 mm"))))
                .with("airMovers", list(moverList)).with("airPath", path).with("heatSources", list(sourceList))
                .with("conditions", list(conditionList)).with("mission", list(missionList)).with("controlLaws", list(lawList))
                .with("requirements", list(List.of(strange(required)))));
    }
}
