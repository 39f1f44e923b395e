package tramontane.reliability.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.Severity;
import tramontane.model.AirMover;
import tramontane.model.Datasheet;
import tramontane.physics.units.QuantityKind;
import tramontane.reliability.BankLife;
import tramontane.reliability.LifeModel;
import tramontane.reliability.MoverLife;
import tramontane.reliability.MoverLife.Shaft;
import tramontane.reliability.ServiceLife;

/** Rules of use that hold whatever the condition. */
final class RuleFindings {

    private static final String PRACTICE = "common practice";
    private static final Pattern INGRESS = Pattern.compile("IP([0-6X])([0-9X])K?.*");
    /** Figures count as one within this share. */
    private static final double ROUNDING = 1e-9;

    private final Scene scene;
    private final List<Finding> findings = new ArrayList<>();

    private RuleFindings(Scene scene) {
        this.scene = scene;
    }

    static List<Finding> of(Scene scene) {
        RuleFindings rules = new RuleFindings(scene);
        Map<String, List<Scene.Bank>> byPart = new LinkedHashMap<>();
        for (Scene.Bank bank : scene.banks()) {
            bank.part().ifPresent(part -> {
                byPart.computeIfAbsent(part.id(), id -> new ArrayList<>()).add(bank);
                rules.attitude(bank, part);
                rules.ingress(bank, part);
            });
        }
        byPart.values().forEach(rules::part);
        if (scene.service().hazard()) {
            rules.findings.add(Finding.caution("", "loss of cooling can hurt somebody: life and redundancy as they are computed here are no proof of safety")
                    .remedy("follow the safety standard that governs the equipment, with its own proof, and have it checked by who is licensed for it")
                    .source("IEC 61508 and the product safety standard of the equipment"));
        }
        return rules.findings;
    }

    private void attitude(Scene.Bank bank, AirMover part) {
        Optional<String> bearing = part.datasheet().bearing();
        Optional<Shaft> stated = bank.life().flatMap(MoverLife::shaft);
        boolean sleeve = bearing.filter(LifeFindings::sleeve).isPresent();
        Shaft allowed = stated.orElse(sleeve ? Shaft.LEVEL : Shaft.ANY);
        if (allowed == Shaft.ANY) {
            return;
        }
        String who = "the movers of bank " + bank.id() + " (" + part.id() + bearing.map(kind -> ", " + kind + " bearings").orElse("") + ")";
        String source = stated.isPresent() ? "data sheet of the part" : PRACTICE;
        Optional<String> attitude = scene.design().equipment().attitude();
        if (attitude.isEmpty() || bank.section().shaft().isEmpty() && !attitude.get().equals("any")) {
            findings.add(Finding.note(bank.id(), who + " may work with the shaft " + allowed.word() + " only; how it lies is not said")
                    .remedy(attitude.isEmpty() ? "give the attitude of the equipment, and along which edge of it the shafts lie, in the section " + MoverLife.SECTION + " of the bank"
                            : "say along which edge of the equipment the shafts lie, in the section " + MoverLife.SECTION + " of the bank").source(source));
            return;
        }
        Shaft shaft = bank.section().shaft().map(axis -> axis.in(attitude.get())).orElse(Shaft.ANY);
        if (shaft != allowed) {
            findings.add(Finding.of(stated.isPresent() ? Severity.NOT_MET : Severity.CAUTION, bank.id(), who + " may work with the shaft " + allowed.word() + " only; it "
                    + (shaft == Shaft.ANY ? "may lie any way, as the equipment may stand in any attitude" : shaft == Shaft.UPRIGHT ? "stands upright" : "lies level"))
                    .remedy(sleeve ? "take ball bearings, which work in any attitude, or turn the movers" : "turn the movers, or take others").source(source));
        }
    }

    private void ingress(Scene.Bank bank, AirMover part) {
        BankLife.Solids solids = bank.section().solids().orElse(scene.service().solids());
        BankLife.Water water = bank.section().water().orElse(scene.service().water());
        if (solids == BankLife.Solids.NONE && water == BankLife.Water.NONE) {
            return;
        }
        String who = "the movers of bank " + bank.id() + " (" + part.id() + ")";
        Optional<String> code = part.datasheet().ingress();
        Matcher digits = INGRESS.matcher(code.orElse(""));
        if (!digits.matches()) {
            findings.add(Finding.of(Severity.NOT_JUDGED, bank.id(), "whether " + who + " withstand " + words(solids, water) + " is not known: their ingress protection is not stated")
                    .remedy("give the code of IEC 60529 of the part, or keep that from the movers by filters, hoods or place").source("IEC 60529"));
            return;
        }
        List<String> missing = new ArrayList<>();
        if (solids != BankLife.Solids.NONE && numeral(digits.group(1)) < solids.numeral()) {
            missing.add(solids.word() + " (IP" + solids.numeral() + "X)");
        }
        if (water != BankLife.Water.NONE && !stands(numeral(digits.group(2)), water)) {
            missing.add(words(water) + " (IPX" + water.numeral() + ")");
        }
        if (!missing.isEmpty()) {
            findings.add(Finding.of(Severity.NOT_MET, bank.id(), who + " are " + code.orElseThrow() + "; what reaches them is " + String.join(" and ", missing))
                    .remedy("take a part with that protection, or keep it from the movers by filters, hoods or place").source("IEC 60529"));
        }
    }

