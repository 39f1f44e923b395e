package tramontane.report;

import java.util.List;

/**
 * The colours of a drawn chart as 0xRRGGBB, by what they mean.
 *
 * @param background behind everything
 * @param text       title, names, numbers
 * @param muted      words that matter less
 * @param line       frame and axes
 * @param grid       lines at the ticks
 * @param region     stretches that mean something, laid thinly over the background
 * @param series     colours of series that can be told apart with any colour vision (Okabe and Ito 2008); at least one
 */
public record ChartColours(int background, int text, int muted, int line, int grid, int region, List<Integer> series) {

    /** On white. The last ones of series are too bright for thin lines; they stand where few charts need them. */
    public static final ChartColours LIGHT = new ChartColours(0xffffff, 0x1f2328, 0x59636e, 0x7d8590, 0xe3e6ea, 0x8b949e,
            List.of(0x0072b2, 0xd55e00, 0x009e73, 0xcc79a7, 0x56b4e9, 0xe69f00, 0x5b5f66, 0xb8a800));

    /** On nearly black. */
    public static final ChartColours DARK = new ChartColours(0x1b1e21, 0xe3e6ea, 0xa4adb8, 0x7d8590, 0x34393f, 0x8b949e,
            List.of(0x56b4e9, 0xe69f00, 0x2fc79a, 0xe09bc2, 0x4f9fe0, 0xd55e00, 0xb9bec6, 0xf0e442));

    public ChartColours {
        series = List.copyOf(series);
        if (series.isEmpty()) {
            throw new IllegalArgumentException("series need a colour");
        }
    }

    /** The colour of a series by its number; begins anew after the last. */
    public int series(int number) {
        return series.get(Math.floorMod(number, series.size()));
    }
}
