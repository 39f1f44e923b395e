package tramontane.engine.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import tramontane.analysis.Analysis;
import tramontane.analysis.LinkKind;
import tramontane.analysis.PassageKind;
import tramontane.analysis.SectionType;

/**
 * What is loaded at one moment.
 *
 * @param analyses     analyses
 * @param passageKinds passage kinds
 * @param linkKinds    link kinds
 * @param sectionTypes section types
 * @param others       service ids of what else analyses draw on, such as speed laws
 * @param broken       sentences on services that could not be had
 */
record Extensions(List<Extension<Analysis<?>>> analyses, List<Extension<PassageKind>> passageKinds,
        List<Extension<LinkKind>> linkKinds, List<Extension<SectionType<?>>> sectionTypes, List<Long> others,
        List<String> broken) {

    Extensions {
        analyses = List.copyOf(analyses);
        passageKinds = List.copyOf(passageKinds);
        linkKinds = List.copyOf(linkKinds);
        sectionTypes = List.copyOf(sectionTypes);
        others = List.copyOf(others);
        broken = List.copyOf(broken);
    }

    /**
     * Service ids of what analyses find for themselves. An analysis that solves passages or chains draws on their kinds, so
     * what it computed holds for the same kinds only.
     */
    List<Long> drawnOn() {
        List<Long> ids = new ArrayList<>(others);
        Stream.of(passageKinds, linkKinds, sectionTypes).flatMap(List::stream).forEach(each -> ids.add(each.id()));
        ids.sort(null);
        return List.copyOf(ids);
    }

    /** Service ids of the analyses. */
    List<Long> analysisIds() {
        return analyses.stream().map(Extension::id).sorted().toList();
    }
}
