package tramontane.acoustics.internal;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import tramontane.acoustics.Banded;
import tramontane.model.Field;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Range;
import tramontane.model.Values;
import tramontane.physics.sound.Bands;
import tramontane.physics.units.QuantityKind;

/** The two fields that say of which bands the values beside them are. */
final class BandFields {

    private static final String OCTAVES = "octaves";
    private static final String WIDTH = "bands";
    private static final String LOWEST = "lowestBand";

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
        String band = octaves ? "octave" : "third-octave";
        double lowest = values.ifQuantity(LOWEST).map(Quantity::si).orElse(Banded.STANDARD_LOWEST);
        int[] middles = octaves ? IntStream.range(0, Bands.OCTAVES).map(k -> 3 * k + 1).toArray()
                : IntStream.range(0, Bands.THIRDS).toArray();
        int first = 0;
        while (first < middles.length && Math.abs(lowest / Bands.nominal(middles[first]) - 1) > NEAR) {
            first++;
        }
        if (first == middles.length) {
            problems.add(Problem.error(Problem.place(place, LOWEST), "is no middle frequency of " + (octaves ? "an " : "a ") + band
                    + "; expected one of " + Arrays.stream(middles).mapToObj(Bands::hertz).collect(Collectors.joining(", ")) + " Hz"));
            return;
        }
        for (String field : lists) {
            int size = values.ifQuantities(field).orElseThrow().size();
            if (size > middles.length - first) {
                problems.add(Problem.error(Problem.place(place, field), "has " + size + " values from the " + band + " of "
                        + Bands.hertz(middles[first]) + " Hz, beyond that of " + Bands.hertz(middles[middles.length - 1]) + " Hz;"
                        + " expected at most "
                        + (middles.length - first)));
            }
        }
    }
}
