package tramontane.acoustics.internal;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tramontane.acoustics.Banded;
import tramontane.model.Field;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Range;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.Written;
import tramontane.physics.sound.Bands;
import tramontane.physics.units.QuantityKind;

/** The two fields that say of which bands the values beside them are. */
final class BandFields {

    private static final String OCTAVES = "octaves";
    private static final String WIDTH = "bands";
    private static final String LOWEST = "lowestBand";

    private static final Pattern A_WEIGHTED = Pattern.compile("dB\\s*(\\(\\s*A\\s*\\)|A)\\s*$");

    /** How far a stated frequency may be off the name of its band: exact middles are, by up to 1 %. */
    private static final double NEAR = 0.02;

    static final Field BANDS = Field.choice(WIDTH, "bands", List.of(OCTAVES, "thirds"),
            "Whether values are given per octave or per third-octave.").standard(OCTAVES);
    static final Field LOWEST_BAND = Field.amount(LOWEST, "lowest band", QuantityKind.FREQUENCY, Range.between(20, 20000),
            "Middle frequency of the band of the first value; the others follow upwards.").standard("63 Hz");

    private BandFields() {
    }

    /** The values of a field by the bands stated beside it. */
    static Optional<Banded> read(Values values, String field) {
        return values.ifQuantities(field).filter(written -> written.size() > 0)
                .map(written -> new Banded(values.text(WIDTH).equals(OCTAVES), values.si(LOWEST), written.si()));
    }

    /** Writes values and their bands. */
    static Written write(Written written, String field, Optional<Banded> values) {
        if (values.isPresent() && !values.get().single()) {
            written.text(WIDTH, values.get().octaves() ? OCTAVES : "thirds").number(LOWEST, values.get().lowest());
        }
        return written.numbers(field, values.map(Banded::values).orElse(List.of()));
    }

    /** What does not fit together of bands and the fields that go by them. */
    static void check(Values values, String place, List<Problem> problems, String... fields) {
        if (Stream.concat(Stream.of(WIDTH, LOWEST), Arrays.stream(fields)).anyMatch(values::unreadable)) {
            return; // which has been said; nothing can be said of what is left
        }
        List<String> lists = Arrays.stream(fields).filter(field -> values.ifQuantities(field).filter(list -> list.size() > 1).isPresent())
                .toList();
        if (lists.isEmpty()) {
            for (String field : List.of(WIDTH, LOWEST)) {
                if (values.has(field)) {
                    problems.add(Problem.caution(Problem.place(place, field), "is not used; expected beside a list of "
                            + String.join(" or ", fields) + " with a value for each band"));
                }
            }
            return;
        }
        boolean octaves = values.text(WIDTH).equals(OCTAVES);
        double lowest = values.ifQuantity(LOWEST).map(Quantity::si).orElse(Banded.STANDARD_LOWEST);
        OptionalInt first = first(octaves, lowest, Problem.place(place, LOWEST), problems);
        for (String field : lists) {
            first.ifPresent(band -> end(octaves, band, values.ifQuantities(field).orElseThrow().size(), Problem.place(place, field),
                    problems));
        }
    }

    /**
     * The band of a frequency that is stated for it, in the count of {@link Bands}; where it is the middle of none, that is said.
     *
     * @param at where the frequency stands
     */
    static OptionalInt first(boolean octaves, double lowest, String at, List<Problem> problems) {
        int[] middles = middles(octaves);
        OptionalInt first = IntStream.range(0, middles.length).filter(band -> Math.abs(lowest / Bands.nominal(middles[band]) - 1) <= NEAR)
                .findFirst();
        Problem problem = Problem.error(at, "is no middle frequency of " + (octaves ? "an " : "a ") + band(octaves) + "; expected one of "
                + Arrays.stream(middles).mapToObj(Bands::hertz).collect(Collectors.joining(", ")) + " Hz");
        if (first.isEmpty() && !problems.contains(problem)) {
            problems.add(problem);
        }
        return first;
    }

    /**
     * Says where a run of bands goes on beyond the last.
     *
     * @param at where the run stands
     */
    static void end(boolean octaves, int first, int size, String at, List<Problem> problems) {
        int[] middles = middles(octaves);
        if (size > middles.length - first) {
            problems.add(Problem.error(at, "has " + size + " values from the " + band(octaves) + " of " + Bands.hertz(middles[first])
                    + " Hz, beyond that of " + Bands.hertz(middles[middles.length - 1]) + " Hz; expected at most "
                    + (middles.length - first)));
        }
    }

    /** Whether levels are written as A-weighted ones, in dB(A): all of them, or any. */
    static boolean weighted(Value written, boolean all) {
        return switch (written) {
            case Value.Text(String text) -> A_WEIGHTED.matcher(text).find();
            case Value.Items(List<Value> values) -> !values.isEmpty() && (all ? values.stream().allMatch(each -> weighted(each, true))
                    : values.stream().anyMatch(each -> weighted(each, false)));
            default -> false;
        };
    }

    /** The thirds in whose middle the bands have theirs. */
    private static int[] middles(boolean octaves) {
        return octaves ? IntStream.range(0, Bands.OCTAVES).map(k -> 3 * k + 1).toArray() : IntStream.range(0, Bands.THIRDS).toArray();
    }

    private static String band(boolean octaves) {
        return octaves ? "octave" : "third-octave";
    }
}
