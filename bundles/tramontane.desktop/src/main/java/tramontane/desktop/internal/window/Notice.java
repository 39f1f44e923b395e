package tramontane.desktop.internal.window;

import java.util.List;

/**
 * Something said in the message strip.
 *
 * @param sentence what
 * @param error    whether something is wrong; such a sentence stays until it is answered or replaced
 * @param actions  what can be done about it
 */
record Notice(String sentence, boolean error, List<Action> actions) {

    Notice {
        actions = List.copyOf(actions);
    }

    /**
     * What can be done about it.
     *
     * @param label what the button says
     * @param run   does it
     */
    record Action(String label, Runnable run) {
    }

    static Notice of(String sentence) {
        return new Notice(sentence, false, List.of());
    }

    static Notice error(String sentence) {
        return new Notice(sentence, true, List.of());
    }
}
