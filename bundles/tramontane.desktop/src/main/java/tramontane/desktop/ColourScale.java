package tramontane.desktop;

/**
 * The colour scale for temperatures and pressures: cividis, even to the eye and the same for most kinds of colour vision (Nuñez, Anderton
 * and Renslow 2018, doi:10.1371/journal.pone.0199239). The points are every eighth of the 256 of matplotlib's table, straight between.
 */
public final class ColourScale {

    private static final int[] POINTS = {
        0x00224e, 0x00285b, 0x002e6a, 0x053371, 0x1a386f, 0x273e6e, 0x32436d, 0x3b496c, 0x434e6c, 0x4b546c, 0x535a6d,
        0x5a5f6e, 0x61656f, 0x686a71, 0x6f7073, 0x767676, 0x7d7c78, 0x848279, 0x8c8878, 0x938e78, 0x9b9476, 0xa39a74,
        0xaba072, 0xb4a76f, 0xbcae6c, 0xc4b468, 0xcdbb63, 0xd5c25e, 0xdec958, 0xe7d150, 0xf0d846, 0xf9e03a, 0xfee838,
    };

    private ColourScale() {
    }

    /**
     * A colour.
     *
     * @param share where on the scale, 0 (dark blue) to 1 (yellow); beyond it counts as its end, NaN as 0
     * @return 0xRRGGBB
     */
    public static int at(double share) {
        double place = Math.clamp(Double.isNaN(share) ? 0 : share, 0, 1) * (POINTS.length - 1);
        int below = Math.min((int) place, POINTS.length - 2);
        double part = place - below;
        int colour = 0;
        for (int shift = 16; shift >= 0; shift -= 8) {
            int from = POINTS[below] >> shift & 255;
            int to = POINTS[below + 1] >> shift & 255;
            colour |= (int) Math.round(from + part * (to - from)) << shift;
        }
        return colour;
    }
}
