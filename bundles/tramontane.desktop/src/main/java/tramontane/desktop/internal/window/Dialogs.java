package tramontane.desktop.internal.window;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Shell;
import tramontane.model.file.DesignFile;

/** Asks in the system's dialogs. */
final class Dialogs implements Questions {

    private final Shell shell;

    Dialogs(Shell shell) {
        this.shell = shell;
    }

    @Override
    public List<Path> open(Optional<Path> folder) {
        FileDialog dialog = new FileDialog(shell, SWT.OPEN | SWT.MULTI);
        dialog.setText("Open designs");
        dialog.setFilterExtensions("*" + DesignFile.ENDING, "*.json", "*");
        dialog.setFilterNames("Designs (*" + DesignFile.ENDING + ")", "JSON files (*.json)", "All files");
        folder.ifPresent(path -> dialog.setFilterPath(path.toString()));
        List<Path> files = new ArrayList<>();
        if (dialog.open() != null) {
            for (String name : dialog.getFileNames()) {
                files.add(Path.of(dialog.getFilterPath()).resolve(name));
            }
        }
        return files;
    }

    @Override
    public Optional<Path> save(Optional<Path> folder, String name, String ending, String what) {
        FileDialog dialog = new FileDialog(shell, SWT.SAVE);
        dialog.setText("Save " + what.toLowerCase(java.util.Locale.ROOT));
        dialog.setFilterExtensions("*" + ending);
        dialog.setFilterNames(what + " (*" + ending + ")");
        dialog.setFileName(name.endsWith(ending) ? name : name + ending);
        dialog.setOverwrite(true);
        folder.ifPresent(path -> dialog.setFilterPath(path.toString()));
        String chosen = dialog.open();
        if (chosen == null || chosen.endsWith(ending)) {
            return Optional.ofNullable(chosen).map(Path::of);
        }
        // the dialog has asked about the name as it was typed, which is not that of the file
        Path whole = Path.of(chosen + ending);
        return Files.exists(whole) && choose("Replace the file?", whole.getFileName() + " is there already. Replace it?",
                List.of("Cancel", "Replace")) != 1 ? Optional.empty() : Optional.of(whole);
    }

    @Override
    public int choose(String title, String text, List<String> answers) {
        return MessageDialog.open(MessageDialog.QUESTION, shell, title, text, SWT.SHEET, answers.toArray(String[]::new));
    }
}
