package tramontane.desktop.internal.pages;

import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import tramontane.analysis.Engine;
import tramontane.analysis.FigureKind;
import tramontane.analysis.SectionType;
import tramontane.model.edit.Forms;

/**
 * What the loaded bundles say of designs.
 *
 * @param forms    the fields of passage kinds, link kinds and sections
 * @param sections the section types
 * @param figures  the figures that anything can give
 */
public record Known(Forms forms, List<SectionType<?>> sections, List<FigureKind> figures) {

    /** Nothing is loaded. */
    public static final Known NOTHING = new Known(Forms.NONE, List.of(), List.of());

    public Known {
        sections = List.copyOf(sections);
        figures = List.copyOf(figures);
    }

    /** What an engine has at hand. */
    public static Known of(Engine engine) {
        return new Known(engine.forms(), engine.sectionTypes(), engine.analyses().stream().flatMap(each -> each.figures().stream()).toList());
    }

    /** The ids of all figures, in the order of the alphabet. */
    List<String> figureIds() {
        return List.copyOf(figures.stream().map(FigureKind::id).collect(Collectors.toCollection(TreeSet::new)));
    }
}
