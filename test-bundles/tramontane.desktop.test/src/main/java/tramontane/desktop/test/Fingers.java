package tramontane.desktop.test;

import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Display;

/** Moves the pointer, presses what can be pressed and looks, as if somebody did. */
interface Fingers {

    /** Those that this display understands: the X server's own where there is one, else what SWT posts. */
    static Fingers on(Display display) {
        return org.eclipse.swt.SWT.getPlatform().equals("gtk") ? XFingers.connect(display) : new PostedFingers(display);
    }

    /** Moves the pointer, in points of the display. */
    void move(Point place);

    /** Presses or releases a button of the mouse; 1 is the left one. */
    void button(int number, boolean down);

    /** Presses or releases a key that stands for no character: a constant of SWT such as {@code SWT.F2} or {@code SWT.CTRL}. */
    void key(int code, boolean down);

    /** Presses or releases the key of a character, with Shift where that is needed. */
    void character(int codePoint, boolean down);

    /** What can be seen of a part of the display, in points, at its full resolution. */
    ImageData look(Rectangle area);

    /** Gives back control when the display has what was done, though nobody has reacted to it yet. */
    void sync();
}
