/**
 * Selection: which part of a catalogue, how many of it, arranged how, at what speed.
 *
 * <p>Answers: which candidates meet every requirement of a design in all its conditions, which of them are best by the weights of
 * who asks, why the others fail, and what would have to change?
 *
 * <p>It judges by figures and requirements only, so that analyses that come later join unasked.
 */
@Export
@Version("0.1.0")
package tramontane.selection;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
