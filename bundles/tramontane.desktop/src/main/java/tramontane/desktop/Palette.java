package tramontane.desktop;

import java.util.List;
import org.eclipse.swt.graphics.Color;
import tramontane.analysis.Severity;

/**
 * The colours of a window, by what they mean. Text on {@code surface} and {@code background} has a contrast of 4.5:1 or more, marks
 * and lines that carry meaning 3:1 (WCAG 2.2, 1.4.3 and 1.4.11).
 *
 * @param dark       whether it is a dark one
 * @param text       text
 * @param muted      text that matters less: units, captions
 * @param stale      text that belongs to an earlier state of the design
 * @param background behind everything
 * @param surface    behind lists, fields, drawings
 * @param raised     behind boxes that stand out of a drawing
 * @param line       rules, frames, grids
 * @param accent     what is selected or in focus
 * @param met        a requirement holds
 * @param caution    look at it
 * @param notMet     a requirement does not hold, an error
 * @param notJudged  nothing is known
 * @param series     colours of series that can be told apart with any colour vision (Okabe and Ito 2008)
 */
public record Palette(boolean dark, Color text, Color muted, Color stale, Color background, Color surface, Color raised, Color line,
        Color accent, Color met, Color caution, Color notMet, Color notJudged, List<Color> series) {

    /** On a light background. */
    public static final Palette LIGHT = new Palette(false, rgb(0x1f2328), rgb(0x59636e), rgb(0x646c75), rgb(0xf4f5f6), rgb(0xffffff),
            rgb(0xfafbfc), rgb(0xc8ced5), rgb(0x0b62ad), rgb(0x1a7340), rgb(0x8f5a00), rgb(0xb3261e), rgb(0x5d6570),
            colours(0x0072b2, 0xd55e00, 0x009e73, 0xcc79a7, 0x56b4e9, 0xe69f00, 0x5b5f66, 0xb8a800));

    /** On a dark background. */
    public static final Palette DARK = new Palette(true, rgb(0xe3e6ea), rgb(0xa4adb8), rgb(0x98a1ab), rgb(0x24272b), rgb(0x1b1e21),
            rgb(0x2c3035), rgb(0x4a5159), rgb(0x6cb6ff), rgb(0x57c785), rgb(0xe3b341), rgb(0xff8a80), rgb(0xa4adb8),
            colours(0x56b4e9, 0xe69f00, 0x2fc79a, 0xe09bc2, 0x4f9fe0, 0xd55e00, 0xb9bec6, 0xf0e442));

    public Palette {
        series = List.copyOf(series);
    }

    /** The colour of a severity's mark; it never stands alone, the word stands beside it. */
    public Color of(Severity severity) {
        return switch (severity) {
            case MET -> met;
            case NOTE -> muted;
            case CAUTION -> caution;
            case NOT_JUDGED -> notJudged;
            case NOT_MET, ERROR -> notMet;
        };
    }

    /** The colour of the n-th series; begins anew after the last. */
    public Color series(int n) {
        return series.get(Math.floorMod(n, series.size()));
    }

    /** A colour on the even scale for temperature and pressure; see {@link ColourScale#at}. */
    public Color scale(double share) {
        return rgb(ColourScale.at(share));
    }

    private static List<Color> colours(int... rgb) {
        return java.util.Arrays.stream(rgb).mapToObj(Palette::rgb).toList();
    }

    private static Color rgb(int rgb) {
        return new Color(rgb >> 16 & 255, rgb >> 8 & 255, rgb & 255);
    }
}
