package tramontane.desktop.test;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.LocalResourceManager;
import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.jface.dialogs.Dialog;
import org.eclipse.jface.util.Policy;
import org.eclipse.jface.util.SafeRunnable;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.jface.wizard.Wizard;
import org.eclipse.jface.wizard.WizardDialog;
import org.eclipse.jface.wizard.WizardPage;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.PaletteData;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** What the extension notices; each of these takes away the fault that it made, as it would fail the test otherwise. */
@ExtendWith(Screen.class)
class ScreenTest {

    private static void forget() {
        new Image(Screen.display(), 16, 16);
        new Font(Screen.display(), "Sans", 9, SWT.NORMAL);
    }

    @Test
    void whatWasNotDisposedIsReportedWithThePlaceWhereItWasMade() {
        forget();
        List<Error> leaks = Screen.takeLeaks();
        assertEquals(2, leaks.size());
        for (Error leak : leaks) {
            assertTrue(Arrays.stream(leak.getStackTrace()).anyMatch(at -> at.getMethodName().equals("forget")
                    && at.getClassName().equals(ScreenTest.class.getName())), () -> Arrays.toString(leak.getStackTrace()));
        }
        assertEquals(List.of(), Screen.takeLeaks());
    }

    @Test
    void whatIsDisposedOrStillHeldIsNoLeak() {
        new Image(Screen.display(), 16, 16).dispose();
        Image held = new Image(Screen.display(), 16, 16);
        assertEquals(List.of(), Screen.takeLeaks());
        held.dispose();
        // JFace's own pictures live as long as the display, and those of a control as long as that.
        Shell shell = new Shell(Screen.display());
        LocalResourceManager resources = new LocalResourceManager(JFaceResources.getResources(), shell);
        ImageData data = new ImageData(8, 8, 24, new PaletteData(0xff0000, 0x00ff00, 0x0000ff));
        resources.create(ImageDescriptor.createFromImageDataProvider(zoom -> data));
        shell.dispose();
        assertEquals(List.of(), Screen.takeLeaks());
    }

    @Test
    void aListenerThatThrowsIsAFault() {
        Shell shell = new Shell(Screen.display());
        shell.setLayout(new FillLayout());
        Button button = new Button(shell, SWT.PUSH);
        button.setText("break");
        IllegalStateException thrown = new IllegalStateException("no luck");
        boolean[] clicked = {false};
        button.addListener(SWT.Selection, event -> {
            clicked[0] = true;
            throw thrown;
        });
        shell.setSize(200, 100);
        Hands hands = Hands.open(shell);
        hands.click("break");
        hands.until("the button was clicked", () -> clicked[0]);
        List<Throwable> faults = Screen.takeFaults();
        assertEquals(1, faults.size());
        assertSame(thrown, faults.getFirst());
    }

    @Test
    void whatJFaceSwallowsOrLogsIsAFault() {
        SafeRunnable.run(new SafeRunnable() {
            @Override
            public void run() {
                throw new IllegalStateException("swallowed");
            }

            @Override
            public void handleException(Throwable thrown) {
                // as JFace would: shown in a dialog
            }
        });
        Policy.getLog().log(new Status(IStatus.ERROR, "test", "logged"));
        List<String> messages = Screen.takeFaults().stream().map(Throwable::getMessage).toList();
        assertEquals("swallowed", messages.getFirst());
        assertTrue(messages.getLast().contains("logged"), messages::toString);
        assertEquals(2, messages.size());
    }

    @Test
    void aListenerOfAViewerThatThrowsIsAFault() {
        Shell shell = new Shell(Screen.display());
        TableViewer viewer = new TableViewer(shell);
        viewer.setContentProvider(org.eclipse.jface.viewers.ArrayContentProvider.getInstance());
        viewer.setInput(new String[] {"a", "b"});
        viewer.addPostSelectionChangedListener(event -> { });
        viewer.addSelectionChangedListener(event -> {
            throw new IllegalStateException("in a viewer");
        });
        SafeRunnable.setIgnoreErrors(true); // no dialog
        try {
            viewer.setSelection(new StructuredSelection("b"));
        } finally {
            SafeRunnable.setIgnoreErrors(false);
        }
        assertEquals(List.of("in a viewer"), Screen.takeFaults().stream().map(Throwable::getMessage).toList());
    }

    /** JFace's drawings are SVG files; with what the product ships, they have to be found and read. */
    @Test
    void aWizardOpensWithItsPictures() {
        Shell shell = new Shell(Screen.display());
        shell.setText("behind");
        shell.setLayout(new FillLayout());
        Button button = new Button(shell, SWT.PUSH);
        button.setText("begin");
        boolean[] ended = {false};
        button.addListener(SWT.Selection, event -> {
            Wizard wizard = new Wizard() {
                @Override
                public void addPages() {
                    addPage(new WizardPage("page", "Which filter", null) {
                        @Override
                        public void createControl(Composite parent) {
                            setControl(new Label(parent, SWT.NONE));
                        }
                    });
                }

                @Override
                public boolean performFinish() {
                    ended[0] = true;
                    return true;
                }
            };
            wizard.setWindowTitle("Wizard");
            new WizardDialog(shell, wizard).open();
        });
        shell.setSize(300, 200);
        Hands hands = Hands.open(shell);
        hands.then("Wizard", dialog -> dialog.click("Finish"));
        hands.click("begin");
        hands.until("the wizard ended", () -> ended[0]);
        assertTrue(JFaceResources.getImage(Dialog.DLG_IMG_MESSAGE_ERROR).getBounds().width >= 12);
    }
}
