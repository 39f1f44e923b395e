package tramontane.engine.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.osgi.framework.Bundle;
import org.osgi.framework.Constants;
import org.osgi.framework.ServiceReference;
import org.osgi.service.component.ComponentServiceObjects;
import tramontane.analysis.Analysis;
import tramontane.analysis.Exporter;
import tramontane.analysis.LinkKind;
import tramontane.analysis.PassageKind;
import tramontane.analysis.SectionType;

/** The services that came and have not left. */
final class Registry {

    private final Map<Long, Entry<Analysis<?>>> analyses = new ConcurrentHashMap<>();
    private final Map<Long, Entry<PassageKind>> passageKinds = new ConcurrentHashMap<>();
    private final Map<Long, Entry<LinkKind>> linkKinds = new ConcurrentHashMap<>();
    private final Map<Long, Entry<SectionType<?>>> sectionTypes = new ConcurrentHashMap<>();
    private final Map<Long, Entry<Exporter>> exporters = new ConcurrentHashMap<>();
    private final Map<Long, Boolean> others = new ConcurrentHashMap<>();

    void addAnalysis(ComponentServiceObjects<Analysis<?>> objects) {
        analyses.put(id(objects.getServiceReference()), new Entry<>(objects));
    }

    void addPassageKind(ComponentServiceObjects<PassageKind> objects) {
        passageKinds.put(id(objects.getServiceReference()), new Entry<>(objects));
    }

    void addLinkKind(ComponentServiceObjects<LinkKind> objects) {
        linkKinds.put(id(objects.getServiceReference()), new Entry<>(objects));
    }

    void addSectionType(ComponentServiceObjects<SectionType<?>> objects) {
        sectionTypes.put(id(objects.getServiceReference()), new Entry<>(objects));
    }

    void addExporter(ComponentServiceObjects<Exporter> objects) {
        exporters.put(id(objects.getServiceReference()), new Entry<>(objects));
    }

    void addOther(ServiceReference<?> reference) {
        others.put(id(reference), true);
    }

    /** Forgets a service of whatever type; ids are unique among all. */
    void remove(ServiceReference<?> reference) {
        long id = id(reference);
        analyses.remove(id);
        passageKinds.remove(id);
        linkKinds.remove(id);
        sectionTypes.remove(id);
        exporters.remove(id);
        others.remove(id);
    }

    /** What is there now. */
    Extensions extensions() {
        List<String> broken = new ArrayList<>();
        return new Extensions(all(analyses, broken, "an analysis"), all(passageKinds, broken, "a passage kind"),
                all(linkKinds, broken, "a link kind"), all(sectionTypes, broken, "a section type"),
                others.keySet().stream().sorted().toList(), broken);
    }

    /** The exporters that are there now; made when they are asked for, since no evaluation needs them. */
    List<Extension<Exporter>> exporters() {
        return all(exporters, new ArrayList<>(), "an exporter");
    }

    private static <S> List<Extension<S>> all(Map<Long, Entry<S>> entries, List<String> broken, String what) {
        List<Extension<S>> all = new ArrayList<>();
        entries.keySet().stream().sorted().forEach(id -> {
            Entry<S> entry = entries.get(id);
            if (entry != null) {
                entry.extension().ifPresentOrElse(all::add, () -> {
                    if (entries.containsKey(id)) { // else it left a moment ago
                        broken.add(what + entry.component() + " of bundle " + entry.bundle + " could not be made; \"tramontane modules\" says why");
                    }
                });
            }
        });
        return all;
    }

    private static long id(ServiceReference<?> reference) {
        return (Long) reference.getProperty(Constants.SERVICE_ID);
    }

    /** A service that is made when it is first wanted. */
    private static final class Entry<S> {

        private final ComponentServiceObjects<S> objects;
        private final String bundle;
        private S service;
        private boolean failed;
        private Extension<S> extension;

        Entry(ComponentServiceObjects<S> objects) {
            this.objects = objects;
            Bundle from = objects.getServiceReference().getBundle();
            this.bundle = from == null ? "that has left" : from.getSymbolicName() + " " + from.getVersion();
        }

        /** The name of its component, where it is one, with a blank in front. */
        String component() {
            Object name = objects.getServiceReference().getProperty("component.name");
            return name == null ? "" : " " + name;
        }

        synchronized Optional<Extension<S>> extension() {
            ServiceReference<S> reference = objects.getServiceReference();
            if (failed) {
                return Optional.empty(); // asking again would fail again, and be logged each time
            }
            if (service == null) {
                try {
                    service = objects.getService();
                } catch (RuntimeException | LinkageError e) {
                    Failure.sentence("a service of bundle " + bundle, e);
                }
                if (service == null) {
                    failed = true;
                    return Optional.empty();
                }
            }
            int ranking = reference.getProperty(Constants.SERVICE_RANKING) instanceof Integer given ? given : 0;
            if (extension == null || extension.ranking() != ranking) {
                extension = new Extension<>(service, id(reference), ranking, bundle);
            }
            return Optional.of(extension);
        }
    }
}
