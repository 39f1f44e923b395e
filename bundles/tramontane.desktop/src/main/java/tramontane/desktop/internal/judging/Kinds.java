package tramontane.desktop.internal.judging;

import java.util.List;
import tramontane.analysis.FigureKind;
import tramontane.desktop.Desk;

/** The figures that anything loaded can give, each once, in the order of the analyses. */
final class Kinds {

    private Kinds() {
    }

    static List<FigureKind> of(Desk desk) {
        return desk.engine().analyses().stream().flatMap(analysis -> analysis.figures().stream()).distinct().toList();
    }
}
