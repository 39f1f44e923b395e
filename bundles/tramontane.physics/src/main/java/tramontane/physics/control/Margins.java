package tramontane.physics.control;

/**
 * How much room a loop has before it hunts.
 *
 * @param gain           factor by which the gain may rise until the loop hunts: one over the largest size of the loop's response at
 *                       any frequency at which it has the opposite sign (phase -180°, -540°, ...); infinite where there is none
 * @param phase          lag that may be added until the loop hunts, rad: the least of π + phase at any frequency at which the size is
 *                       one, the phase followed from standstill and brought below π; below zero where the loop lags too much already;
 *                       infinite where the size is never one
 * @param phaseCrossover frequency at which the gain margin is taken, rad/s: the one at which the loop would hunt. Infinite where it is
 *                       the limit at high frequencies, NaN without one
 * @param gainCrossover  frequency at which the phase margin is taken, rad/s; NaN without one
 */
public record Margins(double gain, double phase, double phaseCrossover, double gainCrossover) {
}
