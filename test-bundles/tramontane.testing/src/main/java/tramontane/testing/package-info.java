/**
 * Runs JUnit 5 tests inside the framework, in the product as it is shipped.
 *
 * <p>A test bundle lists its test classes in the manifest header {@code Test-Cases}; bnd writes it. The launcher, started
 * with {@code -Dtramontane.entry=tests}, calls {@link tramontane.testing.TestEntry} with a folder for reports and the
 * symbolic names of the test bundles. Test engines are named here rather than found through {@code ServiceLoader}, which
 * does not look into bundles.
 */
package tramontane.testing;
