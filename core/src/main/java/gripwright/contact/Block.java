package gripwright.contact;

import java.util.Arrays;

/**
 * What the contacts of one body add up to, in the object's frame about its origin.
 *
 * <p>With y a contact point, g = dE/dy its gradient and S = d2E/dy2: F = sum g; V = sum y g^T; G = sum B^T S B with
 * B = [I, -[y]x]; C = sum of the non-symmetric slip coupling [t; y x t] [n; y x n]^T. Workspace.
 */
public final class Block {
    /** F [N]. */
    public double fx;

    public double fy;
    public double fz;
    /** V [N m], row-major. */
    public final double[] v = new double[9];
    /** G [N/m, N, N m], upper triangle, row-major 6 x 6. */
    public final double[] g = new double[36];
    /** C, row-major 6 x 6, full. */
    public final double[] c = new double[36];

    public boolean active;
    public boolean slipping;

    /** Nothing touches. */
    public void clear() {
        active = false;
        slipping = false;
        fx = 0;
        fy = 0;
        fz = 0;
    }

    /** Zeroes the sums when the first active point is met; most bodies have none, and the fill would cost. */
    public void start(boolean hessian) {
        active = true;
        Arrays.fill(v, 0);
        if (hessian) {
            Arrays.fill(g, 0);
        }
    }

    /** Adds another body's sums. @param hessian with second derivatives */
    public void add(Block other, boolean hessian) {
        if (!active) {
            start(hessian);
        }
        fx += other.fx;
        fy += other.fy;
        fz += other.fz;
        for (int i = 0; i < 9; i++) {
            v[i] += other.v[i];
        }
        if (!hessian) {
            return;
        }
        for (int i = 0; i < 36; i++) {
            g[i] += other.g[i];
        }
        if (other.slipping) {
            if (!slipping) {
                slipping = true;
                Arrays.fill(c, 0);
            }
            for (int i = 0; i < 36; i++) {
                c[i] += other.c[i];
            }
        }
    }

    /** F += g, V += y g^T for the gradient g at the point (x, y, z). */
    public void addForce(double x, double y, double z, double gx, double gy, double gz) {
        fx += gx;
        fy += gy;
        fz += gz;
        v[0] += x * gx;
        v[1] += x * gy;
        v[2] += x * gz;
        v[3] += y * gx;
        v[4] += y * gy;
        v[5] += y * gz;
        v[6] += z * gx;
        v[7] += z * gy;
        v[8] += z * gz;
    }

    /** G += B^T S B for S = [a b c; b d e; c e f] at the point (x, y, z); upper triangle only. */
    public void addStiffness(
            double x, double y, double z, double a, double b, double c1, double d, double e, double f) {
        double[] m = g;
        m[0] += a;
        m[1] += b;
        m[2] += c1;
        m[7] += d;
        m[8] += e;
        m[14] += f;
        // columns of S (-[y]x): S (e_k x y)
        double p0 = -b * z + c1 * y;
        double p1 = -d * z + e * y;
        double p2 = -e * z + f * y;
        double q0 = a * z - c1 * x;
        double q1 = b * z - e * x;
        double q2 = c1 * z - f * x;
        double r0 = -a * y + b * x;
        double r1 = -b * y + d * x;
        double r2 = -c1 * y + e * x;
        m[3] += p0;
        m[4] += q0;
        m[5] += r0;
        m[9] += p1;
        m[10] += q1;
        m[11] += r1;
        m[15] += p2;
        m[16] += q2;
        m[17] += r2;
        m[21] += -z * p1 + y * p2;
        m[22] += -z * q1 + y * q2;
        m[23] += -z * r1 + y * r2;
        m[28] += z * q0 - x * q2;
        m[29] += z * r0 - x * r2;
        m[35] += -y * r0 + x * r1;
    }

    /** C += [t; y x t] [n; z x n]^T for the sliding direction t at the point y and the normal n at the point z. */
    void addSlip(
            double yx,
            double yy,
            double yz,
            double tx,
            double ty,
            double tz,
            double zx,
            double zy,
            double zz,
            double nx,
            double ny,
            double nz) {
        if (!slipping) {
            slipping = true;
            Arrays.fill(c, 0);
        }
        double t3 = yy * tz - yz * ty;
        double t4 = yz * tx - yx * tz;
        double t5 = yx * ty - yy * tx;
        double n3 = zy * nz - zz * ny;
        double n4 = zz * nx - zx * nz;
        double n5 = zx * ny - zy * nx;
        slipRow(0, tx, nx, ny, nz, n3, n4, n5);
        slipRow(6, ty, nx, ny, nz, n3, n4, n5);
        slipRow(12, tz, nx, ny, nz, n3, n4, n5);
        slipRow(18, t3, nx, ny, nz, n3, n4, n5);
        slipRow(24, t4, nx, ny, nz, n3, n4, n5);
        slipRow(30, t5, nx, ny, nz, n3, n4, n5);
    }

    private void slipRow(int at, double t, double n0, double n1, double n2, double n3, double n4, double n5) {
        double[] m = c;
        m[at] += t * n0;
        m[at + 1] += t * n1;
        m[at + 2] += t * n2;
        m[at + 3] += t * n3;
        m[at + 4] += t * n4;
        m[at + 5] += t * n5;
    }
}
