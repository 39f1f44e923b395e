package tramontane.selection.cli.internal;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.osgi.framework.BundleContext;
import tramontane.analysis.Engine;
import tramontane.catalogue.Catalogue;
import tramontane.catalogue.PartFilter;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.Installation;
import tramontane.cli.terminal.Syntax;
import tramontane.model.Problem;

/**
 * Where parts are looked for as a rule, and the options that say otherwise.
 *
 * @param shipped the catalogue that comes with the program
 * @param own     that of the user, which all his work shares
 */
record CatalogueFolders(Optional<Path> shipped, Optional<Path> own) {

    static final String CATALOGUE = "--catalogue";
    static final String ONLY = "--only";
    static final String WHERE = "--where";
    static final String ENDED = "--ended";

    private static final String NOT_ENDED = "not status = ended";

    static CatalogueFolders of(BundleContext context) {
        return new CatalogueFolders(Installation.catalogue(context),
                Installation.home(context).map(home -> home.resolve("catalogue")).filter(Files::isDirectory));
    }

    /** The options that say which folders are read. */
    static Syntax folders(Syntax syntax) {
        return syntax.options(CATALOGUE, "DIR", "A folder of parts, stacked over the shipped catalogue and ~/.tramontane/catalogue: a part of the "
                        + "same id takes the place of theirs. May be given several times; of two the later counts.")
                .flag(ONLY, "Read the folders of --catalogue and no others.");
    }

    /** The options that say which parts are looked at. */
    static Syntax filter(Syntax syntax) {
        return syntax.options(WHERE, "FILTER", "Look at these parts only: \"type = axial and width <= 92 mm\". May be given several times: "
                        + "all must hold. \"tramontane catalogue fields\" lists the fields.");
    }

    /** Reads the catalogue that is meant; what is wrong with it stands among its problems. */
    Catalogue read(Syntax.Given given, Engine engine) throws Ending {
        List<Path> folders = new ArrayList<>();
        if (!given.flag(ONLY)) {
            shipped.ifPresent(folders::add);
            own.ifPresent(folders::add);
        }
        for (String name : given.options(CATALOGUE)) {
            folders.add(folder(name));
        }
        if (folders.isEmpty()) {
            throw given.flag(ONLY) ? Ending.badInput(ONLY + " needs at least one " + CATALOGUE + " DIR.")
                    : Ending.badInput("There is no catalogue; name one with " + CATALOGUE + " DIR.");
        }
        return Catalogue.read(folders, engine.sectionTypes());
    }

    private static Path folder(String name) throws Ending {
        try {
            Path folder = Path.of(name);
            if (!Files.isDirectory(folder)) {
                throw Ending.badInput(CATALOGUE + " " + name + ": " + (Files.exists(folder) ? "this is no folder; name the folder that the files lie in."
                        : "there is no such folder."));
            }
            return folder;
        } catch (InvalidPathException impossible) {
            throw Ending.badInput(CATALOGUE + " " + name + ": no folder can have this name.");
        }
    }

    /**
     * The filter that all these make together; each is read alone first, so that what is wrong is named where it was written.
     *
     * @param filters filters with where each was written
     * @param ended   whether parts that are not to be had any more count as well
     */
    static PartFilter filter(List<Written> filters, boolean ended, Catalogue catalogue) throws Ending {
        List<String> all = new ArrayList<>();
        for (Written each : filters) {
            parse(each.text(), each.where(), catalogue);
            if (!each.text().isBlank()) {
                all.add(each.text());
            }
        }
        if (!ended && catalogue.field("status").isPresent()) {
            all.add(NOT_ENDED);
        }
        return parse(all.size() == 1 ? all.getFirst() : all.stream().map(text -> "(" + text + ")").collect(Collectors.joining(" and ")), WHERE, catalogue);
    }

    /** A filter and where it was written. */
    record Written(String where, String text) {
    }

    static List<Written> written(Syntax.Given given) {
        return given.options(WHERE).stream().map(text -> new Written(WHERE, text)).toList();
    }

    private static PartFilter parse(String text, String where, Catalogue catalogue) throws Ending {
        PartFilter.Read read = PartFilter.parse(text, catalogue);
        Optional<PartFilter> filter = read.filter();
        if (filter.isEmpty()) {
            throw Ending.badInput(where + " \"" + text + "\": " + read.problem().map(Problem::sentence).orElse("this is no filter") + ".");
        }
        return filter.get();
    }
}
