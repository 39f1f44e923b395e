package tramontane.physics.heat;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Heat transfer against worked examples of textbooks and against values computed from the published relations.
 *
 * <p>Examples are held to the digits that are printed; values from a relation to its arithmetic.
 */
class PublishedHeatTest {

    /** Incropera and DeWitt, example 7.1, from memory: air of 300 °C and 6 kPa, 10 m/s, over 0.5 m of plate at 27 °C. */
    @Test
    void plateInHotThinAir() {
        double reynolds = 10 * 0.5 / 5.21e-4;
        double nusselt = FlatPlate.mean(reynolds, 0.687);
        double h = nusselt * 0.0364 / 0.5;
        assertEquals(9597, reynolds, 0.5);
        assertEquals(57.4, nusselt, 1e-3 * 57.4);
        assertEquals(4.18, h, 1e-3 * 4.18);
        assertEquals(570, h * 0.5 * (300 - 27), 1e-3 * 570);
    }

    /** S. K. Som, Introduction to Heat Transfer, example 7.3: air of 20 °C and 5 m/s over a plate of 5 m by 1 m at 140 °C. */
    @ParameterizedTest
    @CsvSource({"5, 10.2568, 6154.06", "1, 8.86872, 5321.23"})
    void plateAlongEitherSide(double length, double coefficient, double heat) {
        double h = FlatPlate.mean(5 * length / 2e-5, 0.706) * 0.03 / length;
        assertEquals(coefficient, h, 1e-3 * coefficient);
        assertEquals(heat, h * 5 * (140 - 20), 1e-3 * heat);
    }

    /** S. K. Som, Introduction to Heat Transfer, example 7.2: air of 30 m/s over 2 m, turbulent from 0.275 m on. */
    @Test
    void plateThatTurnsTurbulent() {
        double nu = 1.65e-5;
        double laminarLength = FlatPlate.TRANSITION * nu / 30;
        double laminar = FlatPlate.laminar(FlatPlate.TRANSITION, 0.705);
        double h = FlatPlate.mean(30 * 2 / nu, 0.705) * 0.026 / 2;
        assertEquals(0.275, laminarLength, 1e-6);
        assertEquals(417.878, laminar, 1e-5 * 417.878);
        assertEquals(39.5085, laminar * 0.026 / laminarLength, 1e-5 * 39.5085);
        assertEquals(65.7933, h, 1e-3 * 65.7933);
        assertEquals(13158.66, h * 2 * 100, 1e-3 * 13158.66);
    }

    /**
     * Sinks by Teertstra, Yovanovich, Culham (2000); air of 1.1614 kg/m³, 1.846e-5 Pa s, 0.0263 W/(m K), 1007 J/(kg K); base of
     * 4, 4 and 8 mm.
     */
    @ParameterizedTest
    @CsvSource({
        "16, 0.0008, 0.060, 0.025, 0.060, 180, 0.004, 0.004, 671.087, 35.19479, 4.39312, 36.71789, 0.56831, 0.904641, 0.046255, 0.588798, 0.594970",
        "16, 0.0008, 0.060, 0.025, 0.060, 180, 0.008, 0.004, 1342.174, 70.38957, 5.91782, 49.46147, 0.65960, 0.876435, 0.044901, 0.450276, 0.456448",
        "20, 0.0015, 0.100, 0.040, 0.150, 200, 0.015, 0.008, 1241.732, 30.49867, 4.12928, 29.47717, 0.56353, 0.906059, 0.227954, 0.148822, 0.151488",
    })
    void plateFins(int fins, double thickness, double width, double height, double length, double conductivity, double flow, double base,
            double reynolds, double modified, double nusselt, double coefficient, double mh, double efficiency, double area,
            double convection, double total) {
        double nu = 1.846e-5 / 1.1614;
        double prandtl = 1007 * 1.846e-5 / 0.0263;
        PlateFins sink = new PlateFins(fins, thickness, width, height, length, conductivity);
        double velocity = flow / sink.flowArea();
        double star = sink.modifiedReynolds(velocity, nu);
        double h = sink.coefficient(velocity, nu, 0.0263, prandtl);
        double m = Fin.plate(h, conductivity, thickness, length);
        assertEquals(reynolds, velocity * sink.gap() / nu, 1e-4 * reynolds);
        assertEquals(modified, star, 1e-4 * modified);
        assertEquals(nusselt, PlateFins.nusselt(star, prandtl), 1e-4 * nusselt);
        assertEquals(coefficient, h, 1e-4 * coefficient);
        assertEquals(mh, m * height, 1e-4 * mh);
        assertEquals(efficiency, Fin.efficiency(m * height), 1e-4 * efficiency);
        assertEquals(area, sink.conductance(h) / h, 1e-4 * area);
        assertEquals(convection, 1 / sink.conductance(h), 1e-4 * convection);
        assertEquals(total, 1 / sink.conductance(h) + Spreading.through(width * length, base, conductivity), 1e-4 * total);
    }

