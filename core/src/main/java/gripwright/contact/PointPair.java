package gripwright.contact;

/**
 * One contact between a point of a body and the world, or between points of two bodies, in the world frame: what the
 * caller needs to spread it over the joints. Workspace record of the two small contact kinds.
 */
public final class PointPair {
    public int bodyA;
    /** -1 = the table. */
    public int bodyB;
    /** Point of A and point of B [m], world. */
    public final double[] a = new double[3];

    public final double[] b = new double[3];
    /** dE/d(point of A) [N]; B gets the opposite. */
    public final double[] g = new double[3];
    /** d2E/d(point of A)^2 [N/m], row-major. */
    public final double[] s = new double[9];
    /** Non-symmetric slip coupling: t n^T, zero when sticking. */
    public final double[] t = new double[3];

    public final double[] n = new double[3];
    public boolean slipping;
}
