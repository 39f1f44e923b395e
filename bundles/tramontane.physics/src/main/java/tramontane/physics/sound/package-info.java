/**
 * Sound: levels, bands, spectra, how it spreads and how it is rated.
 *
 * <p>Answers: how loud are several sources together, what is left of a sound power at a distance, in a free field, over a plane or
 * in a room, which rating does a spectrum get, is a tone prominent?
 *
 * <p>Entry types: {@link tramontane.physics.sound.Levels} for decibels, {@link tramontane.physics.sound.Spectrum} for band levels,
 * {@link tramontane.physics.sound.Weighting} for A and C. Where it goes: {@link tramontane.physics.sound.Spreading},
 * {@link tramontane.physics.sound.Room}, {@link tramontane.physics.sound.OpeningDirectivity}. What it is called:
 * {@link tramontane.physics.sound.NoiseRating}, {@link tramontane.physics.sound.NoiseCriterion},
 * {@link tramontane.physics.sound.DeclaredLevel}, {@link tramontane.physics.sound.ToneInNoise}. Where nothing is measured:
 * {@link tramontane.physics.sound.FanSpectrum}.
 *
 * <p>Sound power levels are in dB re 1 pW, sound pressure levels in dB re 20 µPa. Bands are those of IEC 61260-1:2014 with base 10.
 * Sources are incoherent: their powers add.
 */
@Export
@Version("0.1.0")
package tramontane.physics.sound;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
