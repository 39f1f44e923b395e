package tramontane.physics.heat;

import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.function.DoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Each input refuses what means nothing, and takes the limit that does. */
class RefusedHeatTest {

    private static final double NAN = Double.NaN;
    private static final double INFINITE = Double.POSITIVE_INFINITY;

    @ParameterizedTest(name = "{0}: {1}")
    @MethodSource("refused")
    void refuses(String what, double value, DoubleFunction<?> use) {
        IllegalArgumentException refusal = assertThrows(IllegalArgumentException.class, () -> use.apply(value));
        assertNotNull(refusal.getMessage());
    }

    @ParameterizedTest(name = "{0}: {1}")
    @MethodSource("taken")
    void takes(String what, double value, DoubleFunction<?> use) {
        assertNotNull(use.apply(value));
    }

    static Stream<Arguments> refused() {
        return Stream.of(
                notNegative("plate Re", x -> FlatPlate.mean(x, 0.7)),
                notNegative("plate local Re", x -> FlatPlate.localLaminar(x, 0.7)),
                notNegative("plate flux Re", x -> FlatPlate.localEvenFlux(x, 0.7)),
                notNegative("plate turbulent Re", x -> FlatPlate.turbulent(x, 0.7)),
                positive("plate Pr", x -> FlatPlate.mean(1e4, x)),
                positive("plate Pr, fast", x -> FlatPlate.mean(1e6, x)),
                notNegative("m L", Fin::efficiency),
                notNegative("fin h", x -> Fin.m(x, 1, 1, 1)),
                positive("fin P", x -> Fin.m(1, x, 1, 1)),
                positive("fin k", x -> Fin.m(1, 1, x, 1)),
                positive("fin A", x -> Fin.m(1, 1, 1, x)),
                positive("fin thickness", x -> Fin.plate(1, 1, x, 1)),
                positive("pin diameter", x -> Fin.pin(1, 1, x)),
                notNegative("fin length", x -> Fin.conductance(1, 1, 1, 1, x)),
                notNegative("fin length without h", x -> Fin.conductance(0, 1, 1, 1, x)),
                notNegative("Re*", x -> PlateFins.nusselt(x, 0.7)),
                positive("fins Pr", x -> PlateFins.nusselt(1, x)),
                positive("fins thickness", x -> new PlateFins(10, x, 0.1, 0.03, 0.1, 180)),
                positive("fins width", x -> new PlateFins(10, 0.001, x, 0.03, 0.1, 180)),
                positive("fins height", x -> new PlateFins(10, 0.001, 0.1, x, 0.1, 180)),
                positive("fins length", x -> new PlateFins(10, 0.001, 0.1, 0.03, x, 180)),
                positive("fins k", x -> new PlateFins(10, 0.001, 0.1, 0.03, 0.1, x)),
                values("fins in no width", x -> new PlateFins(10, 0.001, x, 0.03, 0.1, 180), 0.005, 0.01),
                values("fins", x -> new PlateFins((int) x, 0.001, 0.1, 0.03, 0.1, 180), -1, 0, 1),
                notNegative("fins velocity", x -> sink().modifiedReynolds(x, 1.6e-5)),
                positive("fins viscosity", x -> sink().modifiedReynolds(1, x)),
                positive("fins air", x -> sink().coefficient(1, 1.6e-5, x, 0.7)),
                notNegative("fins h", x -> sink().conductance(x)),
                positive("source", x -> Spreading.mean(x, 1, 0.1, 1, 1)),
                values("source larger than plate", x -> Spreading.maximum(x, 1, 0.1, 1, 1), 1.001),
                positive("plate", x -> Spreading.mean(0.1, x, 0.1, 1, 1)),
                positive("plate thickness", x -> Spreading.maximum(0.1, 1, x, 1, 1)),
                positive("plate k", x -> Spreading.mean(0.1, 1, 0.1, x, 1)),
                values("beyond", x -> Spreading.mean(0.1, 1, 0.1, 1, x), -1, -1e-9, NAN),
                notNegative("through", x -> Spreading.through(1, x, 1)),
                positive("through area", x -> Spreading.through(x, 1, 1)),
                positive("through k", x -> Spreading.through(1, 1, x)),
                notNegative("interface thickness", x -> Interface.resistance(x, 1, 0, 1)),
                positive("interface k", x -> Interface.resistance(1, x, 0, 1)),
                notNegative("interface contact", x -> Interface.resistance(1, 1, x, 1)),
                positive("interface area", x -> Interface.resistance(1, 1, 0, x)),
                values("difference", x -> NaturalConvection.rayleigh(x, 1, 300, 1.6e-5, 2e-5), NAN, INFINITE, -INFINITE),
                positive("height", x -> NaturalConvection.rayleigh(1, x, 300, 1.6e-5, 2e-5)),
                positive("film", x -> NaturalConvection.rayleigh(1, 1, x, 1.6e-5, 2e-5)),
                positive("viscosity", x -> NaturalConvection.rayleigh(1, 1, 300, x, 2e-5)),
                positive("diffusivity", x -> NaturalConvection.rayleigh(1, 1, 300, 1.6e-5, x)),
                notNegative("upright Ra", x -> NaturalConvection.verticalPlate(x, 0.7)),
                notNegative("upright laminar Ra", x -> NaturalConvection.verticalPlateLaminar(x, 0.7)),
                notNegative("lying Ra", x -> NaturalConvection.horizontalCylinder(x, 0.7)),
                positive("upright Pr", x -> NaturalConvection.verticalPlate(1e6, x)),
                positive("upright laminar Pr", x -> NaturalConvection.verticalPlateLaminar(1e6, x)),
                positive("lying Pr", x -> NaturalConvection.horizontalCylinder(1e6, x)),
                notNegative("up Ra", NaturalConvection::hotFaceUp),
                notNegative("down Ra", NaturalConvection::hotFaceDown),
                values("emissivity", x -> Radiation.flux(x, 300, 300), -0.1, 1.1, NAN),
                positive("surface", x -> Radiation.flux(1, x, 300)),
                positive("surroundings", x -> Radiation.flux(1, 300, x)),
                positive("surface of h", x -> Radiation.coefficient(x, 300)),
                positive("surroundings of h", x -> Radiation.coefficient(300, x)),
                values("emissivity of one", x -> Radiation.betweenPlates(x, 1, 300, 300), 0, 1.1, NAN),
                values("emissivity of the other", x -> Radiation.betweenPlates(1, x, 300, 300), 0, 1.1, NAN),
                notNegative("cylinder Re", x -> CrossFlow.cylinder(x, 0.7)),
                positive("cylinder Pr", x -> CrossFlow.cylinder(1, x)),
                values("aspect", Channels::developedEvenTemperature, -0.1, 1.1, NAN),
                values("aspect of flux", Channels::developedEvenFlux, -0.1, 1.1, NAN),
                notNegative("channel Re", x -> Channels.mean(x, 0.7, 0.1, 0.5)),
                positive("channel Pr", x -> Channels.mean(1000, x, 0.1, 0.5)),
                positive("channel Pr, fast", x -> Channels.mean(1e4, x, 0.1, 0.5)),
                notNegative("channel d/L", x -> Channels.mean(1000, 0.7, x, 0.5)),
                notNegative("channel d/L, fast", x -> Channels.mean(1e4, 0.7, x, 0.5)),
                values("channel aspect", x -> Channels.mean(1e4, 0.7, 0.1, x), -0.1, 1.1, NAN),
                values("turbulent Re", x -> Channels.gnielinski(x, 0.7), -1, 0, 500, 2299, NAN, INFINITE),
                positive("turbulent Pr", x -> Channels.gnielinski(1e4, x)),
                notNegative("Dittus-Boelter Re", x -> Channels.dittusBoelter(x, 0.7)),
                positive("Dittus-Boelter Pr", x -> Channels.dittusBoelter(1e4, x)),
                values("pins across", x -> new PinFins(true, (int) x, 5, 0.001, 0.02, 0.003, 0.003, 180), -1, 0),
                values("rows", x -> new PinFins(true, 5, (int) x, 0.001, 0.02, 0.003, 0.003, 180), -1, 0),
                positive("pins' diameter", x -> new PinFins(true, 5, 5, x, 0.02, 0.003, 0.003, 180)),
                positive("pins' height", x -> new PinFins(true, 5, 5, 0.001, x, 0.003, 0.003, 180)),
                positive("pitch across", x -> new PinFins(true, 5, 5, 0.001, 0.02, x, 0.003, 180)),
                positive("pitch along", x -> new PinFins(true, 5, 5, 0.001, 0.02, 0.003, x, 180)),
                positive("pins' k", x -> new PinFins(true, 5, 5, 0.001, 0.02, 0.003, 0.003, x)),
                values("pins that touch across", x -> new PinFins(false, 5, 5, 0.001, 0.02, x, 0.003, 180), 0.0009, 0.001),
                values("pins that touch along", x -> new PinFins(false, 5, 5, 0.001, 0.02, 0.003, x, 180), 0.0009, 0.001),
                values("pins that touch on the slant", x -> new PinFins(true, 5, 5, 0.001, 0.02, 0.0015, x, 180), 0.0005, 0.00066),
                notNegative("pins Re", x -> bank().nusselt(x, 0.7)),
                positive("pins Pr", x -> bank().nusselt(100, x)),
                notNegative("pins velocity", x -> bank().coefficient(x, 1.6e-5, 0.026, 0.7)),
                positive("pins viscosity", x -> bank().coefficient(1, x, 0.026, 0.7)),
                positive("pins air", x -> bank().coefficient(1, 1.6e-5, x, 0.7)),
                notNegative("pins h", x -> bank().conductance(x)),
                notNegative("base", x -> new Bypass(sink(), 0.2, 0.1, x)),
                values("duct width", x -> new Bypass(sink(), x, 0.1, 0.004), -1, 0, 0.0999, NAN, INFINITE),
                values("duct height", x -> new Bypass(sink(), 0.2, x, 0.004), -1, 0, 0.0339, NAN, INFINITE),
                notNegative("duct flow", x -> new Bypass(sink(), 0.2, 0.1, 0.004).share(x, 1.6e-5)),
                notNegative("full duct flow", x -> new Bypass(sink(), 0.1, 0.034, 0.004).velocity(x, 1.6e-5)),
                positive("duct viscosity", x -> new Bypass(sink(), 0.2, 0.1, 0.004).share(1e-3, x))).flatMap(s -> s);
    }