    /**
     * A numeral stands for all lower ones up to 6 only; 7 and 8 (immersion) and 9 (hot jets from near by) stand for 1 to 4 besides, not for
     * jets, and 9 not for immersion: IEC 60529, clause 6, from memory.
     */
    private static boolean stands(int numeral, BankLife.Water water) {
        return switch (water) {
            case JETS, STRONG_JETS -> numeral >= water.numeral() && numeral <= BankLife.Water.STRONG_JETS.numeral();
            case IMMERSION -> numeral == 7 || numeral == 8;
            default -> numeral >= water.numeral();
        };
    }

    private static int numeral(String digit) {
        return digit.equals("X") ? 0 : Integer.parseInt(digit);
    }

    private static String words(BankLife.Solids solids, BankLife.Water water) {
        List<String> all = new ArrayList<>();
        if (solids != BankLife.Solids.NONE) {
            all.add(solids.word());
        }
        if (water != BankLife.Water.NONE) {
            all.add(words(water));
        }
        return String.join(" and ", all);
    }

    private static String words(BankLife.Water water) {
        return switch (water) {
            case NONE -> "no water";
            case DRIP -> "dripping water";
            case TILTED_DRIP -> "dripping water while tilted";
            case SPRAY -> "sprayed water";
            case SPLASH -> "splashed water";
            case JETS -> "jets of water";
            case STRONG_JETS -> "strong jets of water";
            case IMMERSION -> "immersion in water";
        };
    }

    private void part(List<Scene.Bank> banks) {
        AirMover part = banks.getFirst().part().orElseThrow();
        Datasheet sheet = part.datasheet();
        String place = banks.size() == 1 ? banks.getFirst().id() : "";
        String who = "the movers of " + (banks.size() == 1 ? "bank " : "banks ") + String.join(", ", banks.stream().map(Scene.Bank::id).toList()) + " (" + part.id() + ")";
        ServiceLife service = scene.service();
        if (service.damage() && sheet.bearing().filter(LifeFindings::sleeve).isPresent()) {
            findings.add(Finding.caution(place, who + " have " + sheet.bearing().get() + " bearings, which may stop without warning; that does damage here")
                    .remedy("take ball bearings, which usually get noisy first, or watch their speed").source(PRACTICE));
        }
        banks.getFirst().life().ifPresent(life -> {
            shock(who, place, life);
            storage(who, place, life);
            banks.getFirst().model().ifPresent(model -> assumed(who, place, life, model));
        });
    }

    private void shock(String who, String place, MoverLife life) {
        ServiceLife service = scene.service();
        service.shock().ifPresent(peak -> {
            if (life.shock().isEmpty()) {
                findings.add(Finding.of(Severity.NOT_JUDGED, place, "whether " + who + " withstand shocks of ", acceleration(peak), " is not known: their shock class is not stated")
                        .remedy("ask the maker, or test them").source("IEC 60068-2-27"));
                return;
            }
            if (life.shock().get() < peak * (1 - ROUNDING)) {
                findings.add(Finding.of(Severity.NOT_MET, place, who + " withstand shocks of ", acceleration(life.shock().get()), "; they meet ", acceleration(peak))
                        .remedy("take movers for it, or mount them soft").source("IEC 60068-2-27"));
            } else if (service.shockTime().isPresent() && life.shockTime().isPresent() && service.shockTime().get() > life.shockTime().get() * (1 + ROUNDING)) {
                findings.add(Finding.caution(place, who + " withstand shocks that last ", milliseconds(life.shockTime().get()), "; they meet some of ", milliseconds(service.shockTime().get()),
                        ", which are harsher at the same height").remedy("compare the shock response spectra").source("IEC 60068-2-27"));
            } else if (service.shockTime().isPresent() && life.shockTime().isEmpty()) {
                findings.add(Finding.of(Severity.NOT_JUDGED, place, "whether " + who + " withstand shocks that last ", milliseconds(service.shockTime().get()),
                        " is not known: how long those last that they withstand is not stated").remedy("ask the maker").source("IEC 60068-2-27"));
            }
        });
    }

