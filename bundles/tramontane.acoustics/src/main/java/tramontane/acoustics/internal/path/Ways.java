package tramontane.acoustics.internal.path;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import tramontane.acoustics.BayNoise;
import tramontane.acoustics.PassageNoise;
import tramontane.acoustics.internal.BayNoiseSection;
import tramontane.acoustics.internal.PassageNoiseSection;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Sections;
import tramontane.model.AirMover;
import tramontane.model.AirPath;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.FormReader;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Shape;
import tramontane.model.Values;
import tramontane.physics.sound.Bands;
import tramontane.physics.units.QuantityKind;

/**
 * The air path of a design as sound meets it.
 *
 * @param bays     names of the bays
 * @param lining   equivalent absorption area of each bay in each third, m²
 * @param ways     the passages that join two places, and the banks
 * @param findings what was assumed
 */
record Ways(List<String> bays, double[][] lining, List<Way> ways, List<Finding> findings) {

    /** Area of an opening where nothing in the design says how large openings are, m². */
    private static final double ASSUMED_AREA = 0.01;
    /** Open area over that of the frame where a part states its frame alone; as the air-flow analysis assumes. */
    private static final double OPEN_OF_FRAME = 0.6;
    private static final String ASSUMED = "assumed";
    private static final String STATE_AREA = "state the area in the noise section of the passage";

    private static final Form BANK = Form.open(Passage.BANK, "What says how large a bank is.",
            Field.reference("mover", "air mover", Shape.Target.MOVER, "The part that sits at each position."),
            Field.whole("across", "across", 1, 1000, "How many stand side by side.").standard(1),
            Field.whole("along", "along", 1, 1000, "How many such rows stand side by side.").standard(1));

    /** Reads the air path of a design. */
    static Ways of(Design design, Condition condition, Collection<? extends PassageKind> kinds) {
        Map<String, PassageKind> byName = new HashMap<>();
        kinds.forEach(kind -> byName.putIfAbsent(kind.form().name(), kind));
        AirPath path = design.airPath();
        List<String> bays = new ArrayList<>();
        Map<String, Integer> numbers = new HashMap<>();
        numbers.put(Bay.OUTSIDE, Way.OUTSIDE);
        double[][] lining = new double[path.bays().size()][];
        for (Bay bay : path.bays()) {
            numbers.putIfAbsent(bay.id(), bays.size());
            lining[bays.size()] = lining(bay);
            bays.add(bay.id());
        }
        List<Finding> findings = new ArrayList<>();
        List<Way> ways = new ArrayList<>();
        for (Passage passage : path.passages()) {
            PassageNoise noise = Sections.decode(new PassageNoiseSection(), passage).orElse(PassageNoise.NONE);
            Integer from = numbers.get(passage.from());
            Integer to = numbers.get(passage.to());
            if (from == null || to == null) {
                findings.add(Finding.caution(passage.id(), "passage " + passage.id() + " ends in bay "
                        + (from == null ? passage.from() : passage.to()) + ", which the design does not have; no sound is counted through"
                        + " it")
                        .remedy("name a bay of the design or outside"));
                continue;
            }
            Way way = new Way(passage, noise, from, to, Double.NaN, false);
            unused(way, findings);
            if (way.crossed() || way.bank()) {
                ways.add(sized(way, design, condition, byName, findings));
            }
        }
        return new Ways(bays, lining, assume(ways, findings), findings);
    }

    private static double[] lining(Bay bay) {
        double[] area = new double[Bands.THIRDS];
        BayNoise noise = Sections.decode(new BayNoiseSection(), bay).orElse(null);
        if (noise != null) {
            double[] absorption = noise.absorption().thirds(0);
            for (int third = 0; third < area.length; third++) {
                area[third] = noise.area() * absorption[third];
            }
        }
        return area;
    }