    /** tanh(x)/x to six digits. */
    @ParameterizedTest
    @CsvSource({"0, 1", "0.2, 0.986877", "0.5, 0.924234", "1.0, 0.761594", "1.5, 0.603432", "2.0, 0.482014", "3.0, 0.331685"})
    void efficiencyOfFins(double ml, double efficiency) {
        assertEquals(efficiency, Fin.efficiency(ml), 1e-6);
    }

    /**
     * Incropera and DeWitt, example 3.9, from memory: long rods of 5 mm at 100 °C in air of 25 °C, h 100; beside the printed heat the
     * same to more digits.
     */
    @ParameterizedTest
    @CsvSource({"398, 8.31, 8.30955", "180, 5.59, 5.58821", "14, 1.56, 1.55848"})
    void longRods(double conductivity, double printed, double heat) {
        double q = 75 * Fin.conductance(100, Math.PI * 0.005, conductivity, Math.PI / 4 * 0.005 * 0.005, 10);
        assertEquals(printed, q, 0.005);
        assertEquals(heat, q, 1e-5 * heat);
    }

    /** Incropera and DeWitt, ch. 3.6: a plate fin of 1 mm by 60 mm, 25 mm long, h 50, k 180, with three kinds of tip. */
    @Test
    void tipsOfFins() {
        double m = Fin.plate(50, 180, 0.001, 0.060);
        double perimeter = 2 * 0.061;
        double section = 0.001 * 0.060;
        assertEquals(23.76583, m, 1e-5 * m);
        assertEquals(0.896869, Fin.efficiency(m * 0.025), 1e-5);
        assertEquals(0.136772, 50 * perimeter * 0.025 * Fin.efficiency(m * 0.025), 1e-5 * 0.136772);
        double corrected = 0.025 + section / perimeter;
        assertEquals(0.138907, 50 * perimeter * corrected * Fin.efficiency(m * corrected), 1e-5 * 0.138907);
        assertEquals(0.138907, Fin.conductance(50, perimeter, 180, section, 0.025), 1e-5 * 0.138907);
    }

    /** Lee, Song, Au, Moran (1995), closed form; beside it the exact series, which it meets within 10 %. Sides in m. */
    @ParameterizedTest
    @CsvSource({
        "4.0e-4, 3.6e-3, 0.004, 180, 0.462963, 0.141796, 0.195958, 0.152311, 0.200929",
        "3.14159265e-4, 5.02654825e-3, 0.005, 200, 0.397887, 0.152660, 0.198907, 0.162370, 0.201746",
        "7.85398163e-5, 1.25663706e-3, 0.002, 390, 0.795775, 0.187916, 0.244843, 0.200871, 0.249912",
        "6.25e-4, 1e-2, 0.0013, 200, 1.0, 0.50392, 0.65658, 0.53036, 0.66802",
    })
    void spreading(double source, double plate, double thickness, double conductivity, double beyond, double mean, double maximum,
            double exactMean, double exactMaximum) {
        double average = Spreading.mean(source, plate, thickness, conductivity, beyond);
        double peak = Spreading.maximum(source, plate, thickness, conductivity, beyond);
        assertEquals(mean, average, 1e-5 * mean);
        assertEquals(maximum, peak, 1e-5 * maximum);
        assertEquals(exactMean, average, 0.1 * exactMean);
        assertEquals(exactMaximum, peak, 0.1 * exactMaximum);
    }

