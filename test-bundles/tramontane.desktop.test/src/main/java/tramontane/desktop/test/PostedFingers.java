package tramontane.desktop.test;

import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;

/** By {@link Display#post}, which is real on Windows and macOS; under GTK it knows no modifiers and no drag. */
final class PostedFingers implements Fingers {
    private final Display display;

    PostedFingers(Display display) {
        this.display = display;
    }

    private void post(int type, java.util.function.Consumer<Event> fill) {
        Event event = new Event();
        event.type = type;
        fill.accept(event);
        if (!display.post(event)) {
            throw new IllegalStateException("the display does not take posted events");
        }
    }

    @Override
    public void move(Point place) {
        post(SWT.MouseMove, event -> {
            event.x = place.x;
            event.y = place.y;
        });
    }

    @Override
    public void button(int number, boolean down) {
        post(down ? SWT.MouseDown : SWT.MouseUp, event -> event.button = number);
    }

    @Override
    public void key(int code, boolean down) {
        post(down ? SWT.KeyDown : SWT.KeyUp, event -> event.keyCode = code);
    }

    @Override
    public void character(int codePoint, boolean down) {
        boolean shift = Character.isUpperCase(codePoint);
        if (shift && down) {
            key(SWT.SHIFT, true);
        }
        post(down ? SWT.KeyDown : SWT.KeyUp, event -> event.character = (char) codePoint);
        if (shift && !down) {
            key(SWT.SHIFT, false);
        }
    }

    @Override
    public ImageData look(Rectangle area) {
        Image image = new Image(display, area.width, area.height);
        GC gc = new GC(display);
        try {
            gc.copyArea(image, area.x, area.y);
            return image.getImageData(display.getPrimaryMonitor().getZoom());
        } finally {
            gc.dispose();
            image.dispose();
        }
    }

    @Override
    public void sync() {
        // Posted events come in order with all others.
    }
}