    /** Says what of a passage's section does nothing. */
    private static void unused(Way way, List<Finding> findings) {
        String what = (way.bank() ? "bank " : "passage ") + way.id();
        PassageNoise noise = way.noise();
        if (noise.insertionLoss().isPresent() && !way.crossed()) {
            findings.add(Finding.note(way.id(), what + " states an insertion loss, but no sound crosses it: it joins "
                    + way.passage().from() + " to itself").remedy("correct its bays, or leave the loss out"));
        }
        if (noise.face().isPresent() && !way.opening()) {
            findings.add(Finding.note(way.id(), what + " states a face of the equipment, but does not lead outside; the face does nothing")
                    .remedy("leave the face out"));
        }
        if (!way.bank() && (noise.inletObstacle().isPresent() || noise.outletObstacle().isPresent())) {
            findings.add(Finding.note(way.id(), what + " states obstacles, but holds no air movers; they do nothing")
                    .remedy("state them with the bank that they stand before or behind"));
        }
    }

    private static Way sized(Way way, Design design, Condition condition, Map<String, PassageKind> kinds, List<Finding> findings) {
        if (way.noise().area().isPresent()) {
            return with(way, way.noise().area().get());
        }
        if (way.bank()) {
            return ofMovers(way, design, findings);
        }
        PassageKind kind = kinds.get(way.passage().kind());
        if (kind == null) {
            return way;
        }
        List<Problem> problems = new ArrayList<>();
        PassageKind.Setting setting = new PassageKind.Setting(design, condition, way.passage());
        try {
            Values values = FormReader.read(kind.form(), way.passage().parameters(), "", problems);
            problems.addAll(kind.check(values, setting, ""));
            if (problems.stream().noneMatch(Problem::isError)) {
                OptionalDouble area = kind.flowArea(values, setting);
                return area.isPresent() ? with(way, area.getAsDouble()) : way;
            }
        } catch (RuntimeException | LinkageError e) { // an area that its kind fails to give is not known
            return way;
        }
        return way;
    }

    private static Way ofMovers(Way way, Design design, List<Finding> findings) {
        Values values = FormReader.read(BANK, way.passage().parameters(), "", new ArrayList<>());
        AirMover mover = design.airMover(values.text("mover")).orElse(null);
        if (mover == null) {
            return way;
        }
        int count = values.whole("across") * values.whole("along");
        if (mover.openArea().isPresent()) {
            return with(way, count * mover.openArea().map(Quantity::si).get());
        }
        if (mover.width().isEmpty() || mover.height().isEmpty()) {
            return way;
        }
        double area = count * OPEN_OF_FRAME * mover.width().get().si() * mover.height().get().si();
        findings.add(Finding.note(way.id(), "sound crosses bank " + way.id() + " by an area that is assumed from the frame of "
                + mover.id() + ": ", new Amount(area, QuantityKind.AREA)).remedy("state the openArea of the part").source(ASSUMED));
        return way.of(area);
    }

    private static Way with(Way way, double area) {
        return area > 0 && Double.isFinite(area) ? new Way(way.passage(), way.noise(), way.from(), way.to(), area, false) : way;
    }

    /** Areas for passages of which none is known. */
    private static List<Way> assume(List<Way> ways, List<Finding> findings) {
        List<Way> sized = new ArrayList<>();
        for (Way way : ways) {
            if (!Double.isNaN(way.area())) {
                sized.add(way);
                continue;
            }
            OptionalDouble near = ways.stream().filter(other -> way.from() != Way.OUTSIDE && other.at(way.from())
                    || way.to() != Way.OUTSIDE && other.at(way.to())).mapToDouble(Way::area).filter(area -> !Double.isNaN(area)).average();
            double area = near.orElse(ASSUMED_AREA);
            sized.add(way.of(area));
            String what = "the area that sound goes through at " + (way.bank() ? "bank " : "passage ") + way.id() + " is not known; ";
            Amount amount = new Amount(area, QuantityKind.AREA);
            findings.add(near.isPresent()
                    ? Finding.note(way.id(), what, amount, " is counted, the mean of the others of its bays").remedy(STATE_AREA)
                            .source(ASSUMED)
                    : Finding.caution(way.id(), what + "nor is that of any other of its bays; ", amount, " is counted").remedy(STATE_AREA)
                            .source(ASSUMED));
        }
        return sized;
    }
}
