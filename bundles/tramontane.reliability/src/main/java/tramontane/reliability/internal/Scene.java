package tramontane.reliability.internal;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Sections;
import tramontane.analysis.Severity;
import tramontane.model.AirMover;
import tramontane.model.Design;
import tramontane.model.MissionPhase;
import tramontane.model.Passage;
import tramontane.model.Requirement;
import tramontane.model.Value;
import tramontane.reliability.BankLife;
import tramontane.reliability.LifeModel;
import tramontane.reliability.MissionLife;
import tramontane.reliability.MoverLife;
import tramontane.reliability.ServiceLife;

/**
 * What a design says of life.
 *
 * @param design  the design
 * @param service its section
 * @param banks   its banks, in its order
 */
record Scene(Design design, ServiceLife service, List<Bank> banks) {

    static final MoverLifeSection MOVER = new MoverLifeSection();
    static final BankLifeSection BANK = new BankLifeSection();
    static final ServiceLifeSection SERVICE = new ServiceLifeSection();

    /**
     * A bank.
     *
     * @param passage its passage
     * @param part    its part, if the design has it
     * @param section what its section says
     * @param life    section of its part
     * @param model   life of its part wherever it works; empty where too little is known
     */
    record Bank(Passage passage, Optional<AirMover> part, BankLife section, Optional<MoverLife> life, Optional<LifeModel> model) {

        String id() {
            return passage.id();
        }
    }

    static Scene of(Design design) {
        ServiceLife service = Sections.decode(SERVICE, design).orElse(ServiceLife.NONE);
        Map<String, Optional<LifeModel>> models = new LinkedHashMap<>();
        List<Bank> banks = design.airPath().banks().stream().map(passage -> {
            Optional<AirMover> part = passage.parameters().get("mover").filter(Value.Text.class::isInstance)
                    .flatMap(value -> design.airMover(((Value.Text) value).text()));
            Optional<MoverLife> life = part.flatMap(mover -> Sections.decode(MOVER, mover));
            Optional<LifeModel> model = life.flatMap(some -> models.computeIfAbsent(part.orElseThrow().id(),
                    id -> LifeModel.of(part.get(), some, runningTime(design, service))));
            return new Bank(passage, part, Sections.decode(BANK, passage).orElse(BankLife.NONE), life, model);
        }).toList();
        return new Scene(design, service, banks);
    }

    /** Whether anything in the design speaks of life. */
    boolean asked() {
        return banks.stream().anyMatch(bank -> bank.life().isPresent()) || Sections.decode(SERVICE, design).isPresent()
                || design.requirements().stream().anyMatch(requirement -> requirement.figure().startsWith("reliability."));
    }

    /** Of each bank at which a requirement asks for one of these figures, that it is not known. */
    List<Finding> required(List<FigureKind> figures, String what, String why) {
        return banks.stream().filter(bank -> design.requirements().stream().anyMatch(requirement -> figures.stream().anyMatch(kind -> kind.id().equals(requirement.figure()))
                && (requirement.place().equals(Requirement.WORST) || requirement.place().equals(bank.id())))).map(bank -> Finding.of(Severity.NOT_JUDGED, bank.id(),
                        what + " of bank " + bank.id() + " is not known: " + why)).toList();
    }

    /** Running time through the service life, s: a mission that lasts less than a year stands still for the rest. */
    static Optional<Double> runningTime(Design design, ServiceLife service) {
        double year = design.mission().isEmpty() ? MissionLife.YEAR : design.mission().stream().mapToDouble(phase -> phase.timePerYear().si()).sum();
        return service.serviceLife().map(life -> life * year / MissionLife.YEAR).filter(time -> time > 0);
    }

    /** Phases that last. */
    static List<MissionPhase> phases(Design design) {
        return design.mission().stream().filter(phase -> phase.timePerYear().si() > 0).toList();
    }
}
