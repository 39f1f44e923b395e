package tramontane.cli.internal;

import java.util.List;
import tramontane.analysis.Engine;

/**
 * What is loaded, and what is not and why.
 *
 * @param bundles    all bundles
 * @param analyses   the analyses that the engine knows
 * @param extensions everything else that bundles give
 * @param troubles   what does not run
 */
record Inventory(List<Loaded> bundles, List<Engine.Loaded> analyses, List<Extension> extensions, List<Trouble> troubles) {

    /** Nothing at all. */
    static final Inventory EMPTY = new Inventory(List.of(), List.of(), List.of(), List.of());

    Inventory {
        bundles = List.copyOf(bundles);
        analyses = List.copyOf(analyses);
        extensions = List.copyOf(extensions);
        troubles = List.copyOf(troubles);
    }

    /**
     * A bundle.
     *
     * @param name    symbolic name
     * @param version version
     * @param state   one word
     */
    record Loaded(String name, String version, String state) {
    }

    /**
     * Something that a bundle gives.
     *
     * @param kind      what it is: importer, exporter, passage kind, link kind, section, speed law, verb
     * @param name      its name
     * @param carriedBy what may carry it, where it is a section; two of one name differ in this
     * @param help      what it is for
     * @param bundle    symbolic name of the bundle
     */
    record Extension(String kind, String name, List<String> carriedBy, String help, String bundle) {

        Extension {
            carriedBy = List.copyOf(carriedBy);
        }

        /** Something that nothing carries. */
        Extension(String kind, String name, String help, String bundle) {
            this(kind, name, List.of(), help, bundle);
        }

        /** Its name, with what carries it. */
        String fullName() {
            return carriedBy.isEmpty() ? name : name + " (" + String.join(", ", carriedBy) + ")";
        }
    }

    /**
     * Something that does not run.
     *
     * @param what   what it is
     * @param reason why, without a full stop
     */
    record Trouble(String what, String reason) {
    }
}
