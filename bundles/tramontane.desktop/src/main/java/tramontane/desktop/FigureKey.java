package tramontane.desktop;

import tramontane.analysis.Figure;

/**
 * Which figure is meant.
 *
 * @param id        the figure's id
 * @param place     its place; empty for the design as a whole
 * @param condition the case's id; empty for a figure of all conditions
 */
public record FigureKey(String id, String place, String condition) {

    /** The key of a figure. */
    public static FigureKey of(Figure figure) {
        return new FigureKey(figure.kind().id(), figure.place(), figure.condition());
    }
}
