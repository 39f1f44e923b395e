package tramontane.reliability.cli.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.cli.terminal.Ending;

class ApplyLawTest {

    private static final double HOUR = 3600;

    @Test
    void factorPerTenKelvin() throws Ending {
        JsonObject json = Verbs.json("", "bearing", "--life", "60000 h", "--at", "55 °C", "--rated-speed", "3000 rpm", "--speed",
                "1500 rpm");
        assertEquals(60000 * Math.pow(1.5, -1.5) * 2, Verbs.number(json, "life") / HOUR, 1e-6);
        assertEquals(2, Verbs.number(json, "speedFactor"), 1e-12);
        assertEquals(1, json.getAsJsonArray("cautions").size());
        String printed = Verbs.run("", "bearing", "--life", "60000 h", "--at", "55 °C").printed();
        assertTrue(printed.startsWith("Life 32660 h (3.73 years) at 55.0 °C, 0.544 of the rated 60000 h (6.85 years) at 40.0 °C (factor"
                + " 1.5"), printed);
    }

    @Test
    void arrhenius() throws Ending {
        double factor = Math.exp(0.4 / 8.617333262e-5 * (1 / 328.15 - 1 / 313.15));
        assertEquals(factor, Verbs.number(Verbs.json("", "bearing", "--law", "Arrhenius", "--energy", "0.4 eV", "--at", "55 °C"),
                "factor"), 1e-8);
    }

    @Test
    void fatigueOfTwoBearings() throws Ending {
        JsonObject json = Verbs.json("", "bearing", "--law", "ISO 281", "--rating", "500 N", "--load", "5 N", "--load", "5 N", "--speed",
                "3000 rpm");
        double one = 1e6 * 1e6 / 3000 / 60;
        assertEquals(one, Verbs.number(json, "bearing1") / HOUR, 1e-6 * one);
        assertEquals(one * Math.pow(2, -0.9), Verbs.number(json, "life") / HOUR, 1e-6 * one);
    }

    @Test
    void handbookAndGrease() throws Ending {
        JsonObject motor = Verbs.json("", "bearing", "--law", "MIL-HDBK-217F", "--at", "50 °C", "--design-life", "60000 h");
        assertTrue(motor.get("sentence").getAsString().startsWith("10.2 failures in 10^6 h at 50.0 °C"), motor.toString());
        JsonObject grease = Verbs.json("", "bearing", "--law", "grease life", "--at", "90 °C", "--rated-at", "70 °C");
        assertEquals(Math.pow(10, 2450 * (1 / 363.15 - 1 / 343.15)), Verbs.number(grease, "factor"), 1e-9);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            --law foo | --law "foo" is not known; it is one of factor per 10 K, Arrhenius, grease life, ISO 281, MIL-HDBK-217F.
            --life 1h | life bearing: --at is missing: the air temperature that is asked for, for example "55 °C". See "tramontane help life bearing".
            --at 300K --load 5N | --load does not belong to the law "factor per 10 K"; it takes --life, --rated-at, --at, --factor, --rated-speed, --speed, --speed-exponent.
            --at 300K --speed 5rpm | --rated-speed and --speed belong together; missing: --rated-speed.
            --at 3000K | --at "3000K" is out of range; it must be -100 to 500 °C.
            --law Arrhenius --at 300K | life bearing: --energy is missing: the activation energy, for example "0.4 eV". See "tramontane help life bearing".
            --law MIL-HDBK-217F --at 250K --design-life 1h | --at "250K" is out of range; the tables of MIL-HDBK-217F go from 0 to 140 °C.
            """)
    void mistakes(String options, String sentence) {
        assertEquals(sentence, Verbs.refused(2, "", ("bearing " + options).split(" ")));
    }
}
