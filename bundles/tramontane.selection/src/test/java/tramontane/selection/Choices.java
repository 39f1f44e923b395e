package tramontane.selection;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import tramontane.engine.internal.WiredEngine;
import tramontane.model.AirMover;
import tramontane.model.Condition;
import tramontane.model.Datasheet;
import tramontane.model.Design;
import tramontane.model.MoverCurve;
import tramontane.model.Quantities;
import tramontane.model.Quantity;
import tramontane.model.Value;
import tramontane.model.file.DesignFile;
import tramontane.selection.internal.SelectorComponent;

/** What tests of choices share. */
final class Choices {

    static final WiredEngine.Wired WIRED = WiredEngine.with();
    static final Selector SELECTOR = new SelectorComponent(WIRED.engine(), WIRED.laws(), List.of());

    /** Pressure at no flow, Pa, and flow at no pressure, m³/s, of the fan of the worked examples. */
    static final double SHUT_OFF = 80;
    static final double FREE = 0.06;
    private static final double SPEED = 300;

    private Choices() {
    }

    /** A sample of the product, less what is required of noise, which nothing here gives. */
    static Design sample(String name) {
        Design design = DesignFile.read(Path.of("../../product/samples/" + name + ".tramontane.json")).design().orElseThrow();
        return design.withRequirements(design.requirements().stream().filter(each -> !each.figure().startsWith("acoustics.")).toList());
    }

    /** A fan with Δp = Δp0 (1 - (Q/Q0)²), at 61 points. */
    static AirMover parabola(String id, double shutOff, double free) {
        double[] flow = IntStream.rangeClosed(0, 60).mapToDouble(i -> free * i / 60).toArray();
        double[] pressure = Arrays.stream(flow).map(q -> shutOff * (1 - q * q / free / free)).toArray();
        return mover(id, flow, pressure);
    }

    static AirMover mover(String id, double[] flow, double[] pressure) {
        MoverCurve curve = new MoverCurve(Optional.of(Quantity.of(SPEED)), Optional.empty(), Optional.empty(), Optional.empty(), Quantities.of(flow),
                Quantities.of(pressure), Optional.of(Quantities.of(DoubleStream.generate(() -> 6).limit(flow.length).toArray())), Optional.empty(), Value.Tree.EMPTY);
        return new AirMover(id, "", Optional.of("axial"), Optional.of(Quantity.of(0.1)), Optional.of(Quantity.of(0.1)), Optional.of(Quantity.of(0.03)),
                Optional.empty(), Optional.of(Quantity.of(SPEED)), Optional.empty(), List.of(curve), Value.Tree.EMPTY);
    }

    /** A part of another electrical power at every flow. */
    static AirMover hot(AirMover part, double watts) {
        return part.withCurves(part.curves().stream().map(curve -> new MoverCurve(curve.speed(), curve.voltage(), curve.frequency(), curve.density(), curve.flow(),
                curve.pressure(), Optional.of(Quantities.of(DoubleStream.generate(() -> watts).limit(curve.flow().size()).toArray())), curve.tolerance(),
                curve.more())).toList());
    }

    /** A part with a price and a mass. */
    static AirMover priced(AirMover part, double price, String currency, double mass) {
        Datasheet sheet = new Datasheet(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.of(Quantity.of(mass)), Optional.of(Quantity.of(price)), Optional.of(currency), List.of());
        return new AirMover(part.id(), part.maker(), part.type(), part.width(), part.height(), part.depth(), part.rotorDiameter(), part.openArea(),
                part.ratedSpeed(), part.motor(), part.noLoadSpeed(), part.category(), part.lockedLoss(), part.freewheelingLoss(), part.ratedPower(),
                part.fixedLoss(), sheet, part.curves(), part.more());
    }

    /** A flow through a path of Δp = c Q². */
    static Design duty(double flow, double c) {
        return Duty.design(Quantity.of(flow), Quantity.of(c * flow * flow), Condition.NOMINAL);
    }

    static Space exactly(int columns, int series) {
        return new Space(Optional.empty(), Optional.empty(), Optional.empty(), columns, series, columns * series);
    }

    static List<String> words(List<Candidate> candidates) {
        List<String> all = new ArrayList<>();
        candidates.forEach(candidate -> all.add(candidate.words() + " " + candidate.setting() + " " + candidate.values()));
        return all;
    }
}