    /** S. Lee's example in Electronics Cooling (January 1998), from memory: 25 mm on 100 mm of 1.3 mm aluminium gives 0.66 K/W. */
    @Test
    void spreadingOfAnArticle() {
        assertEquals(0.66, Spreading.maximum(0.025 * 0.025, 0.1 * 0.1, 0.0013, 200, 1), 0.005);
    }

    /** H. S. Carslaw, J. C. Jaeger, Conduction of Heat in Solids: discs on a half-space; a disc of 10 mm radius, k 200. */
    @Test
    void halfSpace() {
        assertEquals(0.2701898, Spreading.HALF_SPACE_MEAN, 1e-6 * 0.27);
        assertEquals(0.3183099, Spreading.HALF_SPACE_CENTRE, 1e-6 * 0.32);
        assertEquals(0.135095, Spreading.HALF_SPACE_MEAN / (200 * 0.01), 1e-6);
        assertEquals(0.159155, Spreading.HALF_SPACE_CENTRE / (200 * 0.01), 1e-6);
        assertEquals(0.125, Spreading.HALF_SPACE_ISOTHERMAL / (200 * 0.01), 1e-6);
        assertEquals(0.478899, Spreading.HALF_SPACE_MEAN * Math.sqrt(Math.PI), 1e-6);
        assertEquals(0.564190, Spreading.HALF_SPACE_CENTRE * Math.sqrt(Math.PI), 1e-6);
    }

    /** Lee's form for a small source on a large thick plate: the centre is exact, the mean 1/(2√π) in place of 8/(3π²). */
    @Test
    void smallSourceOnAThickPlate() {
        double radius = 1e-5;
        double source = Math.PI * radius * radius;
        double plate = Math.PI;
        assertEquals(Spreading.HALF_SPACE_CENTRE, Spreading.maximum(source, plate, 1, 1, 0) * radius, 2e-5);
        assertEquals(1.044 * Spreading.HALF_SPACE_MEAN, Spreading.mean(source, plate, 1, 1, 0) * radius, 5e-4 * 0.27);
    }

    /** ASTM D5470: 0.1 mm of 3 W/(m K) on 20 mm by 20 mm, without and with contacts of 5e-6 m² K/W on both sides; 25 W. */
    @Test
    void betweenSurfaces() {
        assertEquals(0.083333, Interface.resistance(1e-4, 3, 0, 4e-4), 1e-6);
        assertEquals(0.108333, Interface.resistance(1e-4, 3, 2 * 5e-6, 4e-4), 1e-6);
        assertEquals(2.708333, 25 * Interface.resistance(1e-4, 3, 2 * 5e-6, 4e-4), 1e-6 * 2.7);
    }

    /** Churchill and Chu (1975), Pr 0.707. */
    @ParameterizedTest
    @CsvSource({"1e4, 5.43052, 5.82001, 4.37122", "1e6, 16.55004, 16.93413, 14.52917", "1e8, 61.03058, 52.08008, 56.54182",
        "1e10, 252.12616, , 240.48128"})
    void uprightPlatesAndCylinders(double rayleigh, double plate, Double laminar, double cylinder) {
        assertEquals(plate, NaturalConvection.verticalPlate(rayleigh, 0.707), 1e-5 * plate);
        assertEquals(cylinder, NaturalConvection.horizontalCylinder(rayleigh, 0.707), 1e-5 * cylinder);
        if (laminar != null) {
            assertEquals(laminar, NaturalConvection.verticalPlateLaminar(rayleigh, 0.707), 1e-5 * laminar);
        }
    }

