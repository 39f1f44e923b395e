package tramontane.selection;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.model.AirMover;
import tramontane.model.Quantity;

/**
 * The room that a bank may take up.
 *
 * @param width   of the opening, m; as much as is wanted where empty
 * @param height  of the opening, m
 * @param depth   along the flow, m
 * @param columns how many movers may stand side by side
 * @param series  how many may stand one behind another
 * @param movers  how many there may be in all
 */
public record Space(Optional<Double> width, Optional<Double> height, Optional<Double> depth, int columns, int series, int movers) {

    /** Up to two side by side and two one behind another, of any size. */
    public static final Space ANY = new Space(Optional.empty(), Optional.empty(), Optional.empty(), 2, 2, 4);

    /** More columns in one direction than this are not looked at. */
    private static final int MOST = 100;

    /**
     * The arrangements of a part that fit, those with fewer movers first. Of several layouts with as many columns the first is
     * given, not turned before turned: they work alike.
     *
     * @param part the part; where it does not state a size that matters here, none fit
     */
    public List<Arrangement> arrangements(AirMover part) {
        Optional<Double> w = part.width().map(Quantity::si);
        Optional<Double> h = part.height().map(Quantity::si);
        Optional<Double> d = part.depth().map(Quantity::si);
        int most = depth.isEmpty() ? series : d.map(each -> Math.min(series, times(depth.get(), each))).orElse(0);
        List<Arrangement> all = new ArrayList<>();
        for (int n = 1; n <= Math.min(columns, movers); n++) {
            Optional<Arrangement> side = side(n, w, h);
            for (int s = 1; s <= most && n * s <= movers && side.isPresent(); s++) {
                all.add(new Arrangement(side.get().across(), side.get().along(), s, side.get().turned()));
            }
        }
        all.sort((a, b) -> a.movers() != b.movers() ? a.movers() - b.movers() : a.series() - b.series());
        return all;
    }

    private Optional<Arrangement> side(int n, Optional<Double> w, Optional<Double> h) {
        if (width.isPresent() && (w.isEmpty() || h.isEmpty()) || height.isPresent() && (w.isEmpty() || h.isEmpty())) {
            return Optional.empty();
        }
        for (boolean turned : new boolean[] {false, true}) {
            int across = room(width, turned ? h : w);
            int along = room(height, turned ? w : h);
            for (int l = 1; l <= n; l++) {
                if (n % l == 0 && l <= along && n / l <= across) {
                    return Optional.of(new Arrangement(n / l, l, 1, turned));
                }
            }
        }
        return Optional.empty();
    }

    private static int room(Optional<Double> room, Optional<Double> size) {
        return room.isEmpty() ? MOST : times(room.get(), size.orElseThrow());
    }

    /** How often a size goes into a room; a ten-thousandth too large counts as fitting, for what rounding does. */
    private static int times(double room, double size) {
        return (int) Math.min(MOST, Math.floor(room / size * (1 + 1e-4)));
    }

    /** Whether any room is given. */
    public boolean isBounded() {
        return width.isPresent() || height.isPresent() || depth.isPresent();
    }
}
