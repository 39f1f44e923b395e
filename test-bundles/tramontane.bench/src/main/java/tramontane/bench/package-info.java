/**
 * How long the flow network solver takes, beside what an established sparse factorisation takes for the part of it that no
 * such solver can avoid. {@link tramontane.bench.Table} runs all and writes the table.
 */
package tramontane.bench;