    /** Incropera and DeWitt, ch. 9.6: Lloyd and Moran (1974); Radziemska and Lewandowski (2001). */
    @ParameterizedTest
    @CsvSource({"1e4, 5.4000, 3.2810", "1e6, 17.0763, 8.2414", "1e8, 69.6238, 20.7016", "1e10, 323.1652, 52.0000"})
    void platesThatLie(double rayleigh, double up, double down) {
        assertEquals(up, NaturalConvection.hotFaceUp(rayleigh), 1e-5 * up);
        assertEquals(down, NaturalConvection.hotFaceDown(rayleigh), 1e-5 * down);
    }

    /** The larger of both where they overlap: as printed outside, 6.4 % more than in print just below 1e7. */
    @Test
    void faceUpBetweenItsPieces() {
        assertEquals(1.0642, NaturalConvection.hotFaceUp(0.999999e7) / (0.54 * Math.pow(1e7, 0.25)), 1e-4);
        assertEquals(0.54 * Math.pow(4.7e6, 0.25), NaturalConvection.hotFaceUp(4.7e6), 1e-9);
    }

    /** Incropera and DeWitt, example 9.2, from memory: a glass door of 0.71 m by 1.02 m at 232 °C in air of 23 °C. */
    @Test
    void glassDoor() {
        double rayleigh = NaturalConvection.rayleigh(232 - 23, 0.71, 400, 26.4e-6, 38.3e-6);
        double nusselt = NaturalConvection.verticalPlate(rayleigh, 0.690);
        double h = nusselt * 0.0338 / 0.71;
        double area = 0.71 * 1.02;
        // the book takes 9.8 m/s²: 0.07 % in Ra
        assertEquals(1.813e9, rayleigh, 1e-3 * 1.813e9);
        assertEquals(147, nusselt, 0.5);
        assertEquals(7.0, h, 0.05);
        assertEquals(1060, h * area * 209, 1e-3 * 1060);
        assertEquals(2355, Radiation.flux(1, 505, 296) * area, 1e-3 * 2355);
    }

    /** Stefan and Boltzmann's law with the constant of CODATA 2018. */
    @Test
    void radiation() {
        assertEquals(651.2989, Radiation.flux(1, 373.15, 298.15), 1e-6 * 651);
        assertEquals(250.4321, Radiation.flux(1, 333.15, 298.15), 1e-6 * 250);
        assertEquals(225.3889, Radiation.flux(0.9, 333.15, 298.15), 1e-6 * 225);
        assertEquals(7.155203, Radiation.coefficient(333.15, 298.15), 1e-6 * 7);
        assertEquals(7.133277, Radiation.coefficient(315.65, 315.65), 1e-6 * 7);
    }

    /** Y. A. Cengel, Heat and Mass Transfer, example 13-7, from memory (3625 W/m²): plates of 800 and 500 K, emissivities 0.2 and 0.7. */
    @Test
    void radiationBetweenPlates() {
        assertEquals(3625, Radiation.betweenPlates(0.2, 0.7, 800, 500), 1);
        assertEquals(3625.608, Radiation.betweenPlates(0.2, 0.7, 800, 500), 1e-6 * 3625);
    }

    /** Gnielinski (1976) and Dittus, Boelter (McAdams, 1942) at Re 1e4, Pr 0.707. */
    @Test
    void turbulentChannels() {
        assertEquals(29.96493, Channels.gnielinski(1e4, 0.707), 1e-6 * 30);
        assertEquals(31.731866, Channels.dittusBoelter(1e4, 0.707), 1e-6 * 32);
    }

