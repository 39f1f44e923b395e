package tramontane.launcher;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Which folders of feature files a start reads. What lies in {@code features/} itself is always loaded. What only one entry needs
 * lies in {@code features/ENTRY/}, and what it needs on one platform only in {@code features/ENTRY/PLATFORM/}: the command line
 * starts without the window's bundles and the window without the verbs.
 *
 * @param features the folder {@code features} of the install folder
 * @param platform the machine that the program runs on
 */
record FeatureFolders(Path features, Platform platform) {

    /** Folders that a start with this entry reads; an entry without a folder of its own, such as that of tests, is given all. */
    List<Path> with(String entry) {
        List<Path> all = new ArrayList<>(List.of(features));
        entries().stream().filter(name -> !entries().contains(entry) || name.equals(entry)).forEach(name -> all.addAll(of(name)));
        return all;
    }

    /** Folders that a start with this entry leaves out. */
    List<Path> without(String entry) {
        List<Path> read = with(entry);
        return entries().stream().flatMap(name -> of(name).stream()).filter(folder -> !read.contains(folder)).toList();
    }

    private List<String> entries() {
        return folders(features).stream().map(folder -> folder.getFileName().toString()).toList();
    }

    private List<Path> of(String entry) {
        Path own = features.resolve(entry);
        Path ofPlatform = own.resolve(platform.toString());
        return Files.isDirectory(ofPlatform) ? List.of(own, ofPlatform) : List.of(own);
    }

    /** Why an entry cannot run on this machine, if it has parts for machines and none of them is for this one. */
    Optional<String> missing(String entry) {
        List<String> parts = folders(features.resolve(entry)).stream().map(folder -> folder.getFileName().toString()).toList();
        return parts.isEmpty() || parts.contains(platform.toString()) ? Optional.empty()
                : Optional.of("the " + entry + " cannot open a window on " + platform + ", as this installation has what that needs for "
                        + String.join(", ", parts) + " only; the command line works here");
    }

    private static List<Path> folders(Path parent) {
        List<Path> found = new ArrayList<>();
        if (Files.isDirectory(parent)) {
            try (DirectoryStream<Path> entries = Files.newDirectoryStream(parent, Files::isDirectory)) {
                entries.forEach(found::add);
            } catch (IOException unreadable) {
                throw new UncheckedIOException(unreadable);
            }
        }
        found.sort(null);
        return found;
    }
}
