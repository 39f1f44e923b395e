package tramontane.reliability.cli.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import tramontane.analysis.Chart;
import tramontane.analysis.Engine;
import tramontane.analysis.SectionType;
import tramontane.analysis.SectionType.Owner;
import tramontane.analysis.Sections;
import tramontane.model.AirMover;
import tramontane.model.Design;
import tramontane.physics.units.QuantityKind;
import tramontane.reliability.LifeModel;
import tramontane.reliability.LifeState;
import tramontane.reliability.LifeState.BankState;
import tramontane.reliability.LifeState.MoverState;
import tramontane.reliability.MissionLife;
import tramontane.reliability.MoverLife;
import tramontane.reliability.ServiceLife;
import tramontane.reliability.SystemLife;
import tramontane.reliability.bearing.SmallMotor;
import tramontane.reliability.charts.DesignCharts;
import tramontane.reliability.charts.LifeCharts;

/** Charts of the lives of a design. */
final class LivesOfDesign {

    private static final int STEPS = 60;
    /** Degrees drawn on either side of what occurs, K. */
    private static final double MARGIN = 10;
    private static final double TENTH = 0.1;
    /** Kelvin, and share of speed. */
    private static final double ALIKE = 0.01;

    private final Design design;
    private final Engine engine;

    LivesOfDesign(Design design, Engine engine) {
        this.design = design;
        this.engine = engine;
    }

    /** What a section of the life of something says. */
    private <T> Optional<T> section(Owner owner, Class<T> type, java.util.function.Function<SectionType<?>, Optional<?>> decode) {
        return engine.sectionTypes().stream().filter(each -> each.form().name().equals(MoverLife.SECTION) && each.owners().contains(owner))
                .flatMap(each -> decode.apply(each).stream()).filter(type::isInstance).map(type::cast).findFirst();
    }

    private ServiceLife service() {
        return section(Owner.DESIGN, ServiceLife.class, type -> Sections.decode(type, design)).orElse(ServiceLife.NONE);
    }

    /** Survival over the years, with visits where the design has them. */
    Chart survival(SystemLife life, double serviceLife) {
        return DesignCharts.survival(life, serviceLife, service().interval());
    }

    private String title() {
        return design.name().isBlank() ? "the design" : design.name();
    }

    /** A mover in a condition. */
    private record Placed(String condition, BankState bank, MoverState mover) {
    }

    /** Of cases that are alike, such as which one of six like movers has failed, the first is marked. */
    private static void add(List<Placed> placed, Placed next) {
        if (placed.stream().noneMatch(each -> each.bank().bank().equals(next.bank().bank()) && Math.abs(each.mover().temperature()
                - next.mover().temperature()) < ALIKE && Math.abs(each.mover().speed() / next.mover().speed() - 1) < ALIKE)) {
            placed.add(next);
        }
    }

    /** Life against temperature; empty where no mover runs. */
    Optional<Chart> temperature(Map<String, LifeState> states) {
        List<Placed> placed = new ArrayList<>();
        states.forEach((condition, state) -> state.banks().forEach(bank -> bank.worst().ifPresent(mover -> add(placed, new Placed(condition,
                bank, mover)))));
        Map<String, LifeModel> models = models();
        Map<String, List<Placed>> parts = new LinkedHashMap<>();
        placed.stream().filter(each -> models.containsKey(each.bank().part())).forEach(each -> parts.computeIfAbsent(each.bank().part(),
                key -> new ArrayList<>()).add(each));
        if (parts.isEmpty()) {
            return Optional.empty();
        }
        double low = placed.stream().mapToDouble(each -> each.mover().temperature()).min().orElseThrow();
        double high = placed.stream().mapToDouble(each -> each.mover().temperature()).max().orElseThrow();
        OptionalDouble rated = parts.keySet().stream().map(models::get).map(LivesOfDesign::known).flatMap(Optional::stream)
                .mapToDouble(each -> each).min();
        double from = Math.min(low, rated.orElse(low)) - MARGIN;
        double to = Math.max(high, rated.orElse(high)) + MARGIN;
        List<LifeCharts.Curve> curves = new ArrayList<>();
        parts.forEach((part, at) -> curves.add(curve(part, models.get(part), at.getFirst().mover().speed(), from, to)));
        boolean several = placed.stream().map(each -> each.bank().bank()).distinct().count() > 1;
        List<LifeCharts.Condition> conditions = placed.stream().map(each -> new LifeCharts.Condition(each.condition() + (several ? ", "
                + each.bank().bank() : ""), each.mover().temperature(), each.mover().spread().value(lives -> lives.life(TENTH)))).sorted(
                Comparator.comparingDouble(LifeCharts.Condition::temperature)).toList();
        return Optional.of(LifeCharts.temperature("Life by temperature: " + title(), "life L10", curves, rated, conditions));
    }

    /** The temperature below which a life is extrapolated. */
    private static Optional<Double> known(LifeModel model) {
        return model.life().testedAt().or(model::ratedAt).filter(at -> model.ratedAt().isPresent());
    }

    private Map<String, LifeModel> models() {
        double year = design.mission().isEmpty() ? MissionLife.YEAR : design.mission().stream().mapToDouble(phase -> phase.timePerYear()
                .si()).sum();
        Optional<Double> running = service().serviceLife().map(life -> life * year / MissionLife.YEAR).filter(time -> time > 0);
        Map<String, LifeModel> models = new LinkedHashMap<>();
        for (AirMover part : design.airMovers()) {
            section(Owner.MOVER, MoverLife.class, type -> Sections.decode(type, part)).flatMap(life -> LifeModel.of(part, life, running))
                    .ifPresent(model -> models.put(part.id(), model));
        }
        return models;
    }

    private static LifeCharts.Curve curve(String part, LifeModel model, double speed, double from, double to) {
        boolean handbook = model.life().law() == MoverLife.Law.HANDBOOK;
        double low = handbook ? Math.max(from, SmallMotor.LOWEST) : from;
        double high = handbook ? Math.min(to, SmallMotor.HIGHEST) : to;
        double[] temperatures = IntStream.rangeClosed(0, STEPS).mapToDouble(i -> low + (high - low) * i / STEPS).toArray();
        double[] middle = new double[temperatures.length];
        double[] lower = new double[temperatures.length];
        double[] upper = new double[temperatures.length];
        for (int i = 0; i < temperatures.length; i++) {
            double temperature = temperatures[i];
            middle[i] = model.at(model.nominal(), temperature, speed).distribution().life(TENTH);
            lower[i] = model.corners().stream().mapToDouble(by -> model.at(by, temperature, speed).distribution().life(TENTH)).min()
                    .orElse(middle[i]);
            upper[i] = model.corners().stream().mapToDouble(by -> model.at(by, temperature, speed).distribution().life(TENTH)).max()
                    .orElse(middle[i]);
            lower[i] = Math.min(lower[i], middle[i]);
            upper[i] = Math.max(upper[i], middle[i]);
        }
        LifeCharts.Curve curve = LifeCharts.Curve.of(part + " at " + Cells.text(speed, QuantityKind.ROTATIONAL_SPEED), temperatures,
                middle);
        return model.corners().size() > 1 ? curve.with(part + ", what is uncertain", temperatures, lower, upper) : curve;
    }
}
