package tramontane.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class SystemPartsTest {
    private static final Platform LINUX = new Platform("linux", "x86_64");

    private static String words(Throwable thrown) {
        return SystemParts.lacking(thrown, LINUX).orElse("");
    }

    /** Message as SWT 3.135 gives it where GTK is not installed, cut in the middle. */
    @Test
    void aMissingLibraryIsNamedWithItsPackage() {
        Throwable missing = new UnsatisfiedLinkError("Could not load SWT library. Reasons: \n"
                + "\t/home/user/.swt/lib/linux/x86_64/libswt-pi3-gtk-4974r10.so: libgtk-3.so.0: cannot open shared object file: "
                + "No such file or directory");
        assertTrue(words(missing).contains("apt install libgtk-3-0"), words(missing));
        assertEquals(words(missing), words(new ExceptionInInitializerError(new IllegalStateException("later", missing))));
    }

    @Test
    void aDisplayThatDoesNotAnswerIsNamed() {
        String words = words(new IllegalStateException("No more handles [gtk_init_check() failed]"));
        assertTrue(words.contains("DISPLAY"), words);
    }

    @Test
    void whatIsBrokenOtherwiseIsLeftToOthers() {
        assertEquals(Optional.empty(), SystemParts.lacking(new IllegalStateException("no luck"), LINUX));
        assertEquals(Optional.empty(), SystemParts.lacking(new NullPointerException(), LINUX));
    }
}
