package tramontane.selection.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import tramontane.analysis.Amount;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Sentence;
import tramontane.model.AirMover;
import tramontane.physics.units.QuantityKind;
import tramontane.selection.Arrangement;
import tramontane.selection.Candidate;
import tramontane.selection.Criterion;

/** Says in words why candidates win: what decides, which kind of rotor suits it, side by side or one behind another. */
final class Explaining {

    /**
     * Specific speed ω √Q/(Δp/ρ)^(3/4) of one mover at its duty below which centrifugal rotors, and above which axial ones, work near
     * their best; mixed-flow ones between (the line of best machines after O. Cordier, 1953, in the handbooks of B. Eck and T. Carolus;
     * from memory, for static pressure).
     */
    static final double CENTRIFUGAL_BELOW = 1.8;
    static final double AXIAL_ABOVE = 2.4;
    /** Beyond this even axial ones are far from their best. */
    static final double AXIAL_UPTO = 8;
    /** Differences smaller than this are none. */
    private static final double SAME = 0.02;
    /** Share of the pressure at no flow that counts as no pressure. */
    private static final double NOTHING = 1e-3;

    private final Screen screen;
    private final String bank;
    private final List<Candidate> meeting;

    private Explaining(Screen screen, String bank, List<Candidate> meeting) {
        this.screen = screen;
        this.bank = bank;
        this.meeting = meeting;
    }

    /**
     * Explains the first of a list.
     *
     * @param screen  the reduced design
     * @param bank    the id of the bank
     * @param listed  the list, best first
     * @param meeting all that were judged exactly and meet everything, best first
     */
    static List<Sentence> of(Screen screen, String bank, List<Candidate> listed, List<Candidate> meeting) {
        if (listed.isEmpty()) {
            return List.of();
        }
        return new Explaining(screen, bank, meeting).of(listed.getFirst());
    }

    private List<Sentence> of(Candidate first) {
        List<Sentence> all = new ArrayList<>();
        first.tightest().flatMap(verdict -> verdict.figure().flatMap(figure -> Ask.of(verdict.requirement(), figure.kind()))).ifPresent(ask -> {
            String condition = first.tightest().orElseThrow().condition();
            List<Object> words = new ArrayList<>(List.of(first.words() + " comes first, at ", new Amount(first.setting(), QuantityKind.FRACTION),
                    " of its speed; " + (condition.isEmpty() ? "" : condition + " ") + "decides: ", ask.words()));
            screen.groups().stream().filter(group -> group.declared().equals(condition)).flatMap(group -> group.need().stream())
                    .filter(need -> need.flow().orElse(0) > 0).findFirst().ifPresent(need -> words.addAll(List.of(", which takes ",
                    new Amount(need.flow().getAsDouble(), QuantityKind.FLOW), " at ", new Amount(need.pressure().orElseThrow(), QuantityKind.PRESSURE))));
            all.add(Sentence.of(words.toArray()));
        });
        OptionalInt healthy = decides(first, true);
        if (healthy.isPresent()) {
            rotor(first, healthy.getAsInt()).ifPresent(all::add);
            others(first).ifPresent(all::add);
            side(first, healthy.getAsInt()).ifPresent(all::add);
        }
        return all;
    }

    /** The group of cases that asks most of a part, in pressure over what it gives there at full speed; with all movers, or any. */
    private OptionalInt decides(Candidate candidate, boolean all) {
        return IntStream.range(0, screen.groups().size()).filter(g -> screen.groups().get(g).need().orElseThrow().flow().orElse(0) > 0)
                .filter(g -> screen.groups().get(g).failed() < (all ? 1 : candidate.arrangement().movers()))
                .boxed().max((a, b) -> Double.compare(asked(candidate, a), asked(candidate, b))).map(OptionalInt::of).orElse(OptionalInt.empty());
    }

    private double asked(Candidate candidate, int group) {
        double flow = screen.groups().get(group).need().orElseThrow().flow().orElseThrow();
        double given = screen.pressure(candidate.part(), candidate.arrangement(), group, flow);
        return given > 0 ? screen.load(group).pressure(flow) / given : Double.POSITIVE_INFINITY;
    }

