/**
 * The verbs {@code choose} and {@code catalogue} of the command line, and what programs that read their output can count on.
 *
 * <p>Answers: how do I choose movers from a script, and look into a catalogue? Nothing here is for other bundles to call;
 * {@code tramontane.selection} and {@code tramontane.catalogue} are.
 *
 * <h2>JSON of choose</h2>
 * One object in UTF-8, its members always in this order, lists empty rather than missing. Numbers are SI whatever
 * {@code --units} says, prices as they stand in the catalogue. Names of members and words stay as they are while
 * {@code format} is 1; further members may be added.
 * <ul>
 * <li>{@code format}: 1</li>
 * <li>{@code design}, {@code bank}: the design's name and the bank's id</li>
 * <li>{@code counts}: parts in the {@code catalogue}, {@code parts} looked at, {@code fitting} the room, {@code arrangements} of
 *     these, those that {@code may} do by the reduced design, solved {@code exact}ly, {@code meeting} everything that could be judged,
 *     of how many of them something is {@code unjudged}</li>
 * <li>{@code needs}: {@code condition}, {@code requirement} that asks for most, the {@code flow} of the bank that is needed (missing
 *     where none is enough) and the {@code pressure} then, where known</li>
 * <li>{@code criteria}: {@code id}, {@code label}, {@code unit} (for a price its currency), {@code better} ({@code lower} or
 *     {@code higher}), {@code weight}, {@code about} (which figure it is, and of which place and condition; empty where the label says all)</li>
 * <li>{@code candidates}, best first: {@code rank}, {@code part}, {@code across}, {@code along}, {@code series}, {@code turned},
 *     {@code setting} (1 for full speed), {@code adjustable}, {@code speed} (rad/s), where the first is known as well {@code merit},
 *     {@code steps}, {@code unknown} (criteria with a weight that are not known of it), {@code pareto}, {@code values} by criterion,
 *     {@code unjudged} verdicts, {@code tightest}, {@code verdicts}; a verdict as {@code solve} writes it</li>
 * <li>{@code pareto}: all candidates that no other is better than in everything: part, arrangement, {@code setting}, {@code values}</li>
 * <li>{@code behind}: what may do and comes behind those listed: part, arrangement, {@code setting} below which it fails</li>
 * <li>{@code nearest} and, with {@code --rejected}, {@code rejected}: part, arrangement where one fits, {@code reason}, where known
 *     {@code timesSpeed} (at how many times its full speed it would do) and {@code setting} (that it was judged at), {@code exactly}, {@code remedy}</li>
 * <li>{@code why}: sentences</li>
 * <li>{@code findings}, {@code problems}: as {@code solve} writes them</li>
 * </ul>
 * A design with errors gives the same object without {@code counts}, with {@code problems} and otherwise empty lists.
 *
 * <h2>CSV of choose</h2>
 * A row for each candidate and, with {@code --rejected}, for each that fails, these without rank and with a {@code reason}. The
 * unit of a column stands in its heading, SI unless {@code --units} says otherwise.
 *
 * <h2>JSON of catalogue</h2>
 * {@code catalogue list}: {@code format}, {@code parts}, each with {@code id}, {@code file}, {@code values} by field, in SI, and
 * {@code problems}. {@code catalogue show}: the same for one part, with {@code fields} ({@code field}, {@code label}, {@code value},
 * {@code unit}, {@code derived}, where told {@code from}, {@code tolerance}, {@code source}) and {@code findings}.
 * {@code catalogue check}: {@code format}, {@code parts} and {@code files}, their numbers, {@code problems} and {@code findings}.
 */
package tramontane.selection.cli;
