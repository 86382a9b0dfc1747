package gripwright.pad;

import gripwright.math.DenseSolver;

/**
 * A ring-shaped element with 9 displacement nodes and a pressure that is linear within it and jumps between elements
 * (Q2/P-1). The pressure is condensed, so that a bulk modulus far above the shear modulus does not lock it.
 *
 * <p>Source of the element: T. J. R. Hughes, "The Finite Element Method" (1987), chapter 4 (from memory). Nodes are
 * numbered height first; unknowns are (radial, upward) per node.
 */
final class Element {
    static final int UNKNOWNS = 18;
    private static final double G = Math.sqrt(0.6);
    private static final double[] POINTS = {-G, 0, G};
    private static final double[] WEIGHTS = {5.0 / 9, 8.0 / 9, 5.0 / 9};

    /** Lower triangle of the stiffness [N/m]. */
    final double[][] stiffness = new double[UNKNOWNS][UNKNOWNS];
    /** Integrals of the volume strain times 1, xi, eta [m^3 per m]. */
    final double[][] volume = new double[3][UNKNOWNS];
    /** The volume strain's coefficients of 1, xi, eta [1/m]. */
    final double[][] strain = new double[3][UNKNOWNS];

    Element(double r0, double r1, double z0, double z1, double shear, double lame) {
        double dr = r1 - r0;
        double dz = z1 - z0;
        double[][] mass = new double[3][3];
        double[][] b = new double[4][UNKNOWNS];
        for (int p = 0; p < 3; p++) {
            for (int q = 0; q < 3; q++) {
                double radius = r0 + dr * (POINTS[p] + 1) / 2;
                double w = 2 * Math.PI * radius * WEIGHTS[p] * WEIGHTS[q] * dr * dz / 4;
                strains(b, POINTS[p], POINTS[q], radius, dr, dz);
                double[] modes = {1, POINTS[p], POINTS[q]};
                for (int u = 0; u < UNKNOWNS; u++) {
                    double trace = b[0][u] + b[1][u] + b[2][u];
                    for (int s = 0; s < 3; s++) {
                        volume[s][u] += w * modes[s] * trace;
                    }
                    for (int v = 0; v <= u; v++) {
                        stiffness[u][v] += shear
                                * w
                                * (2 * (b[0][u] * b[0][v] + b[1][u] * b[1][v] + b[2][u] * b[2][v]) + b[3][u] * b[3][v]);
                    }
                }
                for (int s = 0; s < 3; s++) {
                    for (int t = 0; t < 3; t++) {
                        mass[s][t] += w * modes[s] * modes[t];
                    }
                }
            }
        }
        condense(mass, lame);
    }

    /** Rows: radial, upward, hoop strain, shear. */
    private static void strains(double[][] b, double xi, double eta, double radius, double dr, double dz) {
        for (int c = 0; c < 3; c++) {
            for (int d = 0; d < 3; d++) {
                int m = 2 * (3 * c + d);
                double n = shape(c, xi) * shape(d, eta);
                double alongR = slope(c, xi) * shape(d, eta) * 2 / dr;
                double alongZ = shape(c, xi) * slope(d, eta) * 2 / dz;
                b[0][m] = alongR;
                b[2][m] = n / radius;
                b[3][m] = alongZ;
                b[1][m + 1] = alongZ;
                b[3][m + 1] = alongR;
            }
        }
    }

    private void condense(double[][] mass, double lame) {
        double[] flat = new double[9];
        double[] scale = new double[3];
        for (int s = 0; s < 3; s++) {
            System.arraycopy(mass[s], 0, flat, 3 * s, 3);
            scale[s] = Math.sqrt(mass[s][s]);
        }
        DenseSolver solver = new DenseSolver(scale);
        double[] right = new double[3];
        double[] out = new double[3];
        for (int u = 0; u < UNKNOWNS; u++) {
            for (int s = 0; s < 3; s++) {
                right[s] = -volume[s][u];
            }
            if (!solver.choleskySolve(flat, 0, right, out)) {
                throw new IllegalStateException("a cell of the pad's mesh has no volume");
            }
            for (int s = 0; s < 3; s++) {
                strain[s][u] = out[s];
            }
        }
        for (int u = 0; u < UNKNOWNS; u++) {
            for (int v = 0; v <= u; v++) {
                for (int s = 0; s < 3; s++) {
                    stiffness[u][v] += lame * volume[s][u] * strain[s][v];
                }
            }
        }
    }

    static double shape(int node, double x) {
        return node == 0 ? x * (x - 1) / 2 : node == 1 ? 1 - x * x : x * (x + 1) / 2;
    }

    private static double slope(int node, double x) {
        return node == 0 ? x - 0.5 : node == 1 ? -2 * x : x + 0.5;
    }
}
