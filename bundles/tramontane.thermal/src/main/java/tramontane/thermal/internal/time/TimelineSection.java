package tramontane.thermal.internal.time;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.Amount;
import tramontane.analysis.SectionType;
import tramontane.analysis.Sentence;
import tramontane.model.Condition;
import tramontane.model.FailedMover;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Range;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.physics.units.QuantityKind;

/** What happens in the course of a condition: how it begins, and what changes when. */
@Component(service = SectionType.class)
public final class TimelineSection implements SectionType<TimelineSection.Timeline> {

    /** The section's name. */
    public static final String NAME = "timeline";

    private static final String COLD = "cold";
    private static final String SETTLED = "settled";

    /**
     * A timeline.
     *
     * @param duration         how long temperatures are followed, s
     * @param settled          whether it begins where the condition comes to rest
     * @param startTemperature temperature of all bodies at the beginning; that outside where not given
     * @param steps            what changes, in order of time
     */
    public record Timeline(Quantity duration, boolean settled, Optional<Quantity> startTemperature, List<Step> steps) {
        public Timeline {
            steps = List.copyOf(steps);
        }
    }

    /**
     * What changes at a time. Whatever it does not say stays as it was.
     *
     * @param at                 s from the beginning
     * @param heatFactor         factor on the heat of every source
     * @param heatFactors        factor on the heat of single sources; of those not named it stays
     * @param speed              speed setting; control laws no longer act then
     * @param outsideTemperature temperature outside, K
     * @param clogging           factor on the pressure drop of filters
     * @param supplyVoltage      V
     * @param failed             all movers that are out of order from then on; none where the list is empty
     */
    public record Step(Quantity at, Optional<Quantity> heatFactor, Map<String, Quantity> heatFactors, Optional<Quantity> speed,
            Optional<Quantity> outsideTemperature, Optional<Quantity> clogging, Optional<Quantity> supplyVoltage,
            Optional<List<FailedMover>> failed) {

        public Step {
            heatFactors = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(heatFactors));
            failed = failed.map(List::copyOf);
        }

        /** The condition that holds from then on. */
        public Condition after(Condition before) {
            Map<String, Quantity> factors = new LinkedHashMap<>(before.heatFactors());
            factors.putAll(heatFactors);
            return new Condition(before.id(), outsideTemperature.or(before::outsideTemperature), before.altitude(), before.pressure(),
                    before.humidity(), heatFactor.or(before::heatFactor), factors, clogging.or(before::clogging),
                    supplyVoltage.or(before::supplyVoltage), before.supplyFrequency(), speed.or(before::speed),
                    failed.orElse(before.failed()), before.more());
        }

        /** What changes, in words. */
        public Sentence words(Condition before) {
            List<Object> words = new ArrayList<>();
            failed.ifPresent(now -> {
                for (FailedMover.State state : FailedMover.State.values()) {
                    List<String> fresh = now.stream().filter(mover -> mover.state() == state && before.failed().stream()
                            .noneMatch(other -> other.state() == state && name(other).equals(name(mover)))).map(Step::name).toList();
                    say(words, fresh, switch (state) {
                        case LOCKED -> List.of(" fails", " fail");
                        case FREEWHEELING -> List.of(" fails and turns freely", " fail and turn freely");
                        case REMOVED -> List.of(" is taken out", " are taken out");
                    });
                }
                say(words, before.failed().stream().filter(mover -> now.stream().noneMatch(other -> name(other).equals(name(mover))))
                        .map(Step::name).toList(), List.of(" runs again", " run again"));
            });
            heatFactor.ifPresent(to -> words.addAll(List.of(", heat goes to ", new Amount(to.si(), QuantityKind.FRACTION))));
            heatFactors.forEach((source, to) -> words.addAll(List.of(", ", "heat of " + source + " goes to ",
                    new Amount(to.si(), QuantityKind.FRACTION))));
            speed.ifPresent(to -> words.addAll(List.of(", speed is set to ", new Amount(to.si(), QuantityKind.FRACTION))));
            outsideTemperature.ifPresent(to -> words.addAll(List.of(", outside comes to ", new Amount(to.si(), QuantityKind.TEMPERATURE))));
            clogging.ifPresent(to -> words.addAll(List.of(", filters clog to ", new Amount(to.si(), QuantityKind.NUMBER))));
            supplyVoltage.ifPresent(to -> words.addAll(List.of(", supply goes to ", new Amount(to.si(), QuantityKind.VOLTAGE))));
            if (words.isEmpty()) {
                return Sentence.of("nothing changes");
            }
            words.set(0, words.getFirst().toString().substring(2));
            return Sentence.of(words.toArray());
        }

