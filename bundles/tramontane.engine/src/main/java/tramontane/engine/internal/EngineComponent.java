package tramontane.engine.internal;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.osgi.framework.ServiceReference;
import org.osgi.service.component.ComponentServiceObjects;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import org.osgi.service.component.annotations.ReferenceCardinality;
import org.osgi.service.component.annotations.ReferencePolicy;
import tramontane.analysis.Analysis;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Exporter;
import tramontane.analysis.LinkKind;
import tramontane.analysis.PassageKind;
import tramontane.analysis.SectionType;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.Trace;
import tramontane.model.Design;
import tramontane.model.Problem;

/** The engine as a service: tells it what comes and goes. */
@Component(service = Engine.class)
public final class EngineComponent implements Engine {

    private final Registry registry = new Registry();
    private final IsolatingEngine engine = new IsolatingEngine(registry::extensions, registry::exporters,
            ModelChecks.OF_THE_MODEL, Runtime.getRuntime().availableProcessors());

    @Reference(service = Analysis.class, cardinality = ReferenceCardinality.MULTIPLE, policy = ReferencePolicy.DYNAMIC)
    void addAnalysis(ComponentServiceObjects<Analysis<?>> objects) {
        registry.addAnalysis(objects);
    }

    void removeAnalysis(ComponentServiceObjects<Analysis<?>> objects) {
        registry.remove(objects.getServiceReference());
        engine.refresh();
    }

    @Reference(service = PassageKind.class, cardinality = ReferenceCardinality.MULTIPLE, policy = ReferencePolicy.DYNAMIC)
    void addPassageKind(ComponentServiceObjects<PassageKind> objects) {
        registry.addPassageKind(objects);
    }

    void removePassageKind(ComponentServiceObjects<PassageKind> objects) {
        registry.remove(objects.getServiceReference());
        engine.refresh();
    }

    @Reference(service = LinkKind.class, cardinality = ReferenceCardinality.MULTIPLE, policy = ReferencePolicy.DYNAMIC)
    void addLinkKind(ComponentServiceObjects<LinkKind> objects) {
        registry.addLinkKind(objects);
    }

    void removeLinkKind(ComponentServiceObjects<LinkKind> objects) {
        registry.remove(objects.getServiceReference());
        engine.refresh();
    }

    @Reference(service = SectionType.class, cardinality = ReferenceCardinality.MULTIPLE, policy = ReferencePolicy.DYNAMIC)
    void addSectionType(ComponentServiceObjects<SectionType<?>> objects) {
        registry.addSectionType(objects);
    }

    void removeSectionType(ComponentServiceObjects<SectionType<?>> objects) {
        registry.remove(objects.getServiceReference());
        engine.refresh();
    }

    @Reference(service = Exporter.class, cardinality = ReferenceCardinality.MULTIPLE, policy = ReferencePolicy.DYNAMIC)
    void addExporter(ComponentServiceObjects<Exporter> objects) {
        registry.addExporter(objects);
    }

    void removeExporter(ComponentServiceObjects<Exporter> objects) {
        registry.remove(objects.getServiceReference());
    }

    // analyses find speed laws for themselves; the engine only needs to know when there are others
    @Reference(service = SpeedLaw.class, cardinality = ReferenceCardinality.MULTIPLE, policy = ReferencePolicy.DYNAMIC)
    void addSpeedLaw(ServiceReference<SpeedLaw> reference) {
        registry.addOther(reference);
    }

    void removeSpeedLaw(ServiceReference<SpeedLaw> reference) {
        registry.remove(reference);
    }

    @Override
    public List<Problem> check(Design design) {
        return engine.check(design);
    }

    @Override
    public Evaluation evaluate(Request request, Watch watch) {
        return engine.evaluate(request, watch);
    }

    @Override
    public List<Trace.Step> trace(Design design, String condition, String figure, String place) {
        return engine.trace(design, condition, figure, place);
    }

    @Override
    public List<Loaded> analyses() {
        return engine.analyses();
    }

    @Override
    public Map<String, PassageKind> passageKinds() {
        return engine.passageKinds();
    }

    @Override
    public Map<String, LinkKind> linkKinds() {
        return engine.linkKinds();
    }

    @Override
    public List<SectionType<?>> sectionTypes() {
        return engine.sectionTypes();
    }

    @Override
    public List<Exporter> exporters() {
        return engine.exporters();
    }

    @Override
    public Set<String> givers(Set<Class<?>> types) {
        return engine.givers(types);
    }
}
