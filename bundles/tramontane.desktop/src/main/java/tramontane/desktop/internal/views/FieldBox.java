package tramontane.desktop.internal.views;

import java.util.function.Function;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Layout;
import org.eclipse.swt.widgets.Text;
import tramontane.desktop.Palette;

/**
 * A control with a unit within its right edge and a sentence beneath it. A text has its frame drawn here, so that the unit lies inside;
 * other controls have their own.
 */
final class FieldBox extends Composite {

    private static final int INSET = 6;
    private static final int RISE = 4;
    private static final int EDGE = 3;

    private final Palette palette;
    private final boolean framed;
    private final Control inner;
    /** What of a framed control is to be seen: without the frame that the platform may draw at its edge. */
    private final Composite window;
    private Text message;
    private String unit = "";
    private boolean serious;
    private boolean edited;

    FieldBox(Composite parent, Palette palette, boolean framed, Function<Composite, ? extends Control> make) {
        super(parent, SWT.DOUBLE_BUFFERED);
        this.palette = palette;
        this.framed = framed;
        setBackground(palette.surface());
        setLayout(new Inside());
        window = framed ? new Composite(this, SWT.NONE) : this;
        inner = make.apply(window);
        if (framed) {
            window.setBackground(palette.surface());
            inner.setBackground(palette.surface());
            addListener(SWT.Paint, event -> paint(event.gc));
            inner.addListener(SWT.FocusIn, event -> redraw());
            inner.addListener(SWT.FocusOut, event -> redraw());
            addListener(SWT.MouseDown, event -> inner.setFocus());
        }
    }

    Control inner() {
        return inner;
    }

    /** Sets the unit; true if the layout of what is around changes. */
    void unit(String symbol) {
        if (!symbol.equals(unit)) {
            unit = symbol;
            layout();
            redraw();
        }
    }

    /**
     * Sets the sentence.
     *
     * @param sentence empty for none
     * @param heavy    whether it is a mistake rather than something not given yet
     * @return whether the box has become higher or lower
     */
    boolean message(String sentence, boolean heavy) {
        String before = message == null ? "" : message.getText();
        serious = heavy && !sentence.isEmpty();
        if (before.equals(sentence) && (sentence.isEmpty() || message.getForeground().equals(colour()))) {
            return false;
        }
        if (sentence.isEmpty()) {
            message.dispose();
            message = null;
        } else {
            if (message == null) {
                message = new Text(this, SWT.READ_ONLY | SWT.MULTI | SWT.WRAP);
                message.setData("tramontane.id", "message");
                message.setBackground(palette.surface());
            }
            message.setForeground(colour());
            message.setText(sentence);
        }
        redraw();
        return true;
    }

    private Color colour() {
        return serious ? palette.notMet() : palette.muted();
    }

    /** Marks a text that has not been taken over. */
    void edited(boolean now) {
        if (edited != now) {
            edited = now;
            redraw();
        }
    }

    private int boxHeight() {
        int height = inner.computeSize(SWT.DEFAULT, SWT.DEFAULT).y;
        return framed ? height + 2 * RISE : height;
    }

    private int unitWidth() {
        if (unit.isEmpty() || !framed) {
            return 0;
        }
        GC gc = new GC(this);
        try {
            return gc.textExtent(unit).x + INSET;
        } finally {
            gc.dispose();
        }
    }

    private void paint(GC gc) {
        Rectangle area = getClientArea();
        int height = boxHeight();
        boolean focus = inner.isFocusControl();
        gc.setAntialias(SWT.ON);
        gc.setForeground(serious ? palette.notMet() : focus || edited ? palette.accent() : palette.line());
        gc.setLineWidth(focus ? 2 : 1);
        int off = focus ? 1 : 0;
        gc.drawRoundRectangle(off, off, area.width - 1 - 2 * off, height - 1 - 2 * off, 6, 6);
        if (!unit.isEmpty()) {
            gc.setForeground(palette.muted());
            Point extent = gc.textExtent(unit);
            gc.drawText(unit, area.width - INSET - extent.x, (height - extent.y) / 2, true);
        }
    }

    private final class Inside extends Layout {
        @Override
        protected Point computeSize(Composite composite, int widthHint, int heightHint, boolean flush) {
            int width = widthHint == SWT.DEFAULT ? 120 : widthHint;
            int height = boxHeight();
            if (message != null) {
                height += message.computeSize(width, SWT.DEFAULT, flush).y + 2;
            }
            return new Point(width, height);
        }

        @Override
        protected void layout(Composite composite, boolean flush) {
            Rectangle area = composite.getClientArea();
            int height = boxHeight();
            if (framed) {
                int width = Math.max(10, area.width - 2 * INSET - unitWidth());
                window.setBounds(INSET, RISE, width, height - 2 * RISE);
                inner.setBounds(-EDGE, -EDGE, width + 2 * EDGE, height - 2 * RISE + 2 * EDGE);
            } else {
                inner.setBounds(0, 0, area.width, height);
            }
            if (message != null) {
                message.setBounds(0, height + 2, area.width, Math.max(1, area.height - height - 2));
            }
        }
    }
}
