/**
 * Views that tell whether a design holds and why: the requirements matrix, findings, where a figure comes from, and all figures.
 *
 * <p>Of each view, a presenter turns a {@link tramontane.desktop.Scene} into a state without widgets, and the view draws that.
 */
package tramontane.desktop.internal.judging;
