package tramontane.reliability.cli.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import tramontane.analysis.Chart;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.reliability.charts.LifeCharts;
import tramontane.reliability.cli.internal.Evaluated.Answer;
import tramontane.reliability.cli.internal.Evaluated.Estimate;
import tramontane.reliability.statistics.Acceleration;
import tramontane.reliability.statistics.Bounds;
import tramontane.reliability.statistics.LifeData;
import tramontane.reliability.statistics.LifeTable;
import tramontane.reliability.statistics.MedianRanks;
import tramontane.reliability.statistics.PlotPoint;
import tramontane.reliability.statistics.Quantity;
import tramontane.reliability.statistics.Turnbull;
import tramontane.report.ChartColours;
import tramontane.report.ChartSvg;

/** The probability plot of a life test. */
final class TestChart {

    static final int WIDTH = 900;
    static final int HEIGHT = 600;
    private static final int STEPS = 24;

    private TestChart() {
    }

    static String svg(String name, Evaluated evaluated) {
        return ChartSvg.of(chart(name, evaluated), UnitSystem.METRIC, WIDTH, HEIGHT, ChartColours.LIGHT);
    }

    static Chart chart(String name, Evaluated evaluated) {
        List<LifeCharts.Observed> observed = new ArrayList<>();
        List<LifeCharts.Fit> fits = new ArrayList<>();
        Optional<Estimate> first = evaluated.answers().stream().filter(each -> !each.estimates().isEmpty()).map(Answer::best).findFirst();
        boolean predicted = evaluated.answers().size() == 1 && evaluated.answers().getFirst().points().isEmpty() && evaluated.effect()
                .isPresent();
        if (predicted) {
            Acceleration law = evaluated.effect().get().acceleration();
            for (LifeTable.Group group : evaluated.groups()) {
                if (group.data().failures() == 0) {
                    continue;
                }
                String where = where(group);
                observed.add(observed(where, points(group.data())));
                fits.add(new LifeCharts.Fit("law " + where, group.speed().isPresent() ? law.at(group.temperature().orElseThrow(),
                        group.speed().getAsDouble()).distribution() : law.at(group.temperature().orElseThrow()).distribution()));
            }
        }
        for (Answer answer : evaluated.answers()) {
            String where = answer.where().isEmpty() ? "" : " " + Cells.small(answer.where());
            if (!answer.points().isEmpty()) {
                observed.add(observed("failed" + where, answer.points()));
            }
            if (!answer.estimates().isEmpty()) {
                fits.add(fit(answer.best(), answer.best().family().word() + where, evaluated.question()));
            }
        }
        return LifeCharts.probability("Life test " + (name.contains("/") ? name.substring(name.lastIndexOf('/') + 1) : name),
                Evaluated.scale(first.map(Estimate::family)
                .orElse(evaluated.question().families().getFirst())), observed, fits);
    }

    private static String where(LifeTable.Group group) {
        return "at " + Cells.text(group.temperature().orElseThrow(), QuantityKind.TEMPERATURE) + (group.speed().isPresent() ? ", "
                + Cells.text(group.speed().getAsDouble(), QuantityKind.ROTATIONAL_SPEED) : "");
    }

    private static List<PlotPoint> points(LifeData data) {
        return data.failures() == 0 ? List.of() : data.exact() ? MedianRanks.of(data, MedianRanks.Method.BENARD).points()
                : Turnbull.of(data).points();
    }

    private static LifeCharts.Observed observed(String name, List<PlotPoint> points) {
        return LifeCharts.Observed.of(name, points.stream().mapToDouble(PlotPoint::time).toArray(), points.stream()
                .mapToDouble(PlotPoint::failed)
                .toArray());
    }

    private static LifeCharts.Fit fit(Estimate estimate, String name, Question question) {
        LifeCharts.Fit fit = new LifeCharts.Fit(name, estimate.distribution());
        if (estimate.bounds().isEmpty()) {
            return fit;
        }
        double low = Math.log(-Math.log1p(-0.01));
        double high = Math.log(-Math.log1p(-0.99));
        List<double[]> all = IntStream.rangeClosed(0, STEPS).mapToDouble(i -> -Math.expm1(-Math.exp(low + (high - low) * i / STEPS)))
                .mapToObj(failed -> {
            Bounds bounds = estimate.of(Quantity.life(failed));
            return new double[] {failed, bounds.lower(), bounds.upper()};
        }).filter(each -> each[1] > 0 && each[2] < 1e300).toList();
        return all.size() < 2 ? fit : fit.with("bounds at " + Cells.stated(question.confidence()), column(all, 0), column(all, 1),
                column(all, 2));
    }

    private static double[] column(List<double[]> rows, int column) {
        return rows.stream().mapToDouble(row -> row[column]).toArray();
    }
}
