package gripwright.pad;

import gripwright.check.Check;
import java.util.Arrays;

/**
 * Frictionless rigid probes on a bonded incompressible layer, however large the contact: the pressure is taken as even
 * over each of many rings, and the surface meets the probe at the middle of each ring.
 *
 * <p>A disc of even pressure on a half space sinks by elliptic integrals (K. L. Johnson, "Contact Mechanics" (1985),
 * section 3.4, from memory); what the board adds is an integral over the wave number of
 * (sinh h cosh h - h) / (cosh^2 h + h^2) - 1 (own derivation).
 */
public final class LayerContact {
    private static final double END = 24;
    private static final double[][] GAUSS = Special.gauss(200);
    private static final int RINGS = 120;
    /** First guess of the contact's edge over the half space's. */
    private static final double WIDE = 1.7;

    private LayerContact() {}

    /**
     * A probe pressed in.
     *
     * @param indentation [m]
     * @param force [N]
     * @param radius of the contact [m]
     * @param boardPressure straight under its middle on the board [Pa]
     */
    public record Pressed(double indentation, double force, double radius, double boardPressure) {}

    /** A sphere of radius {@code probe} [m] pressed {@code indentation} [m] into a layer of thickness t [m]. */
    public static Pressed sphere(double probe, double indentation, double modulus, double t) {
        return sphere(probe, indentation, modulus, t, RINGS);
    }

    static Pressed sphere(double probe, double indentation, double modulus, double t, int rings) {
        Check.positive(indentation, "indentation", "m");
        Check.that(
                probe > WIDE * Math.sqrt(probe * indentation),
                "the probe's radius " + probe + " m must be well above the indentation, " + indentation + " m");
        double[] edges = new double[rings + 1];
        for (int i = 0; i <= rings; i++) {
            edges[i] = WIDE * Math.sqrt(probe * indentation) * i / rings;
        }
        double[] gap = new double[rings];
        for (int i = 0; i < rings; i++) {
            double r = (edges[i] + edges[i + 1]) / 2;
            gap[i] = indentation - (probe - Math.sqrt(probe * probe - r * r));
        }
        double[][] sink = sinking(edges, modulus / 3, t);
        int touching = rings;
        while (touching > 1 && gap[touching - 1] <= 0) {
            touching--;
        }
        double[] pressure = solve(sink, gap, touching);
        while (touching > 1 && Arrays.stream(pressure).anyMatch(p -> p < 0)) {
            int outermost = touching - 1;
            while (pressure[outermost] >= 0) {
                outermost--;
            }
            touching = Math.max(1, outermost);
            pressure = solve(sink, gap, touching);
        }
        return summed(edges, pressure, touching, indentation, t);
    }

    /** A flat-ended cylinder of radius a [m]; returns force over indentation [N/m]. */
    public static double punchStiffness(double a, double modulus, double t, int rings) {
        double[] edges = new double[rings + 1];
        for (int i = 0; i <= rings; i++) {
            edges[i] = a * Math.sin(Math.PI / 2 * i / rings);
        }
        double[] one = new double[rings];
        Arrays.fill(one, 1);
        double[] pressure = solve(sinking(edges, modulus / 3, t), one, rings);
        return summed(edges, pressure, rings, 1, t).force();
    }

    private static Pressed summed(double[] edges, double[] pressure, int touching, double indentation, double t) {
        double force = 0;
        double board = 0;
        double inner = 0;
        for (int i = 0; i < touching; i++) {
            double outer = edges[i + 1] * edges[i + 1] * Math.PI;
            force += pressure[i] * (outer - inner);
            inner = outer;
        }
        // Board pressure at the middle: integral of T(h) J1(h a / t) a / t over h is that of an even disc of radius a.
        double half = END / 2;
        for (int k = 0; k < GAUSS[0].length; k++) {
            double h = half * (1 + GAUSS[0][k]);
            double sum = 0;
            double before = 0;
            for (int i = 0; i < touching; i++) {
                double next = edges[i + 1] / t * Special.j1(h * edges[i + 1] / t);
                sum += pressure[i] * (next - before);
                before = next;
            }
            board += half * GAUSS[1][k] * BondedLayer.transfer(h) * sum;
        }
        return new Pressed(indentation, force, edges[touching], board);
    }

    /** Sinking of the middle of ring i per pascal on ring j. */
    private static double[][] sinking(double[] edges, double shear, double t) {
        int n = edges.length - 1;
        int points = GAUSS[0].length;
        double half = END / 2;
        double[][] wave = new double[n][points];
        double[][] disc = new double[n + 1][points];
        double[] mid = new double[n];
        for (int i = 0; i < n; i++) {
            mid[i] = (edges[i] + edges[i + 1]) / 2;
            for (int k = 0; k < points; k++) {
                wave[i][k] = Special.j0(half * (1 + GAUSS[0][k]) * mid[i] / t);
            }
        }
        for (int j = 1; j <= n; j++) {
            for (int k = 0; k < points; k++) {
                double h = half * (1 + GAUSS[0][k]);
                disc[j][k] = half * GAUSS[1][k] * board(h) / (2 * shear) * edges[j] * Special.j1(h * edges[j] / t) / h;
            }
        }
        double[][] out = new double[n][n];
        for (int i = 0; i < n; i++) {
            double before = 0;
            for (int j = 1; j <= n; j++) {
                double whole = halfSpace(mid[i], edges[j], shear);
                for (int k = 0; k < points; k++) {
                    whole += wave[i][k] * disc[j][k];
                }
                out[i][j - 1] = whole - before;
                before = whole;
            }
        }
        return out;
    }

    private static double board(double h) {
        double e = Math.exp(-2 * h);
        return ((1 - e * e) - 4 * h * e) / ((1 + e) * (1 + e) + 4 * h * h * e) - 1;
    }

    private static double halfSpace(double r, double a, double shear) {
        if (r <= a) {
            return a / (Math.PI * shear) * Special.elliptic(r * r / (a * a))[1];
        }
        double q = a * a / (r * r);
        double[] ke = Special.elliptic(q);
        return r / (Math.PI * shear) * (ke[1] - (1 - q) * ke[0]);
    }

    /** Gauss elimination with row exchanges of the leading n x n block. */
    private static double[] solve(double[][] matrix, double[] right, int n) {
        double[][] a = new double[n][];
        double[] b = Arrays.copyOf(right, n);
        for (int i = 0; i < n; i++) {
            a[i] = Arrays.copyOf(matrix[i], n);
        }
        for (int k = 0; k < n; k++) {
            int best = k;
            for (int i = k + 1; i < n; i++) {
                best = Math.abs(a[i][k]) > Math.abs(a[best][k]) ? i : best;
            }
            double[] row = a[best];
            a[best] = a[k];
            a[k] = row;
            double value = b[best];
            b[best] = b[k];
            b[k] = value;
            for (int i = k + 1; i < n; i++) {
                double f = a[i][k] / a[k][k];
                for (int j = k + 1; j < n; j++) {
                    a[i][j] -= f * a[k][j];
                }
                b[i] -= f * b[k];
            }
        }
        for (int i = n - 1; i >= 0; i--) {
            for (int j = i + 1; j < n; j++) {
                b[i] -= a[i][j] * b[j];
            }
            b[i] /= a[i][i];
        }
        return b;
    }
}
