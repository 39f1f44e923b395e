package tramontane.desktop.internal.icons;

import java.util.EnumMap;
import java.util.Map;
import tramontane.analysis.Severity;
import tramontane.desktop.Icon;

/** The mark of each severity; each has a shape of its own. */
public final class Marks {

    /** Width and height of a mark. */
    public static final int SIDE = 16;

    private static final Map<Severity, Icon> ICONS = new EnumMap<>(Severity.class);

    static {
        for (Severity severity : Severity.values()) {
            String name = severity == Severity.ERROR ? "error" : severity.word().replace(" ", "");
            ICONS.put(severity, Icon.read(Marks.class, "/tramontane/desktop/icons/mark-" + name + ".svg"));
        }
    }

    private Marks() {
    }

    /** The drawing of a mark. */
    public static Icon of(Severity severity) {
        return ICONS.get(severity);
    }
}
