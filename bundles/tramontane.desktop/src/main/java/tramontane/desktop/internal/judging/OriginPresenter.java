package tramontane.desktop.internal.judging;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import tramontane.analysis.Derivation;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Relation;
import tramontane.analysis.Trace;
import tramontane.desktop.FigureKey;
import tramontane.desktop.FigureText;
import tramontane.desktop.Results.Known;
import tramontane.desktop.Scene;
import tramontane.model.edit.Subject;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

/** Turns the steps that lead to a figure into a tree that opens as far as somebody asks. */
final class OriginPresenter {

    private final Places places;
    private final String caseId;
    private final UnitSystem units;
    private final Map<String, FigureKind> kinds = new HashMap<>();
    private final Map<String, List<Figure>> figures = new HashMap<>();

    /**
     * For a scene.
     *
     * @param caseId the case of the figure that is asked about; empty for one of the design as a whole
     * @param known  the figures that anything loaded can give
     */
    OriginPresenter(Scene scene, String caseId, List<FigureKind> known) {
        this.caseId = caseId;
        places = Places.of(scene.document().design());
        units = scene.units();
        known.forEach(kind -> kinds.putIfAbsent(kind.id(), kind));
        scene.results().figures().stream().map(Known::value).filter(figure -> figure.condition().equals(caseId) || figure.condition().isEmpty())
                .forEach(figure -> figures.computeIfAbsent(figure.kind().id(), id -> new ArrayList<>()).add(figure));
    }

    private BiFunction<Double, QuantityKind, String> format() {
        return (si, kind) -> FigureText.brief(si, kind, units);
    }

    /** What a figure is called, for people. */
    String title(FigureKey key) {
        return Optional.ofNullable(kinds.get(key.id())).map(FigureKind::label).orElse(key.id()) + (key.place().isEmpty() ? "" : Trace.AT + key.place());
    }

    /** The figure itself, with all beneath it. */
    Origin root(FigureKey key, Derivation derivation) {
        List<Trace.Step> steps = derivation.of(key.id(), key.place());
        Optional<Figure> figure = figures.getOrDefault(key.id(), List.of()).stream().filter(each -> FigureKey.of(each).equals(key)).findFirst();
        String value = figure.map(each -> FigureText.brief(each, units))
                .orElseGet(() -> steps.isEmpty() ? "" : derivation.value(steps.getLast(), format()));
        return new Origin(title(key), value, key.condition().isEmpty() ? "" : "in " + key.condition(), steps.isEmpty() ? steps : List.of(steps.getLast()), derivation, List.of(),
                places.subject(key.place()), Optional.empty(), false);
    }

    /** What went into a value; one entry per value where several stand behind it. */
    List<Origin> beneath(Origin origin) {
        if (origin.steps().size() > 1) {
            return origin.steps().stream().map(step -> new Origin(origin.derivation().name(step), origin.derivation().value(step, format()), "",
                    List.of(step), origin.derivation(), origin.above(), places.subject(step.place()), Optional.empty(), false)).toList();
        }
        return origin.steps().stream().flatMap(step -> step.inputs().stream().map(term -> input(origin, step, term))).toList();
    }

    private Origin input(Origin origin, Trace.Step step, Trace.Term term) {
        List<Trace.Step> above = new ArrayList<>(origin.above());
        above.add(step);
        List<Trace.Step> behind = meant(origin.derivation().behind(step, term), term);
        boolean again = behind.stream().anyMatch(above::contains);
        List<Trace.Step> steps = again ? List.of() : behind;
        Optional<FigureKey> elsewhere = behind.isEmpty() ? origin.derivation().figure(term).flatMap(kind -> key(kind, step, term)) : Optional.empty();
        Optional<Subject> subject = places.named(term.from()).or(() -> steps.size() == 1 ? places.subject(steps.getFirst().place()) : Optional.empty())
                .or(() -> elsewhere.flatMap(key -> places.subject(key.place())));
        String from = again ? Origin.TOLD : steps.size() == 1 ? origin.derivation().name(steps.getFirst())
                : elsewhere.map(this::title).orElseGet(() -> origin.derivation().figure(term).map(FigureKind::label).orElse(term.from()));
        return new Origin(term.name(), Derivation.value(term, format()), from, steps, origin.derivation(), above, subject, elsewhere, again);
    }

    /** Of steps at several places, those at the place that the input's name says. */
    private static List<Trace.Step> meant(List<Trace.Step> behind, Trace.Term term) {
        List<Trace.Step> named = behind.stream().filter(step -> !step.place().isEmpty() && term.name().contains(step.place())).toList();
        return behind.size() < 2 || named.isEmpty() ? behind : named;
    }

    /** Which figure an input means: at the place it says, at one that its name says, at that of the step, or the only one. */
    private Optional<FigureKey> key(FigureKind kind, Trace.Step step, Trace.Term term) {
        List<Figure> all = figures.getOrDefault(kind.id(), List.of());
        int at = term.from().indexOf(Trace.AT);
        String said = at > 0 ? term.from().substring(at + Trace.AT.length()) : "";
        return at(all, said).or(() -> all.stream().filter(figure -> !figure.place().isEmpty() && term.name().contains(figure.place()))
                        .max(Comparator.comparing(figure -> figure.place().length())))
                .or(() -> at(all, step.place())).or(() -> all.size() == 1 ? Optional.of(all.getFirst()) : Optional.empty()).map(FigureKey::of);
    }

    private static Optional<Figure> at(List<Figure> all, String place) {
        return all.stream().filter(figure -> !place.isEmpty() && figure.place().equals(place)).findFirst();
    }

    /** What is said of a value when it is selected. */
    Origin.Told told(Origin origin) {
        List<String> lines = new ArrayList<>();
        String heading = origin.label() + (origin.value().isEmpty() ? "" : " = " + origin.value());
        if (origin.steps().size() == 1) {
            Relation relation = origin.steps().getFirst().relation();
            lines.add("By " + relation.name() + ".");
            if (!relation.validity().isEmpty()) {
                lines.add("Holds: " + MatrixPresenter.sentence(relation.validity()));
            }
            if (!relation.source().isEmpty()) {
                lines.add("Source: " + MatrixPresenter.sentence(relation.source()));
            }
            return new Origin.Told(heading, relation.formula(), lines);
        }
        lines.add(origin.again() ? "Told above: each stands in agreement with the other."
                : origin.elsewhere().isPresent() ? "Another analysis gives it; open it to see how."
                : !origin.steps().isEmpty() ? "Open it to see the values behind it."
                : origin.above().isEmpty() ? "The analysis does not say how it came to this figure."
                : origin.from().isEmpty() ? "Given." : "From " + origin.from() + ".");
        return new Origin.Told(heading, "", lines);
    }

    /** All steps of a figure as text. */
    String text(FigureKey key, Derivation derivation) {
        Origin root = root(key, derivation);
        List<String> lines = new ArrayList<>(List.of(root.label() + (caseId.isEmpty() ? "" : " in " + caseId) + ": " + root.value() + "   (" + key.id() + ")", ""));
        int number = 0;
        for (Derivation.Block block : derivation.blocks(format())) {
            lines.add(++number + ".  " + block.heading());
            lines.add("    by    " + block.by());
            for (int i = 0; i < block.with().size(); i++) {
                lines.add((i == 0 ? "    with  " : "          ") + block.with().get(i));
            }
            if (!block.holds().isEmpty()) {
                lines.add("    holds " + block.holds());
            }
            if (!block.source().isEmpty()) {
                lines.add("    [" + block.source() + "]");
            }
        }
        return String.join("\n", lines) + "\n";
    }
}
