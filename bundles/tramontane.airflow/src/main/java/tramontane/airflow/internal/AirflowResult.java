package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tramontane.airflow.AirPathModel;
import tramontane.airflow.AirPathSolution;
import tramontane.airflow.AirPathSolver;
import tramontane.airflow.Feed;
import tramontane.airflow.NetworkSolver;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.SpeedLaws;
import tramontane.model.Design;

/** Makes what {@link tramontane.airflow.AirflowStudy} gives. */
public final class AirflowResult {

    private AirflowResult() {
    }

    /** See {@link tramontane.airflow.AirflowStudy#figures}. */
    public static List<FigureKind> figures() {
        return Figures.ALL;
    }

    /** See {@link tramontane.airflow.AirflowStudy#reads}. */
    public static Design reads(Design design, List<? extends SpeedLaw> laws) {
        return Design.EMPTY.withAirPath(design.airPath()).withAirMovers(design.airMovers())
                .withHeatSources(design.heatSources()).withConditions(design.conditions())
                .withRequirements(design.requirements().stream()
                        .filter(requirement -> Set.of(Figures.AIR_RISE.id(), Figures.STALL_MARGIN.id()).contains(requirement.figure()))
                        .toList())
                .withMore(SpeedLaws.read(design, laws));
    }

    /** See {@link tramontane.airflow.AirflowStudy#figures(Design, AirPathModel, List, Map, AirPathSolution)}. */
    public static List<Figure> figures(Design design, AirPathModel model, List<? extends SpeedLaw> laws, Map<String, Feed> feeds,
            AirPathSolution solution) {
        if (!model.obstacles().isEmpty() || solution.point().isEmpty()) {
            return List.of();
        }
        Map<String, Double> speeds = model.speeds(laws, feeds);
        return new AirflowReading(design, model, model.at(speeds), List.copyOf(laws), Map.copyOf(feeds), speeds, solution, true, Map.of()).figures();
    }

    /** See {@link tramontane.airflow.AirflowStudy#of}; {@code followed} says whether the caller follows the heat, too. */
    public static Result<OperatingPoint> of(Design design, AirPathModel model, List<? extends SpeedLaw> laws,
            Map<String, Feed> feeds, double[] temperatures, Optional<AirPathSolution> start, boolean followed, Run run) {
        if (!model.obstacles().isEmpty()) {
            return Result.notComputed(model.obstacles().toArray(Finding[]::new));
        }
        Map<String, Double> speeds = model.speeds(laws, feeds);
        AirPathSolver solver = model.at(speeds);
        AirPathSolution solution = run.brief() ? start.map(before -> solver.near(temperatures, before, run::cancelled))
                .filter(there -> there.network().isPresent()).orElseGet(() -> solver.reached(temperatures, run::cancelled))
                : start.map(before -> solver.follow(temperatures, before, run::cancelled))
                .orElseGet(() -> solver.solve(temperatures, NetworkSolver.Settings.STANDARD, Optional.empty(), run::cancelled));
        run.check();
        if (solution.point().isEmpty()) {
            return Result.notComputed(solution.obstacles().toArray(Finding[]::new));
        }
        AirflowReading reading = new AirflowReading(design, model, solver, List.copyOf(laws), Map.copyOf(feeds), speeds, solution,
                start.isPresent(), Map.of());
        Variations variations = Variations.of(reading, run);
        if (run.trace().recording()) {
            AirflowSteps.record(reading, run.trace());
            PathSteps.record(reading, variations, run.trace());
        }
        List<Figure> figures = new ArrayList<>(variations.bands().figures());
        variations.lessPressure().forEach((bank, flow) -> figures.add(Figure.of(Figures.LESS_PRESSURE, bank, flow)));
        variations.morePressure().forEach((bank, flow) -> figures.add(Figure.of(Figures.MORE_PRESSURE, bank, flow)));
        List<Finding> findings = new ArrayList<>(AirflowFindings.of(reading, followed));
        findings.addAll(PathFindings.of(reading, variations));
        return new Result<>(solution.point().map(point -> point.withSettings(bank -> Optional.ofNullable(feeds.get(bank)).orElseGet(() -> model.feed(bank)).setting())), figures,
                findings);
    }
}
