/**
 * Drive of air movers: what feeds them, how they start, how their speed is set and watched, what they cost to run.
 *
 * <p>Answers: does the supply carry them, running and starting; can what the design wants to control and watch be done with the
 * wires that the parts have; is the speed control stable; which control law makes least noise or takes least energy; what does
 * control save in a year?
 *
 * <p>Data stand in sections called {@code drive} of air movers ({@link tramontane.drive.MoverDrive}), banks
 * ({@link tramontane.drive.BankDrive}), control laws ({@link tramontane.drive.LawDrive}), conditions and the design
 * ({@link tramontane.drive.Supplies}).
 *
 * <p>Mains voltage kills: what is said here of mains supplies is arithmetic, not a safety assessment. Local codes and licensed
 * practice come first.
 */
@Export
@Version("0.1.0")
package tramontane.drive;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
