/**
 * What our own verbs are made of, for verbs of others as well: arguments, files, tables, sentences.
 *
 * <p>Answers: how does a verb of mine take its arguments apart, read a design, show quantities and write files as those that
 * come with the program do? Start with {@link tramontane.cli.terminal.TerminalVerb} and
 * {@link tramontane.cli.terminal.Syntax}; {@link tramontane.cli.terminal.VerbGroup} is for a verb with verbs of its own.
 *
 * <p>Nothing here is needed for a verb: {@link tramontane.cli.Verb} alone will do.
 */
@Export
@Version("0.1.0")
package tramontane.cli.terminal;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
