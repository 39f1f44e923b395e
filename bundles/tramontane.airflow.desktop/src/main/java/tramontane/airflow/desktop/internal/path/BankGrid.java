package tramontane.airflow.desktop.internal.path;

import tramontane.analysis.Cases;
import tramontane.model.Passage;
import tramontane.model.Value;

/**
 * How the movers of a bank are drawn: seen along the flow, one cell per position, those in series side by side in the flow's direction.
 *
 * @param columns how many stand side by side, across the flow
 * @param series  how many stand behind one another
 * @param stacks  in how many stacks the columns are drawn, so that a large bank stays low
 */
record BankGrid(int columns, int series, int stacks) {

    /** Edge of a cell. */
    static final double CELL = 18;
    /** Between the cells. */
    static final double GAP = 3;
    /** No more positions than this are drawn one by one. */
    static final int MOST = 96;
    private static final int HIGHEST = 6;

    /** The grid of a bank; what cannot be read counts as one. */
    static BankGrid of(Passage bank) {
        int positions = Cases.positions(bank);
        int series = bank.parameters().get("series").map(BankGrid::whole).orElse(1);
        if (positions > MOST || series > 12) {
            return new BankGrid(1, 1, 1);
        }
        int columns = Math.max(1, positions / series);
        return new BankGrid(columns, series, (columns + HIGHEST - 1) / HIGHEST);
    }

    private static int whole(Value value) {
        return value instanceof Value.Num num && num.number() >= 1 && num.number() <= 1000 && num.number() == Math.rint(num.number())
                ? (int) num.number() : 1;
    }

    /** How many positions are drawn. */
    int positions() {
        return columns * series;
    }

    int rows() {
        return (columns + stacks - 1) / stacks;
    }

    double width() {
        return stacks * (series * (CELL + GAP) - GAP) + (stacks - 1) * 2 * GAP;
    }

    double height() {
        return rows() * (CELL + GAP) - GAP;
    }

    /** Where the cell of a position is, counted from 1, in a grid with its middle there. */
    Box cell(int position, Spot middle) {
        int column = (position - 1) / series;
        int behind = (position - 1) % series;
        int stack = column / rows();
        double left = middle.x() - width() / 2 + stack * (series * (CELL + GAP) + GAP) + behind * (CELL + GAP);
        double top = middle.y() - height() / 2 + column % rows() * (CELL + GAP);
        return new Box(left, top, CELL, CELL);
    }
}
