package tramontane.desktop;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Objects;

/**
 * A line drawing: SVG on a grid of 16 units with one stroke weight, drawn in the colour of the text around it at any zoom.
 *
 * <p>Understood are {@code path} (M L H V C Q A Z, absolute and relative), {@code line}, {@code polyline}, {@code polygon}, {@code rect},
 * {@code circle} and {@code ellipse}; {@code fill="currentColor"} fills a shape, everything else is stroked.
 *
 * @param name what it is called, for whoever keeps drawn images
 * @param svg  the text of the drawing
 */
public record Icon(String name, String svg) {

    /** An empty picture. */
    public static final Icon NONE = new Icon("none", "<svg viewBox=\"0 0 16 16\"></svg>");

    public Icon {
        Objects.requireNonNull(name);
        Objects.requireNonNull(svg);
    }

    /**
     * Reads a drawing that lies beside a class in its bundle.
     *
     * @throws IllegalArgumentException if it is not there
     */
    public static Icon read(Class<?> beside, String file) {
        try (InputStream in = beside.getResourceAsStream(file)) {
            if (in == null) {
                throw new IllegalArgumentException("no drawing " + file + " beside " + beside.getName());
            }
            return new Icon(beside.getPackageName() + "/" + file, new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException unreadable) {
            throw new IllegalArgumentException("drawing " + file + " beside " + beside.getName() + " cannot be read", unreadable);
        }
    }
}
