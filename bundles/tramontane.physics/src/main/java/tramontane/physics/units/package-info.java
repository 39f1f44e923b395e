/**
 * Units and quantities: the one place where text with a unit becomes an SI number and back.
 *
 * <p>Answers "what does 35 cfm mean?" and "how is 0.0165 m³/s shown to this reader?". Start with
 * {@link tramontane.physics.units.Units}; {@link tramontane.physics.units.QuantityKind} says what a number is about.
 *
 * <p>Assumptions: inside the program every number is an SI double (kelvin, radian, rad/s). Water columns are the
 * conventional ones (9.80665 Pa per mm, that is 1000 kg/m³, close to water at 4 °C, under standard gravity). A
 * British thermal unit is that of the International Table. A year is 8760 h.
 *
 * <p>Source of the factors: A. Thompson, B. N. Taylor, "Guide for the Use of the International System of Units",
 * NIST Special Publication 811, 2008 edition, Appendix B.8.
 */
@Export
@Version("0.1.0")
package tramontane.physics.units;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
