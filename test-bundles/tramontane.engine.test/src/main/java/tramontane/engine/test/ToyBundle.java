package tramontane.engine.test;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.jar.Attributes;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleContext;
import org.osgi.framework.BundleException;
import org.osgi.framework.BundleActivator;

/** A bundle of one toy class, installed and started in the running product; closing takes it away. */
final class ToyBundle implements AutoCloseable {

    private final Bundle bundle;

    private ToyBundle(Bundle bundle) {
        this.bundle = bundle;
    }

    /**
     * Installs and starts a toy.
     *
     * @param nested names of its nested classes, without the outer name
     */
    static ToyBundle start(BundleContext context, Class<? extends BundleActivator> toy, String name, String... nested)
            throws IOException, BundleException {
        Manifest manifest = new Manifest();
        Attributes headers = manifest.getMainAttributes();
        headers.put(Attributes.Name.MANIFEST_VERSION, "1.0");
        headers.putValue("Bundle-ManifestVersion", "2");
        headers.putValue("Bundle-SymbolicName", name);
        headers.putValue("Bundle-Version", "1.0.0");
        headers.putValue("Bundle-Activator", toy.getName());
        headers.putValue("Import-Package", "tramontane.analysis,tramontane.model,tramontane.physics.units,org.osgi.framework");
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (JarOutputStream jar = new JarOutputStream(bytes, manifest)) {
            add(jar, toy.getName());
            for (String inner : List.of(nested)) {
                add(jar, toy.getName() + "$" + inner);
            }
        }
        Bundle bundle = context.installBundle("toy:" + name, new ByteArrayInputStream(bytes.toByteArray()));
        try {
            bundle.start();
        } catch (BundleException e) {
            bundle.uninstall();
            throw e;
        }
        return new ToyBundle(bundle);
    }

    private static void add(JarOutputStream jar, String className) throws IOException {
        String entry = className.replace('.', '/') + ".class";
        jar.putNextEntry(new JarEntry(entry));
        try (InputStream content = ToyBundle.class.getResourceAsStream("/" + entry)) {
            content.transferTo(jar);
        }
        jar.closeEntry();
    }

    void stop() throws BundleException {
        bundle.stop();
    }

    void restart() throws BundleException {
        bundle.start();
    }

    @Override
    public void close() throws BundleException {
        bundle.uninstall();
    }
}
