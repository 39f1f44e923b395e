package tramontane.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.eclipse.swt.graphics.Color;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ColourScaleTest {

    /** Lightness L* of CIE 1976 from sRGB (IEC 61966-2-1). */
    private static double lightness(int rgb) {
        double y = luminance(rgb);
        return y > 0.008856 ? 116 * Math.cbrt(y) - 16 : 903.3 * y;
    }

    /** Relative luminance as WCAG 2.2 defines it. */
    private static double luminance(int rgb) {
        return 0.2126 * linear(rgb >> 16 & 255) + 0.7152 * linear(rgb >> 8 & 255) + 0.0722 * linear(rgb & 255);
    }

    private static double linear(int part) {
        double share = part / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
    }

    /** Points of matplotlib 3.6's cividis, between those that the scale is made of. */
    @ParameterizedTest
    @CsvSource({"0, 0x00224e", "1, 0xfee838", "-3, 0x00224e", "NaN, 0x00224e"})
    void theEndsAreThoseOfTheSource(double share, String colour) {
        assertEquals(Integer.decode(colour), ColourScale.at(share));
    }

    @Test
    void itGrowsEvenlyLighter() {
        double whole = lightness(ColourScale.at(1)) - lightness(ColourScale.at(0));
        for (int i = 0; i < 20; i++) {
            double step = lightness(ColourScale.at((i + 1) / 20.0)) - lightness(ColourScale.at(i / 20.0));
            assertTrue(step > 0.6 * whole / 20 && step < 1.5 * whole / 20, "step " + i + " of " + step + " in " + whole);
        }
    }

    private static double contrast(Color a, Color b) {
        double one = luminance(rgb(a)) + 0.05;
        double other = luminance(rgb(b)) + 0.05;
        return Math.max(one, other) / Math.min(one, other);
    }

    private static int rgb(Color colour) {
        return colour.getRed() << 16 | colour.getGreen() << 8 | colour.getBlue();
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void textStandsOutAndMarksDoToo(boolean dark) {
        Palette palette = dark ? Palette.DARK : Palette.LIGHT;
        Map<String, Color> grounds = Map.of("background", palette.background(), "surface", palette.surface(), "raised", palette.raised());
        Map<String, Color> texts = Map.of("text", palette.text(), "muted", palette.muted(), "stale", palette.stale(), "met", palette.met(),
                "caution", palette.caution(), "not met", palette.notMet(), "not judged", palette.notJudged(), "accent", palette.accent());
        grounds.forEach((ground, behind) -> texts.forEach((name, colour) -> assertTrue(contrast(colour, behind) >= 4.5,
                () -> name + " on " + ground + ": " + contrast(colour, behind))));
        List<Color> series = palette.series();
        for (int i = 0; i < 4; i++) {
            int n = i;
            assertTrue(contrast(series.get(i), palette.surface()) >= 3, () -> "series " + n + ": " + contrast(series.get(n), palette.surface()));
        }
    }
}
