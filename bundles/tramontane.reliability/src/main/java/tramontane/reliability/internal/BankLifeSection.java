package tramontane.reliability.internal;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.Cases;
import tramontane.analysis.SectionType;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.Written;
import tramontane.model.edit.Subject;
import tramontane.reliability.BankLife;
import tramontane.reliability.BankLife.Axis;
import tramontane.reliability.BankLife.Solids;
import tramontane.reliability.BankLife.Water;
import tramontane.reliability.MoverLife;

/** What counts for the life of the movers of a bank. */
@Component(service = SectionType.class)
public final class BankLifeSection implements SectionType<BankLife> {

    private static final Form FORM = Form.of(MoverLife.SECTION, "Of a bank: what counts for the life of its movers.",
            Field.choice("shaft", "shafts lie along", Arrays.stream(Axis.values()).map(Axis::word).toList(),
                    "Along which edge of the upright equipment its shafts lie; with the attitude of the equipment it tells how they lie in use."),
            Field.whole("needed", "movers needed", 1, 1000,
                    "How many of its movers must run. Where not given that is found by letting them fail until a limit is passed."),
            Field.choice("failing", "a mover fails", Arrays.stream(FailedMover.State.values()).map(FailedMover.State::word).toList(),
                    "How a mover fails: locked, freewheeling, or removed.").standard(FailedMover.State.LOCKED.word()),
            Field.choice("solids", "solids", Solids.words(), "What solids reach its movers, where that differs from the rest of the equipment (IEC 60529)."),
            Field.choice("water", "water", Water.words(), "How water reaches its movers, where that differs from the rest of the equipment (IEC 60529)."));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Set<Owner> owners() {
        return Set.of(Owner.PASSAGE);
    }

    @Override
    public BankLife decode(Values v) {
        return new BankLife(MoverLifeSection.one(Axis.values(), Axis::word, v, "shaft"), v.ifWhole("needed"),
                MoverLifeSection.one(FailedMover.State.values(), FailedMover.State::word, v, "failing").orElse(FailedMover.State.LOCKED),
                MoverLifeSection.one(Solids.values(), Solids::word, v, "solids"), MoverLifeSection.one(Water.values(), Water::word, v, "water"));
    }

    @Override
    public List<Problem> check(Values values, Design design, String place) {
        Optional<Integer> positions = Subject.at(design, place).filter(subject -> subject.kind() == Subject.Kind.PASSAGE)
                .flatMap(subject -> subject.index(design).stream().boxed().findFirst()).map(index -> Cases.positions(design.airPath().passages().get(index)));
        return values.ifWhole("needed").filter(needed -> positions.filter(there -> needed > there).isPresent()).map(needed -> List.of(Problem.error(
                Problem.place(place, "needed"), "is " + needed + "; expected at most the " + positions.get() + " movers of the bank"))).orElse(List.of());
    }

    @Override
    public Value.Tree encode(BankLife life) {
        Written written = new Written().text("shaft", life.shaft().map(Axis::word)).whole("needed", life.needed());
        if (life.failing() != FailedMover.State.LOCKED) {
            written.text("failing", life.failing().word());
        }
        return written.text("solids", life.solids().map(Solids::word)).text("water", life.water().map(Water::word)).tree();
    }
}
