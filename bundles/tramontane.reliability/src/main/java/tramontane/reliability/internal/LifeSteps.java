package tramontane.reliability.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Relation;
import tramontane.analysis.Trace;
import tramontane.physics.units.QuantityKind;
import tramontane.reliability.DutyLife;
import tramontane.reliability.LifeModel;
import tramontane.reliability.LifeState;
import tramontane.reliability.MissionLife;
import tramontane.reliability.MoverLife;
import tramontane.reliability.statistics.LifeDistribution;

/** Says where lives come from. */
final class LifeSteps {

    private static final String SCALE = "characteristic life";
    private static final String RATE_LIFE = "mean life at the failure rate";
    private static final String BEARINGS = "characteristic life of the bearings";
    private static final String WINDINGS = "characteristic life of the windings";
    private static final double HOUR = 3600;

    private LifeSteps() {
    }

    static void condition(Scene scene, LifeState state, Trace trace) {
        for (LifeState.BankState bank : state.banks()) {
            bank.worst().ifPresent(worst -> {
                LifeModel model = scene.banks().stream().filter(each -> each.id().equals(bank.bank())).findFirst().orElseThrow().model().orElseThrow();
                duty(model, bank, worst, trace);
                spread(worst.spread().nominal(), bank.bank(), List.of(Figures.L10, Figures.L1, Figures.L50, Figures.MEAN), trace);
            });
        }
    }

    private static void duty(LifeModel model, LifeState.BankState bank, LifeState.MoverState mover, Trace trace) {
        MoverLife life = model.life();
        String section = "life section of air mover " + bank.part();
        LifeModel.Parameters by = model.nominal();
        List<Trace.Term> terms = new ArrayList<>();
        Trace.Term temperature = new Trace.Term("air at the mover T", QuantityKind.TEMPERATURE, mover.temperature(), "operating point");
        Trace.Term speed = new Trace.Term("speed n", QuantityKind.ROTATIONAL_SPEED, mover.speed(), "airflow.bank.speed");
        switch (mover.spread().nominal()) {
            case DutyLife.AtRate rate -> {
                terms.add(temperature);
                terms.add(new Trace.Term("characteristic life of the bearings α_B", QuantityKind.TIME, rate.bearing() * 3600, "formula of the handbook"));
                terms.add(new Trace.Term("characteristic life of the windings α_W", QuantityKind.TIME, rate.winding() * 3600, "formula of the handbook"));
                terms.add(new Trace.Term("running time that the rate is the mean of", QuantityKind.TIME, rate.designLife() * 3600, "service life of the design"));
                step(RATE_LIFE, bank.bank(), Figures.HANDBOOK, rate.distribution().mean(), terms, trace);
            }
            case DutyLife.Aged aged -> {
                if (life.law() == MoverLife.Law.FATIGUE) {
                    terms.add(speed);
                    terms.add(new Trace.Term("dynamic load rating C", QuantityKind.FORCE, life.dynamicRating().orElseThrow(), section));
                    terms.add(new Trace.Term("exponent p", QuantityKind.NUMBER, life.rolling().exponent(), "ISO 281:2007"));
                    terms.add(new Trace.Term("spread e", QuantityKind.NUMBER, life.rolling().spread(), "ISO/TR 1281-1"));
                    for (double load : life.loads()) {
                        terms.add(new Trace.Term("load P", QuantityKind.FORCE, load, section));
                    }
                } else {
                    terms.add(new Trace.Term("rated life " + life.statistic().word(), QuantityKind.TIME, life.rated().orElseThrow(), section));
                    terms.add(temperature);
                    terms.add(new Trace.Term("rated at T_rated", QuantityKind.TEMPERATURE, model.ratedAt().orElseThrow(), life.at().isPresent() ? section : "common practice"));
                    if (life.law() == MoverLife.Law.GREASE) {
                        terms.add(new Trace.Term("bearing above the air", QuantityKind.TEMPERATURE_DIFFERENCE, life.rise(), section));
                        life.greaseLimit().ifPresent(limit -> terms.add(new Trace.Term("limiting speed n_limit", QuantityKind.ROTATIONAL_SPEED, limit, section)));
                    }
                    if (life.law() == MoverLife.Law.TEN_KELVIN) {
                        terms.add(new Trace.Term("factor per 10 K q", QuantityKind.NUMBER, by.factor(), life.factor().isPresent() ? section : "common practice"));
                    }
                    life.activationEnergy().filter(energy -> life.law() == MoverLife.Law.ARRHENIUS)
                            .ifPresent(energy -> terms.add(new Trace.Term("activation energy E", QuantityKind.ACTIVATION_ENERGY, energy, section)));
                    terms.add(new Trace.Term("factor of the temperature", QuantityKind.NUMBER, model.ofTemperature(by, mover.temperature()), "this relation"));
                    model.ratedSpeed().ifPresent(rated -> {
                        terms.add(speed);
                        terms.add(new Trace.Term("rated at n_rated", QuantityKind.ROTATIONAL_SPEED, rated, life.speed().isPresent() ? section : "rated speed of the part"));
                        if (life.law() != MoverLife.Law.GREASE) {
                            terms.add(new Trace.Term("exponent of speed k", QuantityKind.NUMBER, by.exponent(), life.speedExponent().isPresent() ? section : "common practice"));
                        }
                        terms.add(new Trace.Term("factor of the speed", QuantityKind.NUMBER, model.ofSpeed(by, mover.speed()), "this relation"));
                    });
                }
                terms.add(new Trace.Term("Weibull shape β", QuantityKind.NUMBER, by.shape(), life.shape().isPresent() ? section : "common practice"));
                step(SCALE, bank.bank(), relation(life.law()), aged.distribution().scale(), terms, trace);
            }
        }
    }