    static Stream<Arguments> taken() {
        return Stream.of(
                values("plate at rest", x -> FlatPlate.mean(x, 0.7), 0),
                values("two fins", x -> new PlateFins((int) x, 0.001, 0.1, 0.03, 0.1, 180), 2),
                values("source as plate", x -> Spreading.mean(x, 1, 0.1, 1, 1), 1),
                values("nothing beyond, no way out", x -> Spreading.mean(0.1, 1, 0.1, 1, x), 0, INFINITE),
                values("mirror, black", x -> Radiation.flux(x, 300, 300), 0, 1),
                values("plates, square", Channels::developedEvenFlux, 0, 1),
                values("turbulent from", x -> Channels.gnielinski(x, 0.7), 2300),
                values("one pin", x -> new PinFins(true, (int) x, (int) x, 0.001, 0.02, 0.003, 0.003, 180), 1),
                values("rows that reach into each other", x -> new PinFins(true, 5, 5, 0.001, 0.02, 0.003, x, 180), 0.0001),
                values("no base", x -> new Bypass(sink(), 0.2, 0.1, x), 0)).flatMap(s -> s);
    }

    private static PlateFins sink() {
        return new PlateFins(10, 0.001, 0.1, 0.03, 0.1, 180);
    }

    private static PinFins bank() {
        return new PinFins(true, 5, 5, 0.001, 0.02, 0.003, 0.003, 180);
    }

    private static Stream<Arguments> notNegative(String what, DoubleFunction<?> use) {
        return values(what, use, -1, -Double.MIN_VALUE, NAN, INFINITE);
    }

    private static Stream<Arguments> positive(String what, DoubleFunction<?> use) {
        return values(what, use, -1, 0, NAN, INFINITE);
    }

    private static Stream<Arguments> values(String what, DoubleFunction<?> use, double... values) {
        return DoubleStream.of(values).mapToObj(value -> arguments(what, value, use));
    }
}
