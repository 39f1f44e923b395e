package tramontane.selection;

/**
 * How many movers a bank holds and how they stand.
 *
 * @param across side by side in one direction, at least 1
 * @param along  such rows side by side, at least 1
 * @param series one behind another, at least 1
 * @param turned whether each is turned by a quarter, so that its height lies across
 */
public record Arrangement(int across, int along, int series, boolean turned) {

    /** One mover. */
    public static final Arrangement SINGLE = new Arrangement(1, 1, 1, false);

    public Arrangement {
        if (across < 1 || along < 1 || series < 1) {
            throw new IllegalArgumentException("an arrangement holds at least one mover each way, got " + across + " × " + along
                    + " × " + series);
        }
    }

    /** How many columns stand side by side. */
    public int columns() {
        return across * along;
    }

    /** How many movers there are. */
    public int movers() {
        return columns() * series;
    }

    /** What people read: {@code 2 × 3 side by side, 2 in series}. */
    public String words() {
        String side = columns() == 1 ? "" : (along == 1 || across == 1 ? "" + columns() : across + " × " + along) + " side by side";
        String behind = series == 1 ? "" : series + " in series";
        String both = side.isEmpty() && behind.isEmpty() ? "single" : side + (side.isEmpty() || behind.isEmpty() ? "" : ", ") + behind;
        return both + (turned ? ", turned" : "");
    }
}
