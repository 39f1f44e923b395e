package tramontane.analysis;

import org.osgi.annotation.versioning.ConsumerType;

/** The thermal resistance of a link, made by its {@link LinkKind}. A pure function. */
@ConsumerType
@FunctionalInterface
public interface LinkLaw {

    /**
     * The resistance.
     *
     * @param air    the air at the source, at the mean temperature of surface and air
     * @param beyond resistance of the links after it, towards the air, K/W; 0 for the last
     * @return K/W, not negative; infinite where nothing carries heat off, NaN where it needs a velocity that is not known
     */
    double resistance(AirStream air, double beyond);
}
