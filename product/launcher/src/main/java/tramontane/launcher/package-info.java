/**
 * Starts Tramontane: loads the bundles that the feature files and the extension folders name into an OSGi
 * framework, and hands the rest of the command line to the bundle that gives the entry.
 *
 * <p>Entry type: {@link tramontane.launcher.Main}. Plain Java, no bundle: this code stands outside the framework and
 * meets the bundles only through types of the JDK.
 *
 * <h2>What the launcher expects</h2>
 * An install folder with {@code features/*.json} (OSGi Feature Service format), {@code repo/} (Maven repository layout)
 * and {@code lib/} (the class path). It is only read; what the framework writes goes to the cache folder of the user.
 * Features that only one entry needs lie in {@code features/ENTRY/}, and those of one platform in
 * {@code features/ENTRY/PLATFORM/}; see {@link tramontane.launcher.FeatureFolders}. An extension that needs what another entry
 * brings is given it.
 *
 * <h2>What bundles may count on</h2>
 * <ul>
 * <li>The entry is a service {@code java.util.function.ToIntFunction} with the property {@code tramontane.entry}
 *     ({@code cli} unless the system property of that name says otherwise). It is called once, on the main thread, with
 *     a {@code String[]}; what it returns is the exit code. It has to be registered when its bundle has started, by its
 *     activator or by Declarative Services.</li>
 * <li>One service under both {@code java.util.function.Function} and {@code java.util.function.Supplier} with
 *     {@code tramontane.role=bundle-problems}. The function gives for a bundle's symbolic name, its id or its file name
 *     the reason why it does not run, in plain words, or null; the supplier gives all of them as a
 *     {@code Map<String, String>}, also for files that never became a bundle.</li>
 * <li>The properties {@code tramontane.install}, {@code tramontane.samples}, {@code tramontane.catalogue} and
 *     {@code tramontane.home} (what the user keeps, {@code ~/.tramontane}), as framework and as system properties:
 *     absolute paths.</li>
 * <li>{@code org.osgi.service.log.LoggerFactory}: warnings and errors reach the standard error stream, everything does
 *     with {@code --debug}.</li>
 * </ul>
 *
 * <h2>Sources</h2>
 * OSGi Core Release 8 (framework, launching API, wiring); OSGi Compendium Release 8.1, chapter 159 (Feature Service).
 */
package tramontane.launcher;
