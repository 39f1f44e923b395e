/**
 * The verb {@code sound} of the command line, and what programs that read its output can count on.
 *
 * <p>Answers: what is in a recording, what noise has the part that was recorded, what would a design sound like, how are band levels
 * rated? Nothing here is for other bundles to call; {@code tramontane.acoustics} is.
 *
 * <h2>JSON</h2>
 * One object in UTF-8, its members always in this order, lists empty rather than missing, numbers in SI, levels in dB; null where there
 * is no sound. Names of members stay as they are while {@code format} is 1; further members may be added.
 *
 * <p>{@code sound recording}:
 * <ul>
 * <li>{@code format}: 1; {@code name} of the file, {@code coding}, {@code sampleRate}, {@code channels}, {@code channel} that was looked at
 *     (from 1, null for the mean power of all), {@code duration}</li>
 * <li>{@code calibration}: whether it is {@code known}, in {@code words}, level of a {@code fullScaleSine}, {@code unit} of all levels</li>
 * <li>{@code levelA}, {@code levelC}, {@code levelZ}: equivalent levels; {@code fastA}: the highest A-weighted, fast; {@code peak}: largest
 *     sample re full scale; {@code clipped}: number of samples at full scale</li>
 * <li>{@code octaves}, {@code thirds}: name of the band, {@code level}, {@code deviation} by chance; thirds with a background also its
 *     level, the level {@code without} it, and whether that is known {@code atMost}</li>
 * <li>{@code tones}: {@code frequency}, {@code level}, {@code toNoise}, {@code prominence}, how many are heard {@code together},
 *     {@code prominent}</li>
 * <li>{@code part}, where one is meant: {@code distance}, {@code speed}, {@code pressureLevelA}, {@code powerLevelA}, {@code section}</li>
 * <li>{@code cautions}: sentences</li>
 * </ul>
 * {@code sound listen}: {@code format}, {@code fullScaleSine}, {@code sounds} ({@code file}, {@code design}, {@code condition},
 * {@code position}, {@code levelA}, {@code toLoudest}, {@code toFullScale}), {@code notes}.
 *
 * <p>{@code sound rate}: {@code format}, {@code levelA}, {@code levelC}, {@code levelZ}, {@code nr} and {@code nc} ({@code value}, the
 * {@code octave} that decides, whether it is {@code tabulated}; null where no octave counts), {@code octaves}.
 *
 * <h2>CSV</h2>
 * {@code sound recording}: a row for each third-octave; the unit of a column stands in its heading.
 */
package tramontane.acoustics.cli;
