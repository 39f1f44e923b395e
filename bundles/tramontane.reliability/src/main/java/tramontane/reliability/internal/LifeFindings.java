package tramontane.reliability.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.Severity;
import tramontane.model.AirMover;
import tramontane.physics.units.QuantityKind;
import tramontane.reliability.LifeState;
import tramontane.reliability.MoverLife;
import tramontane.reliability.bearing.SmallMotor;

/** What an engineer should know of the life of movers in one condition. */
final class LifeFindings {

    /** Above it sleeve bearings lose their lubricant, K; common practice. */
    static final double LUBRICANT = 343.15;

    private static final double ROUNDING = 1e-6;

    private LifeFindings() {
    }

    static List<Finding> of(Scene scene, LifeState state) {
        List<Finding> findings = new ArrayList<>();
        state.unknown().forEach(id -> scene.banks().stream().filter(bank -> bank.id().equals(id)).findFirst().ifPresent(bank -> findings.add(unknown(bank, scene))));
        Map<String, List<LifeState.BankState>> byPart = new LinkedHashMap<>();
        state.banks().stream().filter(bank -> !bank.movers().isEmpty()).forEach(bank -> byPart.computeIfAbsent(bank.part(), part -> new ArrayList<>()).add(bank));
        byPart.values().forEach(banks -> part(scene, banks, findings));
        return findings;
    }

    private static Finding unknown(Scene.Bank bank, Scene scene) {
        String who = "the life of the movers of bank " + bank.id() + " is not known: ";
        if (bank.life().isEmpty()) {
            return Finding.of(Severity.NOT_JUDGED, bank.id(), who + bank.part().map(part -> "nothing is said of the life of " + part.id()).orElse("it has no part"))
                    .remedy("give its rated life in a section " + MoverLife.SECTION + " of the part");
        }
        if (bank.model().isEmpty()) {
            MoverLife life = bank.life().get();
            String what = switch (life.law()) {
                case TEN_KELVIN, GREASE -> "a rated life";
                case ARRHENIUS -> life.rated().isEmpty() ? "a rated life" : "an activation energy";
                case FATIGUE -> life.dynamicRating().isEmpty() ? "the load rating of its bearings" : "the loads of its bearings";
                case HANDBOOK -> "a service life of the design";
            };
            return Finding.of(Severity.NOT_JUDGED, bank.id(), who + "law \"" + life.law().word() + "\" needs " + what)
                    .remedy("give it in the section " + MoverLife.SECTION + (life.law() == MoverLife.Law.HANDBOOK ? " of the design" : " of the part"));
        }
        return Finding.of(Severity.NOT_JUDGED, bank.id(), who + "it has no duty point");
    }

    private static void part(Scene scene, List<LifeState.BankState> banks, List<Finding> findings) {
        LifeState.BankState first = banks.getFirst();
        Scene.Bank bank = scene.banks().stream().filter(each -> each.id().equals(first.bank())).findFirst().orElseThrow();
        AirMover part = bank.part().orElseThrow();
        MoverLife life = bank.life().orElseThrow();
        String place = banks.size() == 1 ? first.bank() : "";
        String who = "the movers of " + names(banks);
        double coldest = banks.stream().flatMap(each -> each.movers().stream()).mapToDouble(LifeState.MoverState::temperature).min().orElseThrow();
        double warmest = banks.stream().flatMap(each -> each.movers().stream()).mapToDouble(LifeState.MoverState::temperature).max().orElseThrow();
        if (part.datasheet().bearing().filter(LifeFindings::sleeve).isPresent() && warmest > LUBRICANT + ROUNDING) {
            findings.add(Finding.caution(place, who + " (" + part.datasheet().bearing().get() + " bearings) work in air of ", temperature(warmest), ", above ",
                    temperature(LUBRICANT), ": their lubricant is lost").remedy("take ball bearings, or lead cooler air to them").source("common practice"));
        }
        Optional<Double> tested = bank.model().orElseThrow().ratedAt().map(at -> life.testedAt().orElse(at));
        tested.filter(at -> coldest < at - ROUNDING).ifPresent(at -> findings.add(Finding.caution(place, "the life of " + who + " is extrapolated: they work in air of ",
                temperature(coldest), ", their life was ", life.testedAt().isPresent() ? "tested at " : "rated at ", temperature(at),
                "; other things than the bearing may limit it there").remedy(life.testedAt().isPresent()
                        ? "count on no more than the rated life, as the lower bound does below the temperature of the rating; ask how the test led to the rating"
                        : "count on no more than the rated life, as the lower bound does")
                .source("common practice; W. Nelson, \"Accelerated Testing\", 1990")));
        if (life.law() == MoverLife.Law.HANDBOOK && (coldest < SmallMotor.LOWEST - ROUNDING || warmest > SmallMotor.HIGHEST + ROUNDING)) {
            findings.add(Finding.caution(place, "the failure rate of " + who + " is extrapolated: the handbook covers ", temperature(SmallMotor.LOWEST), " to ",
                    temperature(SmallMotor.HIGHEST), ", they work in air of ", temperature(coldest < SmallMotor.LOWEST ? coldest : warmest))
                    .source("MIL-HDBK-217F Notice 2, section 12.1"));
        }
    }

    /** Whether a kind of bearing is one of the sleeve kinds, in which oil carries the shaft. */
    static boolean sleeve(String bearing) {
        return !bearing.equals("ball");
    }

    private static String names(List<LifeState.BankState> banks) {
        return (banks.size() == 1 ? "bank " : "banks ") + String.join(", ", banks.stream().map(LifeState.BankState::bank).toList());
    }

    static Amount temperature(double kelvin) {
        return new Amount(kelvin, QuantityKind.TEMPERATURE);
    }
}
