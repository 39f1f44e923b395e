package tramontane.desktop.internal.window;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** What the window asks its user, each time because of something he did himself. */
interface Questions {

    /** Which design files are to be opened. */
    List<Path> open(Optional<Path> folder);

    /**
     * Where something is to be saved.
     *
     * @param folder  where the question begins
     * @param name    the name proposed
     * @param ending  the ending of such files, with its dot
     * @param what    what such files are called: {@code Design}
     */
    Optional<Path> save(Optional<Path> folder, String name, String ending, String what);

    /**
     * One of several answers.
     *
     * @param title   what it is about
     * @param text    the question
     * @param answers the answers, the safe one first
     * @return the index of the answer; -1 where the question was left
     */
    int choose(String title, String text, List<String> answers);
}