    private Optional<Sentence> rotor(Candidate first, int group) {
        String condition = screen.groups().get(group).declared();
        Optional<OperatingPoint.BankPoint> point = first.evaluation().flatMap(evaluation -> evaluation.cases().stream()
                .filter(each -> each.declared().equals(condition)).flatMap(each -> evaluation.data(OperatingPoint.class, each.concrete().id()).stream())
                .flatMap(each -> each.bank(bank).stream()).findFirst());
        if (point.isEmpty() || first.part().type().isEmpty() || !(point.get().flow() > 0) || !(point.get().pressure() > 0)) {
            return Optional.empty();
        }
        double flow = point.get().flow() / first.arrangement().columns();
        double pressure = point.get().pressure() / first.arrangement().series();
        double specific = specificSpeed(point.get().speed(), flow, pressure, point.get().density());
        String suits = specific > AXIAL_UPTO ? "no rotor is at its best: it works near free delivery, and a larger, slower one would take less power"
                : specific < CENTRIFUGAL_BELOW ? "centrifugal rotors are at their best" : specific > AXIAL_ABOVE
                ? "axial rotors are at their best" : "mixed-flow rotors, between axial and centrifugal ones, are at their best";
        String type = first.part().type().get();
        boolean asExpected = suits.startsWith(type) || specific > AXIAL_UPTO;
        return Optional.of(Sentence.of("in " + condition + " each of its movers then carries ", new Amount(flow, QuantityKind.FLOW), " against ",
                new Amount(pressure, QuantityKind.PRESSURE), " at ", new Amount(point.get().speed(), QuantityKind.ROTATIONAL_SPEED), ", a specific speed of ",
                new Amount(specific, QuantityKind.NUMBER), ", where " + suits + (asExpected ? "" : "; that this " + type + " one comes first is "
                + "due to what else counts") + " (centrifugal below about 1.8, axial from about 2.4 to 8; Cordier's line of best machines, from memory)"));
    }

    /** Specific speed ω √Q/(Δp/ρ)^(3/4), dimensionless; static pressure. */
    static double specificSpeed(double speed, double flow, double pressure, double density) {
        return speed * Math.sqrt(flow) / Math.pow(pressure / density, 0.75);
    }

    /** What the best of another type comes to beside it. */
    private Optional<Sentence> others(Candidate first) {
        if (first.part().type().isEmpty()) {
            return Optional.empty();
        }
        List<Object> words = new ArrayList<>();
        for (String type : AirMover.TYPES) {
            if (type.equals(first.part().type().get())) {
                continue;
            }
            meeting.stream().filter(candidate -> candidate.part().type().filter(type::equals).isPresent()).findFirst().ifPresent(other -> {
                words.add((words.isEmpty() ? "" : "; ") + "the best " + type + " one, " + other.words() + ",");
                List<Object> against = against(first, other);
                words.addAll(against.isEmpty() ? List.of(" comes to the same") : against);
            });
        }
        return words.isEmpty() ? Optional.empty() : Optional.of(Sentence.of(words.toArray()));
    }

    private static List<Object> against(Candidate first, Candidate other) {
        List<Object> words = new ArrayList<>();
        for (String id : List.of(Criterion.POWER, Criterion.COST, Criterion.SIZE, Criterion.MASS)) {
            Double a = first.values().get(id);
            Double b = other.values().get(id);
            if (a != null && b != null && a > 0 && Math.abs(b / a - 1) > SAME) {
                words.add(words.isEmpty() ? " has " : ", ");
                words.add(new Amount(b / a, QuantityKind.NUMBER));
                words.add(" times its " + (id.equals(Criterion.COST) ? "price" : id));
            }
        }
        return words;
    }

    /** Side by side or one behind another: where the system curve meets the curve of one alone, and what a second brings. */
    private Optional<Sentence> side(Candidate first, int group) {
        AirMover part = first.part();
        double one = screen.flow(part, Arrangement.SINGLE, group);
        double beside = screen.flow(part, new Arrangement(2, 1, 1, false), group);
        double behind = screen.flow(part, new Arrangement(1, 1, 2, false), group);
        double shutOff = screen.pressure(part, Arrangement.SINGLE, group, screen.load(group).points().getFirst().flow() * 1e-3);
        double height = one > 0 ? screen.load(group).pressure(one) / shutOff : 0;
        if (!(shutOff > 0) || !(height > NOTHING)) {
            return Optional.empty(); // against no pressure there is nothing to weigh
        }
        String wins = beside > behind * (1 + SAME) ? "a second one side by side brings more than one behind another"
                : behind > beside * (1 + SAME) ? "a second one behind another brings more than one side by side"
                : "a second one brings the same side by side and one behind another";
        boolean beside2 = first.arrangement().columns() > 1;
        boolean behind2 = first.arrangement().series() > 1;
        String how = beside2 && behind2 ? "both are used" : beside2 ? "they stand side by side" : behind2 ? "they stand one behind another" : "one is enough";
        boolean against = beside2 && !behind2 && behind > beside * (1 + SAME) || behind2 && !beside2 && beside > behind * (1 + SAME);
        return Optional.of(Sentence.of("at full speed in " + screen.groups().get(group).declared() + " the system curve meets the curve of one alone at ",
                new Amount(one, QuantityKind.FLOW), " and ", new Amount(height, QuantityKind.FRACTION), " of its pressure at no flow, where " + wins + ": ",
                new Amount(beside, QuantityKind.FLOW), " against ", new Amount(behind, QuantityKind.FLOW), "; " + how
                + (against ? " all the same, for what else counts: one that may fail, room, price" : "")));
    }
}
