package tramontane.selection.internal;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import org.osgi.service.component.annotations.ReferenceCardinality;
import org.osgi.service.component.annotations.ReferencePolicyOption;
import tramontane.analysis.Engine;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.SpeedLaws;
import tramontane.analysis.Table;
import tramontane.selection.Candidate;
import tramontane.selection.FigureBound;
import tramontane.selection.Selection;
import tramontane.selection.Selector;
import tramontane.selection.Task;
import tramontane.selection.Watch;

/** Chooses with the engine, the speed laws and the bounds of figures that are loaded. */
@Component(service = Selector.class)
public final class SelectorComponent implements Selector {

    private final Engine engine;
    private final List<SpeedLaw> laws;
    private final Map<String, FigureBound> bounds = new HashMap<>();

    @Activate
    public SelectorComponent(@Reference Engine engine,
            @Reference(cardinality = ReferenceCardinality.MULTIPLE, policyOption = ReferencePolicyOption.GREEDY, service = SpeedLaw.class)
            List<Map.Entry<Map<String, Object>, SpeedLaw>> laws,
            @Reference(cardinality = ReferenceCardinality.MULTIPLE, policyOption = ReferencePolicyOption.GREEDY)
            List<FigureBound> bounds) {
        this.engine = engine;
        this.laws = SpeedLaws.ranked(laws);
        bounds.forEach(bound -> this.bounds.putIfAbsent(bound.figure(), bound));
    }

    @Override
    public Selection choose(Task task, Watch watch) {
        return new CandidateSearch(engine, laws, bounds, task, watch).run();
    }

    @Override
    public List<Table> compare(Task task, List<Candidate> candidates) {
        return Comparing.of(task, candidates.stream().map(candidate -> candidate.withEvaluation(engine.evaluate(
                Engine.Request.all(candidate.design()), Engine.Watch.NONE))).toList(), Scoring.of(engine, task.bank(), task.weights(), Optional.empty()).criteria());
    }
}
