package tramontane.invented;

import java.util.Random;

/** What the data sheets of a family say of life: one of the ways that real ones do. */
final class LifeSheet {

    private static final String L10 = "L10";

    /** How a family states life. */
    private enum Way {
        /** L10 at 40 °C, nothing else. */
        PLAIN,
        /** L10 at 40 °C at a confidence, from a test at another temperature. */
        TESTED,
        /** The same with the shape that the test gave. */
        FITTED,
        /** L10 at 60 °C, or the highest temperature where that is lower. */
        WARM,
        /** A mean life, with the shape that makes an L10 of it. */
        MEAN,
        /** By an activation energy. */
        ENERGY
    }

    private final String bearing;
    private final Way way;
    private final double shape;
    private final double factor;
    private final double energy;
    private final int tested;
    private final int warm;
    private final boolean tellsFactor;
    private final boolean tellsStorage;
    private final boolean tellsShock;

    /**
     * @param bearing kind of bearing
     * @param warmest highest temperature of the air, °C
     * @param random  of this sheet alone, so that nothing else of the family depends on it
     */
    LifeSheet(String bearing, int warmest, Random random) {
        this.bearing = bearing;
        random.nextInt(); // the first of neighbouring seeds are alike
        Way[] ways = Way.values();
        way = random.nextInt(3) == 0 ? Way.PLAIN : ways[random.nextInt(ways.length)];
        shape = (bearing.equals("ball") ? 2.4 : 1.8) + 0.1 * random.nextInt(13);
        factor = 1.4 + 0.1 * random.nextInt(3);
        energy = 0.32 + 0.02 * random.nextInt(8);
        warm = Math.min(warmest, 60);
        tested = Math.min(warmest, 60 + 10 * random.nextInt(2));
        tellsFactor = random.nextInt(3) == 0;
        tellsStorage = random.nextInt(3) > 0;
        tellsShock = random.nextInt(3) == 0;
    }

    /**
     * The section of a part.
     *
     * @param hours L10 at 40 °C, h
     */
    Members section(double hours) {
        Members life = new Members();
        switch (way) {
            case PLAIN -> rated(life, hours, L10, 40);
            case TESTED -> tested(rated(life, hours, L10, 40));
            case FITTED -> tested(rated(life, hours, L10, 40)).number("shape", round(shape)).text("shapeBounds", round(shape - 0.6) + " " + round(shape + 0.8));
            case WARM -> rated(life, hours / StrictMath.pow(factor, (warm - 40) / 10.0), L10, warm);
            case MEAN -> rated(life, hours * meanOverL10(shape), "MTTF", 40).number("shape", round(shape));
            case ENERGY -> rated(life, hours, L10, 40).text("law", "Arrhenius").text("activationEnergy", round(energy) + " eV");
        }
        if (way != Way.ENERGY && tellsFactor) {
            life.number("factor", round(factor));
        }
        if (bearing.equals("magnetically supported sleeve")) {
            life.text("shaft", "any");
        } else if (bearing.equals("fluid-film")) {
            life.text("shaft", "level");
        }
        if (tellsStorage) {
            life.text("lowestStorage", "-40 °C").text("highestStorage", (bearing.equals("ball") ? 85 : 75) + " °C");
        }
        if (tellsShock) {
            life.text("shock", (bearing.equals("ball") ? 15 : 30) + " gn").text("shockTime", "11 ms");
        }
        return life;
    }

    private static Members rated(Members life, double hours, String statistic, int celsius) {
        return life.text("rated", Integer.toString((int) (Math.rint(hours / 2500) * 2500)) + " h").text("statistic", statistic).text("at", celsius + " °C");
    }

    private Members tested(Members life) {
        return life.text("confidence", "90 %").text("testedAt", tested + " °C");
    }

    /** Of the Weibull distribution, between shapes 1.8 and 3.6 to a hundredth: the gamma function is near 0.89 there. */
    private static double meanOverL10(double shape) {
        return 0.89 / StrictMath.pow(0.10536, 1 / shape);
    }

    private static String round(double value) {
        return Members.rounded(value, 3);
    }
}
