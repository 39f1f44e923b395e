package tramontane.desktop.internal.window;

import java.util.Locale;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Display;
import tramontane.desktop.Palette;
import tramontane.desktop.internal.state.Remembered.Colours;

/** Light and dark. */
final class Theme {

    private Theme() {
    }

    /** The colours to draw with. */
    static Palette palette(Display display, Colours wanted) {
        return switch (wanted) {
            case LIGHT -> Palette.LIGHT;
            case DARK -> Palette.DARK;
            case SYSTEM -> Display.isSystemDarkTheme() ? Palette.DARK : Palette.LIGHT;
        };
    }

    /**
     * Has the system's own widgets follow. SWT has no public way to ask for it; where its inner one is not as expected, the widgets stay as
     * the system draws them and only our own drawings change.
     */
    static void apply(Display display, Colours wanted) {
        boolean dark = wanted == Colours.SYSTEM ? Display.isSystemDarkTheme() : wanted == Colours.DARK;
        try {
            switch (SWT.getPlatform()) {
                case "gtk" -> {
                    if (wanted != Colours.SYSTEM) {
                        Class.forName("org.eclipse.swt.internal.gtk.OS", true, Display.class.getClassLoader())
                                .getMethod("setDarkThemePreferred", boolean.class).invoke(null, dark);
                    }
                }
                case "win32" -> Class.forName("org.eclipse.swt.internal.win32.OS", true, Display.class.getClassLoader())
                        .getMethod("setTheme", boolean.class).invoke(null, dark);
                case "cocoa" -> Class.forName("org.eclipse.swt.internal.cocoa.OS", true, Display.class.getClassLoader())
                        .getMethod("setTheme", boolean.class).invoke(null, dark);
                default -> {
                    // another platform draws as it likes
                }
            }
        } catch (ReflectiveOperationException | LinkageError otherwise) {
            // as said above
        }
    }

    /** A font with digits of one width that every system has. */
    static String digitsFont() {
        String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
        return system.startsWith("win") ? "Consolas" : system.startsWith("mac") ? "Menlo" : "Monospace";
    }
}
