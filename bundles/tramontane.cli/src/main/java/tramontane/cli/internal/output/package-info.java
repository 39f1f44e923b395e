/**
 * Results as text, JSON and CSV: pure functions from an evaluation to what is printed.
 *
 * <p>Entry types: {@link tramontane.cli.internal.output.TextReport}, {@link tramontane.cli.internal.output.JsonReport},
 * {@link tramontane.cli.internal.output.CsvFigures}. Nothing here asks for the default locale, the clock or the terminal.
 */
package tramontane.cli.internal.output;
