package tramontane.desktop.internal.pages;

import java.util.List;
import java.util.Optional;
import tramontane.analysis.Severity;
import tramontane.model.edit.Subject;

/**
 * A line of the design tree.
 *
 * @param key      tells lines apart from one scene to the next, so that those that are open stay open
 * @param subject  what it stands for; empty for a group
 * @param adds     what is added to it by "add"; empty where nothing can be
 * @param label    its name
 * @param detail   the one thing worth knowing of it: its kind, its heat, its limit
 * @param icon     the name of its picture
 * @param severity the worst that is said of it; empty where nothing is
 * @param stale    whether that belongs to an earlier state of the design
 * @param why      that sentence
 * @param children the lines beneath it
 */
public record TreeNode(String key, Optional<Subject> subject, Optional<Subject.Kind> adds, String label, String detail, String icon,
        Optional<Severity> severity, boolean stale, String why, List<TreeNode> children) {

    public TreeNode {
        children = List.copyOf(children);
    }

    TreeNode with(List<TreeNode> others) {
        return new TreeNode(key, subject, adds, label, detail, icon, severity, stale, why, others);
    }
}
