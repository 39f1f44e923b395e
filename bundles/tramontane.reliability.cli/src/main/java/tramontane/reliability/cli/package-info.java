/**
 * The verb {@code life} of the command line, and what programs that read its output can count on.
 *
 * <p>Answers: what does a life test show, how is one planned, how long do enough of some units run, what does a law of life say, how do
 * the lives of a design look? Nothing here is for other bundles to call; {@code tramontane.reliability} is.
 *
 * <h2>JSON</h2>
 * One object in UTF-8, its members always in this order, lists empty rather than missing, numbers in SI (times in s, temperatures in K);
 * null where nothing is known or a bound has no end. Names of members stay as they are while {@code format} is 1; further members may be
 * added. {@code sentence} is the answer in words.
 *
 * <p>{@code life test}:
 * <ul>
 * <li>{@code format}: 1; {@code name}, {@code confidence}, {@code method} in words</li>
 * <li>{@code groups}: on test; {@code temperature}, {@code speed}, {@code units}, {@code failures}</li>
 * <li>{@code answers}: for each group, or for the temperature asked for; {@code sentence}, {@code temperature}, {@code speed},
 *     {@code units}, {@code failures}; {@code distributions}, the best first: {@code name}, {@code scale} and {@code shape}
 *     ({@code estimate}, {@code lower}, {@code upper}), {@code shapeKnown}, {@code lives} ({@code name}, {@code failed}, null for the mean,
 *     and three numbers), {@code survival} ({@code time} and three numbers), {@code logLikelihood} and {@code aic} for times in hours,
 *     {@code correlation}, {@code shownL10} (one-sided); then {@code exponentialAgainstWeibull} ({@code statistic}, {@code degrees},
 *     {@code p}), {@code andersonDarling} ({@code statistic}, {@code p}, {@code samples}),
 *     {@code shownL10KnownShape} (one-sided, exact)</li>
 * <li>{@code temperatureEffect}: {@code activationEnergy}, {@code factorPerTenKelvin}, {@code commonShape}, {@code law}</li>
 * <li>{@code cautions}: sentences</li>
 * </ul>
 * {@code life plan}: {@code format}, {@code sentence}, {@code life}, {@code failed}, {@code confidence}, {@code shape}, {@code failures},
 * {@code failedUnits}, {@code acceleration}, {@code units}, {@code time}, {@code shownLife}, {@code shownConfidence}, {@code chances}
 * ({@code ratio} of true to wanted life, {@code chance}), {@code ratiosToPass}.
 *
 * <p>{@code life redundancy}: {@code format}, {@code sentence}, {@code needed}, {@code units}, {@code survival} ({@code time},
 * {@code unit}, {@code system}), {@code l1}, {@code l10}, {@code mean} of the system without repair, {@code meanWithRepair}, {@code availability},
 * {@code kept}, {@code longestInterval}, {@code exchangesPerYear} of the fleet, {@code spares}.
 *
 * <p>{@code life bearing}: {@code format}, {@code sentence}, {@code law}, the numbers of that law, {@code cautions}.
 *
 * <p>{@code life charts}: {@code format}, {@code files}, {@code charts} (descriptions), {@code notes}.
 *
 * <h2>CSV</h2>
 * {@code life test}: a row for each number of each distribution; the unit stands in a column.
 */
package tramontane.reliability.cli;
