package tramontane.airflow.desktop.internal.path;

import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.ImageLoader;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import tramontane.desktop.Palette;
import tramontane.model.Design;
import tramontane.physics.units.UnitSystem;

/** Draws pictures of the samples into files, to look at: sample, case, colour by, light or dark, zoom, file; again and again. */
final class PathDemo {

    private PathDemo() {
    }

    public static void main(String[] args) {
        Display display = new Display();
        Shell shell = new Shell(display);
        PathPainter painter = new PathPainter(shell);
        for (int i = 0; i + 5 < args.length; i += 6) {
            Design design = args[i].equals("wide") ? RandomPaths.large(300) : Samples.design(args[i]);
            AirValues values = args[i].equals("wide") ? RandomPaths.values(design, 1) : Samples.values(args[i], args[i + 1]);
            long began = System.nanoTime();
            PathGraph graph = PathGraph.of(design, painter.measure());
            Placement placement = LayeredPlacement.free(graph);
            System.out.println(args[i] + " laid out in " + (System.nanoTime() - began) / 1000 + " µs");
            began = System.nanoTime();
            for (int again = 0; again < 10; again++) {
                PathPicture.of(design, graph, placement.pinned(graph), values, ColourBy.TEMPERATURE, UnitSystem.METRIC, painter.measure());
            }
            System.out.println(args[i] + " pictured in " + (System.nanoTime() - began) / 10_000 + " µs");
            PathPicture picture = PathPicture.of(design, graph, LayeredPlacement.of(graph), args[i + 1].equals("none") ? AirValues.NONE : values,
                    ColourBy.valueOf(args[i + 2]), UnitSystem.METRIC, painter.measure());
            Palette palette = args[i + 3].equals("dark") ? Palette.DARK : Palette.LIGHT;
            double zoom = Double.parseDouble(args[i + 4]);
            Viewport view = new Viewport(-picture.bounds().x() * zoom, -picture.bounds().y() * zoom, zoom, Math.min(1400, picture.bounds().width() * zoom), Math.min(900, picture.bounds().height() * zoom));
            Image image = new Image(display, (int) view.width(), (int) view.height());
            GC gc = new GC(image);
            gc.setBackground(palette.surface());
            gc.fillRectangle(0, 0, (int) view.width(), (int) view.height());
            for (int again = 0; again < 12; again++) {
                long start = System.nanoTime();
                painter.paint(gc, picture, view, palette, new PathPainter.Emphasis(Optional.of(new PathTarget.Joint(2)), Optional.empty(), Optional.empty()));
                System.out.println(args[i] + args[i + 4] + " drawn in " + (System.nanoTime() - start) / 1000 + " µs");
            }
            gc.dispose();
            ImageLoader loader = new ImageLoader();
            loader.data = new ImageData[] {image.getImageData()};
            loader.save(args[i + 5], SWT.IMAGE_PNG);
            image.dispose();
        }
        painter.dispose();
        display.dispose();
    }
}
