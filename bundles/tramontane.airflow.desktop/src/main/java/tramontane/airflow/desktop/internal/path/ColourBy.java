package tramontane.airflow.desktop.internal.path;

import java.util.Optional;
import tramontane.physics.units.QuantityKind;

/** What the colour of the air says. */
enum ColourBy {
    /** Temperature of the air. */
    TEMPERATURE("temperature", "air temperature", QuantityKind.TEMPERATURE),
    /** Pressure above the air outside. */
    PRESSURE("pressure", "pressure above outside", QuantityKind.PRESSURE);

    private final String word;
    private final String title;
    private final QuantityKind quantity;

    ColourBy(String word, String title, QuantityKind quantity) {
        this.word = word;
        this.title = title;
        this.quantity = quantity;
    }

    /** What it is called on a button. */
    String word() {
        return word;
    }

    /** What it is called above the legend. */
    String title() {
        return title;
    }

    QuantityKind quantity() {
        return quantity;
    }

    /** The value of a bay, SI. */
    Optional<Double> value(AirValues values, String bay) {
        return Optional.ofNullable(values.bays().get(bay)).map(air -> this == PRESSURE ? air.pressure() : air.temperature())
                .filter(Double::isFinite);
    }
}