    private void storage(String who, String place, MoverLife life) {
        ServiceLife service = scene.service();
        service.lowestStorage().filter(low -> life.lowestStorage().filter(allowed -> low < allowed - 1e-6).isPresent()).ifPresent(low -> findings.add(
                Finding.of(Severity.NOT_MET, place, who + " may be stored down to ", LifeFindings.temperature(life.lowestStorage().orElseThrow()), "; they meet ", LifeFindings.temperature(low))
                        .remedy("pack them warm, or take others").source("data sheet of the part")));
        service.highestStorage().filter(high -> life.highestStorage().filter(allowed -> high > allowed + 1e-6).isPresent()).ifPresent(high -> findings.add(
                Finding.of(Severity.NOT_MET, place, who + " may be stored up to ", LifeFindings.temperature(life.highestStorage().orElseThrow()), "; they meet ", LifeFindings.temperature(high))
                        .remedy("keep them cooler, or take others").source("data sheet of the part")));
        if (service.lowestStorage().isPresent() && life.lowestStorage().isEmpty() || service.highestStorage().isPresent() && life.highestStorage().isEmpty()) {
            findings.add(Finding.of(Severity.NOT_JUDGED, place, "whether " + who + " withstand the temperatures of storage is not known: " + (life.lowestStorage().isEmpty()
                    ? life.highestStorage().isEmpty() ? "those that they may be stored at are not" : "the lowest that they may be stored at is not"
                    : "the highest that they may be stored at is not") + " stated").remedy("ask the maker"));
        }
    }

    private void assumed(String who, String place, MoverLife life, LifeModel model) {
        boolean rates = model.ratedAt().isPresent();
        if (rates && life.at().isEmpty()) {
            findings.add(Finding.caution(place, "the rated life of " + who + " does not say at which temperature it holds; ", LifeFindings.temperature(LifeModel.RATED_AT), " was taken")
                    .remedy("ask the maker").source(PRACTICE));
        }
        List<Object> defaults = new ArrayList<>();
        if (life.law() != MoverLife.Law.HANDBOOK && life.shape().isEmpty()) {
            defaults.add("Weibull shape " + number(model.nominal().shape()) + " (" + number(LifeModel.LOWEST_SHAPE) + " to "
                    + number(life.law() == MoverLife.Law.FATIGUE ? model.nominal().shape() : LifeModel.HIGHEST_SHAPE) + ")");
        }
        if (life.law() == MoverLife.Law.TEN_KELVIN && life.factor().isEmpty()) {
            defaults.add("factor 1.5 per 10 K (1.3 to 2)");
        }
        if (rates && life.law() != MoverLife.Law.GREASE && life.speedExponent().isEmpty()) {
            defaults.add("life by revolutions (or not by speed)");
        }
        if (!defaults.isEmpty()) {
            findings.add(Finding.note(place, "taken for " + who + ", as it is not stated: " + String.join(", ", defaults.stream().map(Object::toString).toList())
                    + "; bounds hold the range").remedy("give what the maker or a life test says").source(PRACTICE));
        }
        if (rates && model.ratedSpeed().isEmpty()) {
            findings.add(Finding.note(place, "the life of " + who + " does not follow their speed: neither the speed of the rating nor a rated speed is stated")
                    .remedy("give the ratedSpeed of the part"));
        }
        if (life.law() == MoverLife.Law.HANDBOOK) {
            findings.add(Finding.caution(place, "the life of " + who + " follows from the failure rates of a handbook, which compare designs and do not predict;"
                    + " stiff grease makes it shorter in the cold, too").remedy("compare with a life test").source("MIL-HDBK-217F Notice 2, section 12.1"));
        }
        if (life.law() == MoverLife.Law.FATIGUE) {
            findings.add(Finding.caution(place, "the life of " + who + " is that of fatigue; the grease of light bearings usually does not last as long")
                    .remedy("compare with the life of the grease").source("ISO 281; " + PRACTICE));
        }
    }

    private static String number(double value) {
        return value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf(value);
    }

    private static Amount acceleration(double value) {
        return new Amount(value, QuantityKind.ACCELERATION);
    }

    private static String milliseconds(double seconds) {
        double value = seconds * 1000;
        return number(Math.rint(value * 10) / 10) + " ms";
    }
}
