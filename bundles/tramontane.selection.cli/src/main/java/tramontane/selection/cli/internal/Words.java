package tramontane.selection.cli.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.analysis.Amount;
import tramontane.analysis.Figure;
import tramontane.analysis.Judgement;
import tramontane.analysis.Sentence;
import tramontane.analysis.Verdict;
import tramontane.cli.terminal.Numbers;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.selection.Rejected;

/** Sentences about candidates. */
final class Words {

    private Words() {
    }

    /** A verdict that holds, with what is to spare: {@code flow at fans 295 m³/h, 2.4 % to spare (hot day)}. */
    static String spare(Verdict verdict, UnitSystem units) {
        Figure figure = verdict.figure().orElseThrow();
        QuantityKind kind = figure.kind().quantity();
        String value = Numbers.together(Numbers.text(figure.value(), kind, units));
        Optional<Double> limit = verdict.requirement().atLeast().or(() -> verdict.requirement().atMost())
                .map(each -> Judgement.limit(each, figure.kind()));
        // a share of a temperature says nothing; kelvin do
        boolean kelvin = kind.equals(QuantityKind.TEMPERATURE) || kind.equals(QuantityKind.TEMPERATURE_DIFFERENCE);
        String margin = kelvin ? Numbers.text(Math.abs(verdict.margin()), QuantityKind.TEMPERATURE_DIFFERENCE, units)
                : limit.filter(each -> each != 0).map(each -> Numbers.text(Math.abs(verdict.margin() / each), QuantityKind.FRACTION, units))
                .orElseGet(() -> Numbers.text(Math.abs(verdict.margin()), kind, units));
        return figure.kind().label() + (figure.place().isEmpty() ? "" : " at " + figure.place()) + " " + value + ", " + Numbers.together(margin) + " to spare"
                + (figure.condition().isEmpty() ? "" : " (" + figure.condition() + ")");
    }

    /** One kind of reason: how many fail for it, and in words what it is, with the range of each number. */
    record Reason(int count, Sentence words) {
    }

    /** The reasons for which parts fail, told apart by their words, most frequent first. */
    static List<Reason> reasons(List<Rejected> rejected, UnitSystem units) {
        Map<List<String>, List<Sentence>> groups = new LinkedHashMap<>();
        for (Rejected each : rejected) {
            List<String> key = new ArrayList<>();
            for (Object part : each.reason().parts()) {
                key.add(part instanceof Amount amount ? amount.quantity().name() : ((String) part).replace(each.part(), "the part"));
            }
            groups.computeIfAbsent(key, words -> new ArrayList<>()).add(each.reason());
        }
        return groups.entrySet().stream().map(entry -> new Reason(entry.getValue().size(), together(entry.getKey(), entry.getValue(), units)))
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