    /** Shah and London (1978): their polynomials to their own digits, and their table, from which they are up to 0.21 % off. */
    @ParameterizedTest
    @CsvSource({
        "1, 2.9787, 3.6102, 2.97752, 3.60795",
        "2, 3.3887, 4.1258, 3.39229, 4.12330",
        "3, , , 3.95768, 4.79480",
        "4, 4.4353, 5.3327, 4.44050, 5.33107",
        "6, , , 5.13829, 6.04947",
        "8, 5.5958, 6.4922, 5.59366, 6.49035",
        "10, , , 5.90781, 6.78498",
        "1e9, 7.541, 8.235, 7.5407, 8.23529",
    })
    void developedInRectangles(double long_, Double evenTemperature, Double evenFlux, double exactTemperature, double exactFlux) {
        double nuT = Channels.developedEvenTemperature(1 / long_);
        double nuH1 = Channels.developedEvenFlux(1 / long_);
        if (evenTemperature != null) {
            assertEquals(evenTemperature, nuT, 5e-5 + 1e-6 * nuT);
            assertEquals(evenFlux, nuH1, 5e-5 + 1e-6 * nuH1);
        }
        assertEquals(exactTemperature, nuT, 0.0021 * exactTemperature);
        assertEquals(exactFlux, nuH1, 0.001 * exactFlux);
    }

    /**
     * Incropera and DeWitt, example 7.4, from memory: a rod of 12.7 mm in air of 10 m/s, by Churchill and Bernstein Nu 40.6 and h 96.0;
     * 102 W/(m² K) were measured.
     */
    @Test
    void heatedRodInAWindTunnel() {
        double nusselt = CrossFlow.cylinder(10 * 0.0127 / 20.92e-6, 0.70);
        assertEquals(40.6, nusselt, 0.05);
        assertEquals(96.0, nusselt * 0.030 / 0.0127, 0.1);
        assertEquals(102, nusselt * 0.030 / 0.0127, 0.1 * 102);
    }

    /** Y. A. Cengel, Heat and Mass Transfer, example 7-5, from memory: a steam pipe of 0.1 m in wind of 8 m/s, Nu 124. */
    @Test
    void steamPipeInWind() {
        double nusselt = CrossFlow.cylinder(8 * 0.1 / 1.896e-5, 0.7202);
        assertEquals(124, nusselt, 0.5);
    }

    /**
     * Incropera and DeWitt, example 7.7, from memory: seven staggered rows, Re 13943, Nu 87.9, h 135.6 with the wall's (Pr/Prs)^(1/4),
     * left out here, and 0.3437 rounded to 0.34 in print: 1.1 %.
     */
    @Test
    void staggeredTubes() {
        PinFins bank = new PinFins(true, 8, 7, 0.0164, 1, 0.0313, 0.0343, 200);
        double wall = Math.pow(0.710 / 0.701, 0.25);
        assertEquals(12.6, 6 * bank.contraction(), 0.05);
        assertEquals(13943, 6 * bank.contraction() * 0.0164 / 14.82e-6, 0.001 * 13943);
        assertEquals(87.9 * 0.3437 / 0.34, bank.nusselt(13943, 0.71) * wall, 0.002 * 87.9);
        assertEquals(135.6 * 0.3437 / 0.34, bank.coefficient(6, 14.82e-6, 0.0253, 0.71) * wall, 0.003 * 135.6);
    }

    /**
     * Y. A. Cengel, Heat and Mass Transfer, example 7-7, from memory: six rows in line, Re 5086, Nu 52.2 deep in the bank, 49.3 with
     * Cengel's factor 0.945 for six rows in place of Incropera's 0.935.
     */
    @Test
    void tubesInLine() {
        PinFins bank = new PinFins(false, 10, 6, 0.015, 1, 0.05, 0.05, 200);
        PinFins deep = new PinFins(false, 10, 20, 0.015, 1, 0.05, 0.05, 200);
        double wall = Math.pow(0.7202 / 0.7073, 0.25);
        assertEquals(6.43, 4.5 * bank.contraction(), 0.005);
        assertEquals(52.2, deep.nusselt(5086, 0.7202) * wall, 0.002 * 52.2);
        assertEquals(49.3, bank.nusselt(5086, 0.7202) * wall * 0.945 / 0.935, 0.002 * 49.3);
    }

