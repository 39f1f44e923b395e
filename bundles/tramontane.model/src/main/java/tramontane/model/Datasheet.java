package tramontane.model;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import tramontane.physics.units.QuantityKind;

/**
 * What the data sheet of an air mover says beside its aerodynamics, and where its figures come from. Its fields stand in the file
 * beside those of the {@link AirMover} itself.
 *
 * @param family             the series of parts that it belongs to
 * @param status             one of {@link #STATUSES}
 * @param bearing            one of {@link #BEARINGS}
 * @param ingress            ingress protection, as a code of IEC 60529: {@code IP54}
 * @param lowestTemperature  lowest temperature of the air it may work in, K
 * @param highestTemperature highest temperature of the air it may work in, K
 * @param mass               kg
 * @param price              of one piece, in the currency
 * @param currency           what the price is in: {@code EUR}
 * @param origins            where figures come from
 */
public record Datasheet(Optional<String> family, Optional<String> status, Optional<String> bearing, Optional<String> ingress,
        Optional<Quantity> lowestTemperature, Optional<Quantity> highestTemperature, Optional<Quantity> mass,
        Optional<Quantity> price, Optional<String> currency, List<Origin> origins) {

    /** May be ordered as long as anybody can tell. */
    public static final String CURRENT = "current";

    /** May be ordered for the last time. */
    public static final String LAST_ORDER = "last order";

    /** Not to be had any more. */
    public static final String ENDED = "ended";

    /** Where a part stands in its life on the market. */
    public static final List<String> STATUSES = List.of(CURRENT, LAST_ORDER, ENDED);

    /** Kinds of bearing. */
    public static final List<String> BEARINGS = List.of("sleeve", "ball", "fluid-film", "magnetically supported sleeve");

    /** IEC 60529, clause 4: two numerals or X, additional and supplementary letters. */
    private static final Pattern INGRESS = Pattern.compile("IP[0-6X]([0-8X]|9K?)[A-DFHMSW]*");

    /** A data sheet that says nothing. */
    public static final Datasheet EMPTY = new Datasheet(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
            Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), List.of());

    /** The fields in the file, among those of the {@link AirMover#FORM air mover}. */
    static final List<Field> FIELDS = List.of(
            Field.words("family", "family", "The series of parts that it belongs to."),
            Field.choice("status", "status", STATUSES, "Whether it can be had: current, for a last order only, or ended."),
            Field.choice("bearing", "bearing", BEARINGS, "What its shaft runs in."),
            Field.words("ingress", "ingress protection", "Protection against solids and water, as a code of IEC 60529: IP20, IP54."),
            Field.amount("lowestTemperature", "lowest temperature", QuantityKind.TEMPERATURE, Range.POSITIVE,
                    "Lowest temperature of the air it may work in."),
            Field.amount("highestTemperature", "highest temperature", QuantityKind.TEMPERATURE, Range.POSITIVE,
                    "Highest temperature of the air it may work in."),
            Field.amount("mass", "mass", QuantityKind.MASS, Range.POSITIVE, "Mass of one piece."),
            Field.amount("price", "price", QuantityKind.NUMBER, Range.NOT_NEGATIVE,
                    "Price of one piece, in the currency; for the quantity that the catalogue is kept for."),
            Field.words("currency", "currency", "What the price is in, such as EUR; prices in different currencies are not compared."),
            Field.parts("origins", "origins", Origin.FORM, "Where its figures come from and how far they may be off."));

    public Datasheet {
        origins = List.copyOf(origins);
    }

    /**
     * Where a figure of a part comes from.
     *
     * @param of        the field that is meant, as {@code mass} or {@code sections.drive.supply}; all that no other entry means
     *                  where it is not given
     * @param from      one of {@link #WAYS}
     * @param tolerance relative tolerance, for example 0.1
     * @param source    the document, rig or rule
     * @param more      notes and unknown members
     */
    public record Origin(Optional<String> of, Optional<String> from, Optional<Quantity> tolerance, Optional<String> source,
            Value.Tree more) implements Noun {

        /** Ways to come by a figure. */
        public static final List<String> WAYS = List.of("datasheet", "measured", "estimated");

        /** The fields in the file. */
        public static final Form FORM = Form.of("origin", "Where a figure of a part comes from.",
                Field.words("of", "of", "The field that is meant, such as mass or sections.drive.supply; everything else where not given."),
                Field.choice("from", "from", WAYS, "How it was come by.").mandatory(),
                Field.amount("tolerance", "tolerance", QuantityKind.FRACTION, Range.between(0, 1),
                        "How far it may be off, over its value. That of a curve's pressure stands with the curve."),
                Field.words("source", "source", "The document, rig or rule that it comes from."));

        static Origin from(Values values) {
            return new Origin(values.ifText("of"), values.ifText("from"), values.ifQuantity("tolerance"), values.ifText("source"),
                    values.rest());
        }

        @Override
        public Value.Tree tree() {
            return new TreeBuilder().text("of", of).text("from", from).quantity("tolerance", tolerance).text("source", source)
                    .build(more);
        }

        /** Whether it speaks of a field, or of one within it. */
        boolean covers(String field) {
            return of.map(meant -> field.equals(meant) || field.startsWith(meant + ".") || field.startsWith(meant + "["))
                    .orElse(true);
        }
    }

    /** Where a field of the part comes from: what the most particular entry says; empty where none does. */
    public Optional<Origin> origin(String field) {
        return origins.stream().filter(origin -> origin.covers(field))
                .max(Comparator.comparingInt(origin -> origin.of().map(String::length).orElse(-1)));
    }

    /**
     * What does not fit together.
     *
     * @param place where the part stands in the file
     */
    public List<Problem> check(String place) {
        List<Problem> problems = new ArrayList<>();
        if (lowestTemperature.isPresent() && highestTemperature.isPresent()
                && lowestTemperature.get().si() >= highestTemperature.get().si()) {
            problems.add(Problem.error(Problem.place(place, "highestTemperature"), "is not above the lowest temperature"));
        }
        ingress.filter(code -> !INGRESS.matcher(code).matches()).ifPresent(code -> problems.add(Problem.caution(
                Problem.place(place, "ingress"), "is " + FormReader.quote(code) + "; expected a code of IEC 60529, such as IP20 or IP54")));
        return problems;
    }

    static Datasheet from(Values values) {
        return new Datasheet(values.ifText("family"), values.ifText("status"), values.ifText("bearing"), values.ifText("ingress"),
                values.ifQuantity("lowestTemperature"), values.ifQuantity("highestTemperature"), values.ifQuantity("mass"),
                values.ifQuantity("price"), values.ifText("currency"), values.parts("origins").stream().map(Origin::from).toList());
    }

    TreeBuilder write(TreeBuilder tree) {
        return tree.text("family", family).text("status", status).text("bearing", bearing).text("ingress", ingress)
                .quantity("lowestTemperature", lowestTemperature).quantity("highestTemperature", highestTemperature)
                .quantity("mass", mass).quantity("price", price).text("currency", currency)
                .items("origins", origins.stream().map(Origin::tree).toList());
    }
}
