/**
 * Temperature control loops: does a speed law hold the temperature still, how much room is left, and what does it look like in time.
 *
 * <p>A law asks for a fan speed setting from a sensor's temperature; the heated bodies answer. Lag of the sensor, sampling, dead time
 * and lag of the fan lie between. Near an operating point the bodies are a {@link tramontane.physics.control.StateSpace}, the loop a
 * {@link tramontane.physics.control.ControlLoop} with gain and phase margins; {@link tramontane.physics.control.RouthHurwitz} judges a
 * characteristic polynomial; {@link tramontane.physics.control.LoopSimulation} follows the loop in time with all that is not linear.
 *
 * <p>A setting is a number without unit (usually 0 to 1), a temperature or its difference is in kelvin, time in seconds. Numbers that
 * are none, or negative where that means nothing, are refused with {@link java.lang.IllegalArgumentException}.
 */
@Export
@Version("0.1.0")
package tramontane.physics.control;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
