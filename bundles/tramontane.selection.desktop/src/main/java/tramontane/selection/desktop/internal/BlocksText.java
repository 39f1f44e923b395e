package tramontane.selection.desktop.internal;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Composite;
import tramontane.desktop.Desk;
import tramontane.desktop.Palette;

/** Shows text blocks in a field that can be read, selected and copied. */
final class BlocksText {

    private static final int MARGIN = 8;

    private final StyledText field;
    private final Desk desk;
    private TextBlocks shown = new TextBlocks("", List.of());
    private Palette palette;

    BlocksText(Composite parent, Desk desk) {
        this.desk = desk;
        field = new StyledText(parent, SWT.MULTI | SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL);
        field.setMargins(MARGIN, MARGIN, MARGIN, MARGIN);
        field.setLineSpacing(2);
        field.setAlwaysShowScrollBars(false);
        field.setCaret(null);
    }

    StyledText control() {
        return field;
    }

    void show(TextBlocks blocks, Palette colours) {
        if (blocks.equals(shown) && colours.equals(palette)) {
            return;
        }
        int top = field.getTopPixel();
        boolean same = blocks.text().lines().findFirst().equals(shown.text().lines().findFirst());
        shown = blocks;
        palette = colours;
        field.setBackground(colours.surface());
        field.setForeground(colours.text());
        field.setText(blocks.text());
        List<StyleRange> ranges = new ArrayList<>();
        for (TextBlocks.Style style : blocks.styles()) {
            StyleRange range = new StyleRange(style.from(), style.length(), style.kind() == TextBlocks.Kind.HEAD ? colours.muted() : colours.text(), null);
            range.font = switch (style.kind()) {
                case TITLE, HEADING -> desk.bold();
                case HEAD, TABLE -> desk.digits();
            };
            ranges.add(range);
        }
        field.setStyleRanges(ranges.toArray(StyleRange[]::new));
        for (TextBlocks.Style style : blocks.styles()) {
            if (style.kind() == TextBlocks.Kind.TABLE || style.kind() == TextBlocks.Kind.HEAD) {
                int line = field.getLineAtOffset(style.from());
                field.setLineWrapIndent(line, 1, 3 * MARGIN);
            }
        }
        field.setTopPixel(same ? top : 0);
    }
}
