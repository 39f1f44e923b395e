package tramontane.selection.cli.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tramontane.analysis.Amount;
import tramontane.analysis.Sentence;
import tramontane.analysis.Verdict;
import tramontane.cli.terminal.Messages;
import tramontane.cli.terminal.Numbers;
import tramontane.physics.units.UnitSystem;
import tramontane.selection.Rejected;
import tramontane.selection.Spare;

/** Sentences about candidates. */
final class Words {

    private Words() {
    }

    /** What a verdict that holds has to spare: {@code just met}, {@code 12.0 % to spare}, {@code 3.10 K to spare}. */
    static String spare(Verdict verdict, UnitSystem units) {
        Amount spare = Spare.of(verdict);
        return Spare.isHair(verdict) ? "just met" : Numbers.text(Math.abs(spare.si()), spare.quantity(), units) + " to spare";
    }

    /**
     * One kind of reason.
     *
     * @param count how many fail for it
     * @param parts whether these are parts of which no arrangement fits, not parts in an arrangement
     * @param words what it is, with the range of each number
     */
    record Reason(int count, boolean parts, Sentence words) {

        /** {@code 12 parts}, {@code 1 arrangement}. */
        String counted() {
            return Messages.count(count, parts ? "part" : "arrangement");
        }
    }

    /** The reasons for which parts fail, told apart by their words, most frequent first. */
    static List<Reason> reasons(List<Rejected> rejected, UnitSystem units) {
        Map<List<String>, List<Sentence>> groups = new LinkedHashMap<>();
        for (Rejected each : rejected) {
            List<String> key = new ArrayList<>(List.of(each.arrangement().isEmpty() ? "" : "arranged"));
            for (Object part : each.reason().parts()) {
                key.add(part instanceof Amount amount ? amount.quantity().name() : ((String) part).replace(each.part(), "the part"));
            }
            groups.computeIfAbsent(key, words -> new ArrayList<>()).add(each.reason());
        }
        return groups.entrySet().stream().map(entry -> new Reason(entry.getValue().size(), entry.getKey().getFirst().isEmpty(),
                        together(entry.getKey().subList(1, entry.getKey().size()), entry.getValue(), units)))
                .sorted((a, b) -> b.count() - a.count()).toList();
    }

    private static Sentence together(List<String> key, List<Sentence> sentences, UnitSystem units) {
        List<Object> words = new ArrayList<>();
        for (int i = 0; i < key.size(); i++) {
            if (!(sentences.getFirst().parts().get(i) instanceof Amount first)) {
                words.add(key.get(i));
                continue;
            }
            int at = i;
            double least = sentences.stream().mapToDouble(each -> ((Amount) each.parts().get(at)).si()).min().orElse(0);
            double most = sentences.stream().mapToDouble(each -> ((Amount) each.parts().get(at)).si()).max().orElse(0);
            String low = Numbers.text(least, first.quantity(), units);
            String high = Numbers.text(most, first.quantity(), units);
            words.add(low.equals(high) ? high : low + " to " + high);
        }
        return Sentence.of(words.toArray());
    }
}
