package tramontane.engine.internal;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import tramontane.analysis.Analysis;
import tramontane.analysis.Engine;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Needs;
import tramontane.analysis.Scope;

/**
 * What an analysis says of itself, asked once.
 *
 * @param extension the analysis
 * @param id        its id; the name of its class where it has none
 * @param label     its label
 * @param scope     its scope
 * @param gives     the type that it gives
 * @param needs     its needs
 * @param figures   the figures it can give
 * @param fault     why it cannot be used; empty where it can
 */
record Card(Extension<Analysis<?>> extension, String id, String label, Scope scope, Class<?> gives, Needs needs,
        List<FigureKind> figures, Optional<String> fault) {

    /** Asks an analysis; what it throws or leaves out becomes its fault. */
    static Card of(Extension<Analysis<?>> extension) {
        Analysis<?> analysis = extension.service();
        String id = analysis.getClass().getName();
        try {
            id = Objects.requireNonNull(analysis.id(), "id() gave nothing");
            return new Card(extension, id, Objects.requireNonNull(analysis.label(), "label() gave nothing"),
                    Objects.requireNonNull(analysis.scope(), "scope() gave nothing"),
                    Objects.requireNonNull(analysis.gives(), "gives() gave nothing"),
                    Objects.requireNonNull(analysis.needs(), "needs() gave nothing"),
                    List.copyOf(Objects.requireNonNull(analysis.figures(), "figures() gave nothing")), Optional.empty());
        } catch (Throwable e) { // whatever an extension does wrong must not reach the others
            return new Card(extension, id, id, Scope.CONDITION, Void.class, Needs.NOTHING, List.of(),
                    Optional.of(Failure.sentence(name(id, extension), e)));
        }
    }

    /** This card of an analysis that cannot be used. */
    Card faulty(String why) {
        return new Card(extension, id, label, scope, gives, needs, figures, Optional.of(why));
    }

    /** How sentences call it: {@code analysis toy of bundle lab.toy 1.0.0}. */
    String name() {
        return name(id, extension);
    }

    private static String name(String id, Extension<?> extension) {
        return "analysis " + id + " of bundle " + extension.bundle();
    }

    Analysis<?> analysis() {
        return extension.service();
    }

    String bundle() {
        return extension.bundle();
    }

    /** Whether its answers to questions of others may lack something. */
    boolean mayBeBrief() {
        try {
            return analysis().mayBeBrief();
        } catch (Throwable e) { // who cannot say it leaves out nothing
            return false;
        }
    }

    boolean isDesignWide() {
        return scope == Scope.DESIGN;
    }

    boolean declares(String figure) {
        return figures.stream().anyMatch(kind -> kind.id().equals(figure));
    }

    Engine.Loaded loaded(Optional<String> barred) {
        return new Engine.Loaded(id, label, extension.bundle(), scope, figures, fault.or(() -> barred));
    }

    // a card stands for one service; comparing what a foreign object makes of equals would hand control to it
    @Override
    public boolean equals(Object other) {
        return this == other;
    }

    @Override
    public int hashCode() {
        return Long.hashCode(extension.id());
    }
}
