/**
 * Heat from surfaces to air and through solids: pure functions on SI doubles.
 *
 * <p>Answers "how much heat does this surface give to this air?" as Nusselt numbers, conductances and resistances: plates, fins,
 * heat sinks, channels, pins, cylinders, natural convection, radiation, spreading. Start with
 * {@link tramontane.physics.heat.FlatPlate}, {@link tramontane.physics.heat.PlateFins} and
 * {@link tramontane.physics.heat.Spreading}.
 *
 * <p>Flow is steady; properties are constant, by custom those at the mean of surface and air. Each relation names its source and
 * its range; it is a fit to experiments with some 10 to 25 % spread. Nusselt numbers rise with Reynolds or Rayleigh number and
 * fall to 0 or to a conduction limit with it. Numbers that are none, or negative where that means nothing, are refused with
 * {@link java.lang.IllegalArgumentException}.
 */
@Export
@Version("0.1.0")
package tramontane.physics.heat;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