    private static Relation relation(MoverLife.Law law) {
        return switch (law) {
            case TEN_KELVIN -> Figures.TEN_KELVIN;
            case ARRHENIUS -> Figures.ARRHENIUS;
            case GREASE -> Figures.GREASE;
            case FATIGUE -> Figures.FATIGUE;
            case HANDBOOK -> Figures.HANDBOOK;
        };
    }

    /** L10, L1, L50 and mean of a distribution. */
    private static void spread(DutyLife life, String place, List<FigureKind> kinds, Trace trace) {
        List<ToDoubleFunction<LifeDistribution>> numbers = List.of(lives -> lives.life(0.1), lives -> lives.life(0.01), lives -> lives.life(0.5),
                LifeDistribution::mean);
        for (int i = 0; i < numbers.size(); i++) {
            double value = numbers.get(i).applyAsDouble(life.distribution());
            switch (life) {
                case DutyLife.Aged aged -> step(kinds.get(i).id(), place, Figures.WEIBULL, value, List.of(
                        new Trace.Term(SCALE + " η", QuantityKind.TIME, aged.distribution().scale(), SCALE),
                        new Trace.Term("Weibull shape β", QuantityKind.NUMBER, aged.distribution().shape(), "life section of the part, or common practice")), trace);
                case DutyLife.AtRate rate -> step(kinds.get(i).id(), place, Figures.CONSTANT_RATE, value, List.of(
                        new Trace.Term("mean life 1/λ", QuantityKind.TIME, rate.distribution().mean(), RATE_LIFE)), trace);
            }
        }
    }

    static void mission(MissionLife mission, Trace trace) {
        for (MissionLife.BankMission bank : mission.banks()) {
            bank.shortest().ifPresent(shortest -> lives(bank.bank(), shortest, trace));
            bank.worst().ifPresent(worst -> served(mission, bank.bank(), worst, trace));
        }
    }

    private static void lives(String place, MissionLife.MoverMission mover, Trace trace) {
        List<Trace.Term> terms = new ArrayList<>();
        switch (mover.spread().nominal()) {
            case DutyLife.AtRate rate -> {
                for (MissionLife.PhaseLife phase : mover.phases()) {
                    terms.add(new Trace.Term("running time h in " + phase.condition(), QuantityKind.TIME, phase.running(), "mission"));
                    terms.add(new Trace.Term("air at the mover in " + phase.condition(), QuantityKind.TEMPERATURE, phase.temperature(), "operating point"));
                }
                step(BEARINGS, place, Figures.CYCLE, rate.bearing() * HOUR, terms, trace);
                step(WINDINGS, place, Figures.CYCLE, rate.winding() * HOUR, terms, trace);
                step(RATE_LIFE, place, Figures.HANDBOOK, rate.distribution().mean(), List.of(new Trace.Term("α_B", QuantityKind.TIME, rate.bearing() * HOUR, BEARINGS),
                        new Trace.Term("α_W", QuantityKind.TIME, rate.winding() * HOUR, WINDINGS), new Trace.Term("running time that the rate is the mean of",
                                QuantityKind.TIME, rate.designLife() * HOUR, "service life of the design")), trace);
            }
            case DutyLife.Aged aged -> {
                for (MissionLife.PhaseLife phase : mover.phases()) {
                    terms.add(new Trace.Term("running time t in " + phase.condition(), QuantityKind.TIME, phase.running(), "mission"));
                    terms.add(new Trace.Term("life L10 in " + phase.condition(), QuantityKind.TIME, phase.life(), Figures.L10.id()));
                }
                step(SCALE, place, Figures.MINER, aged.distribution().scale(), terms, trace);
            }
        }
        spread(mover.spread().nominal(), place, List.of(Figures.MISSION_L10, Figures.MISSION_L1, Figures.MISSION_L50, Figures.MISSION_MEAN), trace);
    }

    private static void served(MissionLife mission, String place, MissionLife.MoverMission mover, Trace trace) {
        mission.serviceLife().ifPresent(service -> {
            double running = service / mover.stretch();
            List<Trace.Term> times = List.of(new Trace.Term("service life", QuantityKind.TIME, service, "life section of the design"),
                    new Trace.Term("running time in a year", QuantityKind.TIME, mover.running(), "mission"),
                    new Trace.Term("life L10 over the mission L", QuantityKind.TIME, mover.spread().value(lives -> lives.life(0.1)), Figures.MISSION_L10.id()));
            step(Figures.MISSION_SURVIVAL.id(), place, Figures.SURVIVAL, mover.spread().value(lives -> lives.survival(running)), times, trace);
            step(Figures.MISSION_USED.id(), place, Figures.USED, running / mover.spread().value(lives -> lives.life(0.1)), times, trace);
        });
    }

    static void step(String figure, String place, Relation relation, double value, List<Trace.Term> terms, Trace trace) {
        trace.step(new Trace.Step(figure, place, relation, value, terms));
    }
}
