/**
 * Air, curves, similarity and pressure losses: pure functions on SI doubles.
 *
 * <p>Answers "how dense is the air up here?", "what does the fan do at half speed?" and "what does this opening
 * or duct cost?". Start with {@link tramontane.physics.AirState}, {@link tramontane.physics.MonotoneCurve},
 * {@link tramontane.physics.Resistance} and {@link tramontane.physics.DuctFriction}.
 *
 * <p>Flow is incompressible; each class names its sources and its range. A number that is not finite or not physical
 * is a programmer's mistake here and is refused with {@link java.lang.IllegalArgumentException}.
 */
@Export
@Version("0.1.0")
package tramontane.physics;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
