/**
 * Sound recordings: read, calibrated, analysed, made, written.
 *
 * <p>Answers: how loud is what was recorded, in which bands, with which tones, how sure is that; what would a computed spectrum sound
 * like beside another; which noise data of a part does a recording give?
 *
 * <p>Entry types: {@link tramontane.acoustics.recording.Recording} for a file,
 * {@link tramontane.acoustics.recording.RecordingAnalysis} for what is in it, {@link tramontane.acoustics.recording.Synthesis} for sound
 * out of numbers, {@link tramontane.acoustics.recording.NoiseFromRecording} for a part.
 *
 * <p>Sources: IEC 61260-1:2014 (bands and filters), IEC 61672-1:2013 (weightings, fast), IEC 60942 (calibrators), ISO 3744:2010
 * (background), P. D. Welch, IEEE Trans. Audio Electroacoust. 15 (1967) 70-73 (lines). Recordings of half a second and more.
 */
@Export
@Version("0.1.0")
package tramontane.acoustics.recording;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