    /**
     * F. Kreith et al., Principles of Heat Transfer (7th ed.), example 7.6: methane of 10 m/s through five staggered rows of 40 mm at
     * pitches of 80 mm across and 60 mm along; largest velocity twice that before, factor of the rows 0.92.
     */
    @Test
    void methaneThroughStaggeredTubes() {
        PinFins bank = new PinFins(true, 5, 5, 0.04, 1, 0.08, 0.06, 200);
        assertEquals(2, bank.contraction(), 1e-12);
        assertEquals(165.0971, bank.coefficient(10, 1.627e-5, 0.0332, 0.73), 1e-5 * 165);
    }

    /** Where the gaps on the slant are narrower than those across: Incropera and DeWitt, eq. 7.61. */
    @Test
    void narrowOnTheSlant() {
        PinFins bank = new PinFins(true, 5, 5, 0.01, 1, 0.03, 0.008, 200);
        double slant = Math.sqrt(0.008 * 0.008 + 0.015 * 0.015);
        assertEquals(0.017, slant, 1e-12);
        assertEquals(0.03 / (2 * 0.007), bank.contraction(), 1e-12);
    }

    /** Incropera and DeWitt, ch. 7.6, factors of fewer than 20 rows, from memory; straight between. */
    @ParameterizedTest
    @CsvSource({"1, 0.70, 0.64", "2, 0.80, 0.76", "3, 0.86, 0.84", "4, 0.90, 0.89", "5, 0.92, 0.92", "6, 0.935, 0.935", "7, 0.95, 0.95",
        "10, 0.97, 0.97", "13, 0.98, 0.98", "16, 0.99, 0.99", "18, 0.995, 0.995", "20, 1, 1", "1000, 1, 1"})
    void fewRows(int rows, double inLine, double staggered) {
        assertEquals(inLine, PinFins.rowFactor(false, rows), 1e-12);
        assertEquals(staggered, PinFins.rowFactor(true, rows), 1e-12);
    }

    /** Zukauskas, tables as in Cengel (from memory): one Reynolds number in each piece, Pr 0.71, pitches 1.5:1, deep bank. */
    @ParameterizedTest
    @CsvSource({
        "false, 50, 0.9, 0.4, 0.36", "false, 500, 0.52, 0.5, 0.36", "false, 1e4, 0.27, 0.63, 0.36", "false, 1e6, 0.033, 0.8, 0.4",
        "true, 100, 1.04, 0.4, 0.36", "true, 700, 0.71, 0.5, 0.36", "true, 1e4, 0.379568, 0.6, 0.36", "true, 1e6, 0.0336189, 0.8, 0.36",
    })
    void piecesOfBanks(boolean staggered, double reynolds, double factor, double power, double ofPrandtl) {
        PinFins bank = new PinFins(staggered, 10, 20, 0.01, 0.03, 0.03, 0.02, 200);
        double nusselt = factor * Math.pow(reynolds, power) * Math.pow(0.71, ofPrandtl);
        assertEquals(nusselt, bank.nusselt(reynolds, 0.71), 1e-5 * nusselt);
    }

    /** Zukauskas: staggered with St/Sl of 2 and above 0.40 Re^0.6. */
    @ParameterizedTest
    @CsvSource({"2", "3", "10"})
    void widePitchesAcross(double ratio) {
        PinFins bank = new PinFins(true, 10, 20, 0.01, 0.03, 0.02 * ratio, 0.02, 200);
        double nusselt = 0.40 * Math.pow(1e4, 0.6) * Math.pow(0.71, 0.36);
        assertEquals(nusselt, bank.nusselt(1e4, 0.71), 0.006 * nusselt);
    }
}
