package tramontane.physics.units;

/** A text is not the quantity that was expected; the message is a sentence fit for the person who wrote the text. */
public final class UnitException extends IllegalArgumentException {

    private static final long serialVersionUID = 1L;

    UnitException(String message) {
        super(message);
    }
}
