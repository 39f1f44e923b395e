/**
 * Tests of the window, in the product as it is shipped, on a display: with real movements of the pointer and real keys.
 *
 * <p>{@link tramontane.desktop.test.Screen} is the extension that each such test class is extended with: it holds the display, and
 * fails a test that leaves a resource undisposed, that JFace logged a fault of, or whose listener threw.
 * {@link tramontane.desktop.test.Hands} finds widgets in a shell, clicks, types, drags, waits for conditions and takes pictures.
 * {@link tramontane.desktop.test.Heartbeat} measures how long the window did not answer.
 *
 * <p>Test classes run one after the other on the thread that started the program, which is the one that may draw. Those that are
 * tagged {@link tramontane.desktop.test.Screen#PICTURES} run in four processes: at 100 and 200 percent, in light and dark.
 */
package tramontane.desktop.test;