        private static void say(List<Object> words, List<String> names, List<String> verbs) {
            if (!names.isEmpty()) {
                words.addAll(List.of(", ", names.size() == 1 ? names.getFirst() + verbs.getFirst()
                        : String.join(", ", names.subList(0, names.size() - 1)) + " and " + names.getLast() + verbs.getLast()));
            }
        }

        private static String name(FailedMover mover) {
            return mover.bank().orElse("") + " " + mover.position().map(String::valueOf).orElse("");
        }
    }

    private static final Form STEP = Form.of("step", "What changes at a time; whatever it does not say stays as it was.",
            Field.amount("at", "at", QuantityKind.TIME, Range.POSITIVE, "When, from the beginning.").mandatory(),
            like("heatFactor", "Factor on the heat of every source from then on."),
            like("heatFactors", "Factor on the heat of single sources from then on; of those not named it stays as it was."),
            like("speed", "Speed setting from then on; control laws no longer act then."),
            like("outsideTemperature", "Temperature of the air outside from then on."),
            like("clogging", "Factor on the pressure drop of filters from then on."),
            like("supplyVoltage", "Supply voltage of the movers from then on."),
            Field.parts("failed", "failed movers", FailedMover.FORM, "All movers that are out of order from then on, each with bank and"
                    + " position; an empty list where all run again."));

    private static final Form FORM = Form.of(NAME, "What happens in the course of a condition.",
            Field.amount("duration", "duration", QuantityKind.TIME, Range.POSITIVE, "How long temperatures are followed.").mandatory(),
            Field.choice("start", "start", List.of(COLD, SETTLED), "Cold: all bodies at the temperature outside. Settled: where the"
                    + " condition as stated comes to rest.").standard(COLD),
            Field.amount("startTemperature", "start temperature", QuantityKind.TEMPERATURE, Range.between(173.15, 473.15),
                    "Temperature of all bodies at the beginning; that outside where not given."),
            Field.parts("steps", "steps", STEP, "What changes when, in order of time."));

    /** A field of a condition, with nothing that holds where it is not given. */
    private static Field like(String name, String help) {
        Field field = Condition.FORM.field(name).orElseThrow();
        return new Field(name, field.label(), field.shape(), false, Optional.empty(), help);
    }

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Set<Owner> owners() {
        return Set.of(Owner.CONDITION);
    }

    @Override
    public List<Problem> check(Values values, String place) {
        List<Problem> problems = new ArrayList<>();
        if (values.text("start").equals(SETTLED) && values.has("startTemperature")) {
            problems.add(Problem.error(Problem.place(place, "startTemperature"), "is given although it starts settled; expected one of both"));
        }
        Optional<Quantity> duration = values.ifQuantity("duration");
        List<Values> steps = values.parts("steps");
        double before = 0;
        for (int i = 0; i < steps.size(); i++) {
            String step = Problem.place(place, "steps[" + i + "]");
            Optional<Quantity> at = steps.get(i).ifQuantity("at");
            if (at.isPresent() && duration.isPresent() && at.get().si() >= duration.get().si()) {
                problems.add(Problem.error(Problem.place(step, "at"), "is not before the end of the timeline; expected less than its duration"));
            }
            if (at.isPresent() && at.get().si() <= before) {
                problems.add(Problem.error(Problem.place(step, "at"), "is not later than the step before it; expected steps in order of time"));
            }
            before = at.map(Quantity::si).orElse(before);
            failed(steps.get(i), step, problems);
            nothing(steps.get(i), step, problems);
        }
        return problems;
    }

    private static void nothing(Values step, String place, List<Problem> problems) {
        if (step.has("at") && STEP.fields().stream().noneMatch(field -> !field.name().equals("at") && step.has(field.name()))) {
            problems.add(Problem.caution(place, "changes nothing; expected what changes then"));
        }
    }

    private static void failed(Values step, String place, List<Problem> problems) {
        Set<String> seen = new HashSet<>();
        List<Values> failed = step.parts("failed");
        for (int i = 0; i < failed.size(); i++) {
            String at = Problem.place(place, "failed[" + i + "]");
            Optional<String> bank = failed.get(i).ifText("bank");
            Optional<Integer> position = failed.get(i).ifWhole("position");
            if (bank.isEmpty() || position.isEmpty()) {
                problems.add(Problem.error(at, "does not say which mover fails; expected its bank and its position in it: \"any one\" is for"
                        + " the condition's own list"));
            } else if (!seen.add(bank.get() + " " + position.get())) {
                problems.add(Problem.error(at, "names mover " + position.get() + " of " + bank.get() + " again; expected each once"));
            }
        }
    }

    @Override
    public Timeline decode(Values values) {
        return new Timeline(values.ifQuantity("duration").orElseThrow(), values.text("start").equals(SETTLED),
                values.ifQuantity("startTemperature"), values.parts("steps").stream().map(TimelineSection::step).toList());
    }

    private static Step step(Values values) {
        return new Step(values.ifQuantity("at").orElseThrow(), values.ifQuantity("heatFactor"), values.byName("heatFactors"),
                values.ifQuantity("speed"), values.ifQuantity("outsideTemperature"), values.ifQuantity("clogging"),
                values.ifQuantity("supplyVoltage"), values.has("failed")
                        ? Optional.of(values.parts("failed").stream().map(TimelineSection::mover).toList()) : Optional.empty());
    }

    private static FailedMover mover(Values values) {
        FailedMover.State state = Arrays.stream(FailedMover.State.values()).filter(each -> each.word().equals(values.text("state")))
                .findFirst().orElse(FailedMover.State.LOCKED);
        return new FailedMover(values.ifText("bank"), values.ifWhole("position"), state);
    }

    @Override
    public Value.Tree encode(Timeline timeline) {
        Value.Tree tree = Value.Tree.EMPTY.with("duration", timeline.duration().written());
        if (timeline.settled()) {
            tree = tree.with("start", new Value.Text(SETTLED));
        }
        if (timeline.startTemperature().isPresent()) {
            tree = tree.with("startTemperature", timeline.startTemperature().get().written());
        }
        return timeline.steps().isEmpty() ? tree
                : tree.with("steps", new Value.Items(timeline.steps().stream().<Value>map(TimelineSection::tree).toList()));
    }

    private static Value.Tree tree(Step step) {
        Value.Tree tree = Value.Tree.EMPTY.with("at", step.at().written());
        tree = with(tree, "heatFactor", step.heatFactor());
        if (!step.heatFactors().isEmpty()) {
            Value.Tree factors = Value.Tree.EMPTY;
            for (Map.Entry<String, Quantity> factor : step.heatFactors().entrySet()) {
                factors = factors.with(factor.getKey(), factor.getValue().written());
            }
            tree = tree.with("heatFactors", factors);
        }
        tree = with(tree, "speed", step.speed());
        tree = with(tree, "outsideTemperature", step.outsideTemperature());
        tree = with(tree, "clogging", step.clogging());
        tree = with(tree, "supplyVoltage", step.supplyVoltage());
        return step.failed().isEmpty() ? tree : tree.with("failed", new Value.Items(step.failed().get().stream().<Value>map(mover ->
                Value.Tree.EMPTY.with("bank", new Value.Text(mover.bank().orElse("")))
                        .with("position", Value.Num.of(mover.position().orElse(1)))
                        .with("state", new Value.Text(mover.state().word()))).toList()));
    }

    private static Value.Tree with(Value.Tree tree, String name, Optional<Quantity> quantity) {
        return quantity.map(given -> tree.with(name, given.written())).orElse(tree);
    }
}
