package gripwright.contact;

/**
 * Normal force of one point of an elastic foundation by its depth d: a spring k whose stiffness builds up over a toe t.
 *
 * <p>f = k d^2 / (2 t) in the toe, k (d - t/2) beyond it, so that the energy is twice differentiable where a point lands.
 * Beyond the toe E = k (d^2/2 - d t/2 + t^2/6). Source: closed form, the integral of a stiffness that rises linearly.
 * All for d above 0 [m]; k [N/m], t [m].
 */
final class NormalLaw {
    private NormalLaw() {}

    /** dE/dd [N]. */
    static double force(double k, double toe, double depth) {
        return depth < toe ? 0.5 * k * depth * depth / toe : k * (depth - 0.5 * toe);
    }

    /** E [N m]. */
    static double energy(double k, double toe, double depth) {
        return depth < toe
                ? force(k, toe, depth) * depth / 3
                : k * (0.5 * depth * depth - 0.5 * depth * toe + toe * toe / 6);
    }

    /** d2E/dd2 [N/m]. */
    static double stiffness(double k, double toe, double depth) {
        return depth < toe ? k * (depth / toe) : k;
    }
}
