/**
 * The command line: how an extension adds a verb, and what programs that read our output can count on.
 *
 * <p>Answers: how do I solve a design from a script, and how does my bundle add a word to the command line? Start with
 * {@link tramontane.cli.Verb}; {@link tramontane.cli.ExitCode} says how a run ended.
 *
 * <h2>JSON</h2>
 * {@code solve --format json} writes one object in UTF-8, its members always in this order, lists empty rather than missing.
 * Numbers are SI (K, m³/s, rad/s …) whatever {@code --units} says. Names of members and words stay as they are while
 * {@code format} is 1; further members may be added.
 * <ul>
 * <li>{@code format}: 1</li>
 * <li>{@code design}: the design's name; empty where the file could not be read</li>
 * <li>{@code conditions}: {@code id}, and {@code cases}, the ids of the cases it stands for</li>
 * <li>{@code figures}: {@code id}, {@code label}, {@code place} (empty for the design as a whole), {@code condition} (the id
 *     of a case; empty for all conditions), {@code value}, where known {@code lower} and {@code upper}, {@code unit}
 *     ({@code 1} for a number without dimension)</li>
 * <li>{@code verdicts}, of requirements, then of limits of heat sources: {@code figure}, {@code place}, where stated
 *     {@code atLeast} and {@code atMost}, {@code condition}, {@code severity} ({@code met}, {@code caution}, {@code not met},
 *     {@code not judged}), where judged {@code value}, {@code at} (the place that decided), {@code case} and {@code margin}
 *     (negative outside the limit), {@code reason}</li>
 * <li>{@code findings}: {@code severity} (as above, and {@code note}, {@code error}), {@code message}, {@code place},
 *     {@code condition}, {@code remedy}, {@code source}</li>
 * <li>{@code outcomes}: {@code analysis}, {@code condition}, {@code status} ({@code computed}, {@code not computed},
 *     {@code not run}, {@code failed})</li>
 * <li>{@code problems}: {@code severity} ({@code error}, {@code caution}), {@code place} in the file, {@code message}</li>
 * </ul>
 * A file with errors gives the same object with {@code problems} and otherwise empty lists; so does {@code validate}.
 *
 * <h2>CSV</h2>
 * {@code solve --format csv} writes the figures, one in a row: {@code id,label,place,condition,value,lower,upper,unit}; quoted
 * as in RFC 4180, lines ending in CR LF, in UTF-8 without a mark. Numbers are SI unless {@code --units} says otherwise. Texts
 * are written as they stand in the design: a name that begins with {@code =} is a formula to a spreadsheet, so import such
 * columns as text.
 */
@Export
@Version("0.1.0")
package tramontane.cli;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
