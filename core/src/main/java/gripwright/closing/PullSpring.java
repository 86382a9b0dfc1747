package gripwright.closing;

import gripwright.math.Vec3;

/**
 * Pulls the object's centre of mass along one direction and leaves it free in all others.
 *
 * <p>Energy 1/2 k (s - n . (c - c0))^2, c the centre of mass, c0 its place when the test began.
 */
final class PullSpring implements ObjectSpring {
    private final FreeObject object;
    private final Vec3 n;
    private final double k;
    private final double start;
    private double s;
    private final double[] slope = new double[6];

    /**
     * @param direction in the world, of length 1
     * @param stiffness [N/m]
     * @param p origin and
     * @param r rotation of the object at the start
     */
    PullSpring(FreeObject object, Vec3 direction, double stiffness, double[] p, double[] r) {
        this.object = object;
        n = direction;
        k = stiffness;
        start = along(p, r);
    }

    private double along(double[] p, double[] r) {
        double[] m = object.centreOfMass;
        return n.x() * (p[0] + r[0] * m[0] + r[1] * m[1] + r[2] * m[2])
                + n.y() * (p[1] + r[3] * m[0] + r[4] * m[1] + r[5] * m[2])
                + n.z() * (p[2] + r[6] * m[0] + r[7] * m[1] + r[8] * m[2]);
    }

    @Override
    public double accumulate(double[] p, double[] r, boolean wantGradient, boolean wantHessian) {
        double f = load(p, r);
        if (wantGradient) {
            object.addLoad(r, f * n.x(), f * n.y(), f * n.z(), wantHessian);
        }
        if (wantHessian) {
            double[] m = object.centreOfMass;
            for (int i = 0; i < 3; i++) {
                slope[i] = r[i] * n.x() + r[3 + i] * n.y() + r[6 + i] * n.z();
            }
            slope[3] = m[1] * slope[2] - m[2] * slope[1];
            slope[4] = m[2] * slope[0] - m[0] * slope[2];
            slope[5] = m[0] * slope[1] - m[1] * slope[0];
            object.addRankOne(k, slope);
        }
        return 0.5 * f * f / k;
    }

    @Override
    public void farEnd(double place) {
        s = place;
    }

    @Override
    public double moved(double[] p, double[] r) {
        return along(p, r) - start;
    }

    @Override
    public double load(double[] p, double[] r) {
        return k * (s - moved(p, r));
    }
}
