package tramontane.desktop.internal.commands;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.desktop.Command;

/**
 * All commands of the window, in the order of the menus: the one place from which menus, context menus, keys and the list of keys are made.
 *
 * @param menus commands by menu, in groups that a line divides
 */
public record CommandTable(Map<String, List<List<Command>>> menus) {

    public CommandTable {
        Map<String, List<List<Command>>> copy = new LinkedHashMap<>();
        menus.forEach((menu, groups) -> copy.put(menu, groups.stream().map(List::copyOf).toList()));
        menus = java.util.Collections.unmodifiableMap(copy);
    }

    /** All commands. */
    public List<Command> all() {
        List<Command> all = new ArrayList<>();
        menus.values().forEach(groups -> groups.forEach(all::addAll));
        return all;
    }

    /** The command of that id. */
    public Optional<Command> of(String id) {
        return all().stream().filter(command -> command.id().equals(id)).findFirst();
    }

    /** The command that a key stands for. */
    public Optional<Command> of(Keys pressed) {
        return all().stream().filter(command -> !command.keys().isEmpty() && Keys.parse(command.keys()).equals(pressed)).findFirst();
    }

    /** Keys that stand for two commands; none in a sound table. */
    public List<String> clashes() {
        Map<Keys, String> taken = new LinkedHashMap<>();
        List<String> clashes = new ArrayList<>();
        for (Command command : all()) {
            if (!command.keys().isEmpty()) {
                String other = taken.putIfAbsent(Keys.parse(command.keys()), command.id());
                if (other != null) {
                    clashes.add(command.keys() + " is " + other + " and " + command.id());
                }
            }
        }
        return clashes;
    }
}
