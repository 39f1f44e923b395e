package tramontane.reliability.internal;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.Sections;
import tramontane.model.AirMover;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.reliability.LifeModel;
import tramontane.reliability.MoverLife;
import tramontane.selection.Arrangement;
import tramontane.selection.FigureBound;

/**
 * Says beforehand how long movers live at most: no air at a mover is colder than outside, and none turns slower than by the reduced design.
 */
@Component(service = FigureBound.class)
public final class LifeBound implements FigureBound {

    @Override
    public String figure() {
        return Figures.L10.id();
    }

    @Override
    public Bound of(Design design, String bank) {
        return new Longest(design);
    }

    private static final class Longest implements Bound {

        private final boolean alone;
        private final Map<String, Double> outside;
        private final Map<AirMover, Optional<LifeModel>> models = Collections.synchronizedMap(new IdentityHashMap<>());

        Longest(Design design) {
            this.alone = design.airPath().banks().size() == 1;
            this.outside = design.workingConditions().stream().collect(Collectors.toUnmodifiableMap(Condition::id, Condition::temperature, (one, other) -> one));
        }

        @Override
        public Best best(AirMover part, Arrangement arrangement, List<Duty> duties) {
            Optional<LifeModel> model = models.computeIfAbsent(part, mover -> Sections.decode(Scene.MOVER, mover)
                    .flatMap((Function<MoverLife, Optional<LifeModel>>) life -> LifeModel.of(mover, life, Optional.of(1.0))));
            if (model.isEmpty()) {
                return alone ? Best.MISSING : Best.OPEN;
            }
            if (model.get().life().law() == MoverLife.Law.HANDBOOK) {
                return Best.OPEN; // its bearings live longest in mild air, its rate goes in steps
            }
            double least = Double.POSITIVE_INFINITY;
            for (Duty duty : duties) {
                Double temperature = outside.get(duty.condition());
                if (temperature != null && duty.speed() > 0) {
                    least = Math.min(least, model.get().at(model.get().nominal(), temperature, duty.speed()).distribution().life(0.1));
                }
            }
            return Double.isFinite(least) ? Best.of(least) : Best.OPEN;
        }
    }
}
