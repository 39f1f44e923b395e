package tramontane.desktop.internal.judging;

import tramontane.desktop.Command;
import tramontane.desktop.Icon;
import tramontane.desktop.SheetTable;

/** The command that asks where the figure in a table's cell comes from. */
final class Explaining {

    private static final Icon ICON = Icon.read(Explaining.class, "/tramontane/desktop/icons/wherefrom.svg");

    private Explaining() {
    }

    static Command command(String view, SheetTable table) {
        return Command.of("tramontane." + view + ".explain", "Where from", "Shows where the figure in this cell comes from.",
                desk -> table.figure().ifPresent(desk::explain)).keys("F4").icon(ICON).when(scene -> table.figure().isPresent());
    }
}
