package tramontane.acoustics.internal;

import java.util.List;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import org.osgi.service.component.annotations.ReferenceCardinality;
import org.osgi.service.component.annotations.ReferencePolicyOption;
import tramontane.analysis.Kinds;
import tramontane.analysis.PassageKind;
import tramontane.model.Design;
import tramontane.selection.FigureBound;

/** Says beforehand how quiet it is at least where somebody listens. */
@Component(service = FigureBound.class)
public final class LevelBound implements FigureBound {

    private final List<PassageKind> kinds;

    /**
     * Made by the framework.
     *
     * @param kinds the loaded passage kinds, which know how large passages are
     */
    @Activate
    public LevelBound(@Reference(cardinality = ReferenceCardinality.MULTIPLE, policyOption = ReferencePolicyOption.GREEDY)
            List<PassageKind> kinds) {
        this.kinds = Kinds.byName(kinds, PassageKind::form);
    }

    @Override
    public String figure() {
        return Figures.LEVEL.id();
    }

    @Override
    public Bound of(Design design, String bank) {
        return new NoiseBound(design, bank, kinds, NoiseBound::level);
    }
}
