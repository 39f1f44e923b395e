package tramontane.physics.control;

/**
 * A frequency response: the complex number by which a sine is multiplied.
 *
 * @param real      real part
 * @param imaginary imaginary part
 */
public record Response(double real, double imaginary) {

    /** Its size. */
    public double magnitude() {
        return Math.hypot(real, imaginary);
    }

    /** Its angle, rad, from -π to π; negative where the answer comes late. */
    public double phase() {
        return Math.atan2(imaginary, real);
    }

    /** One after the other. */
    public Response times(Response other) {
        return new Response(real * other.real - imaginary * other.imaginary, real * other.imaginary + imaginary * other.real);
    }

    /** Larger by a real factor. */
    public Response times(double factor) {
        return new Response(factor * real, factor * imaginary);
    }

    /** A lag of first order, 1/(1 + jωτ). */
    static Response lag(double omega, double tau) {
        double x = omega * tau;
        double size = 1 + x * x;
        return new Response(1 / size, -x / size);
    }
}
