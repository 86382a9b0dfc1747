package gripwright.pad;

import gripwright.check.Check;
import java.util.Arrays;

/**
 * The stiffness of one pad, factored, and the loads and readings one can ask it for. Rubber is bonded to board, chip
 * and cavity walls; its upper and outer sides are free.
 */
final class PadSystem {
    /** What holds the upper side. */
    enum Top {
        FREE,
        /** A rigid plate bonded to it that moves only up and down. */
        PLATE
    }

    private final PadMesh mesh;
    private final int high;
    private final int wide;
    private final double bulk;
    private final double shear;
    private final double lame;
    private final int[] equation;
    private final int equations;
    private final Element[] elements;
    private final ProfileCholesky matrix;

    /**
     * @param modulus Young's modulus [Pa]
     * @param bulk bulk modulus [Pa]
     */
    PadSystem(PadMesh mesh, double modulus, double bulk, Top top) {
        Check.positive(modulus, "Young's modulus", "Pa");
        Check.positive(bulk, "bulk modulus", "Pa");
        Check.that(
                bulk > modulus / 3,
                "the bulk modulus is " + bulk + " Pa; it must be above a third of Young's modulus, " + modulus + " Pa");
        this.mesh = mesh;
        this.bulk = bulk;
        double ratio = 0.5 - modulus / (6 * bulk);
        shear = modulus / (2 * (1 + ratio));
        lame = bulk - 2 * shear / 3;
        wide = 2 * mesh.columns() + 1;
        high = 2 * mesh.layers() + 1;
        equation = new int[2 * wide * high];
        equations = number(top);
        elements = new Element[mesh.columns() * mesh.layers()];
        matrix = assemble();
    }

    private int node(int column, int layer, int c, int d) {
        return (2 * column + c) * high + 2 * layer + d;
    }

    private int number(Top top) {
        boolean[] used = new boolean[wide * high];
        boolean[] held = new boolean[wide * high];
        boolean[] over = new boolean[wide * high];
        for (int i = 0; i < mesh.columns(); i++) {
            for (int j = 0; j < mesh.layers(); j++) {
                PadMesh.Filling filling = mesh.filling(i, j);
                for (int c = 0; c < 3; c++) {
                    for (int d = 0; d < 3; d++) {
                        int n = node(i, j, c, d);
                        used[n] |= filling == PadMesh.Filling.RUBBER;
                        held[n] |= filling == PadMesh.Filling.RIGID;
                    }
                }
            }
        }
        int next = 0;
        Arrays.fill(equation, -1);
        for (int n = 0; n < wide * high; n++) {
            int column = n / high;
            int row = n % high;
            over[n] = top == Top.PLATE && row == high - 1;
            if (used[n] && !held[n] && row > 0 && !over[n]) {
                equation[2 * n] = column > 0 ? next++ : -1;
                equation[2 * n + 1] = next++;
            }
        }
        if (top == Top.PLATE) {
            for (int n = 0; n < wide * high; n++) {
                if (over[n]) {
                    equation[2 * n + 1] = next;
                }
            }
            next++;
        }
        return next;
    }

    private int[] equationsOf(int column, int layer) {
        int[] out = new int[Element.UNKNOWNS];
        int k = 0;
        for (int c = 0; c < 3; c++) {
            for (int d = 0; d < 3; d++) {
                int n = node(column, layer, c, d);
                out[k++] = equation[2 * n];
                out[k++] = equation[2 * n + 1];
            }
        }
        return out;
    }

    private interface Visitor {
        void visit(int column, int layer, Element element, int[] equations);
    }

    private void each(Visitor visitor) {
        for (int i = 0; i < mesh.columns(); i++) {
            for (int j = 0; j < mesh.layers(); j++) {
                Element element = elements[i * mesh.layers() + j];
                if (element != null) {
                    visitor.visit(i, j, element, equationsOf(i, j));
                }
            }
        }
    }

    private ProfileCholesky assemble() {
        for (int i = 0; i < mesh.columns(); i++) {
            for (int j = 0; j < mesh.layers(); j++) {
                if (mesh.filling(i, j) == PadMesh.Filling.RUBBER) {
                    elements[i * mesh.layers() + j] =
                            new Element(mesh.r[i], mesh.r[i + 1], mesh.z[j], mesh.z[j + 1], shear, lame);
                }
            }
        }
        int[] first = new int[equations];
        Arrays.setAll(first, i -> i);
        each((i, j, element, eq) -> {
            int least = equations;
            for (int e : eq) {
                least = e >= 0 ? Math.min(least, e) : least;
            }
            for (int e : eq) {
                if (e >= 0) {
                    first[e] = Math.min(first[e], least);
                }
            }
        });
        ProfileCholesky built = new ProfileCholesky(first);
        each((i, j, element, eq) -> {
            for (int u = 0; u < Element.UNKNOWNS; u++) {
                for (int v = 0; v <= u; v++) {
                    if (eq[u] >= 0 && eq[v] >= 0) {
                        double value = element.stiffness[u][v];
                        // Two unknowns tied to one equation meet in both triangles.
                        built.add(eq[u], eq[v], u != v && eq[u] == eq[v] ? 2 * value : value);
                    }
                }
            }
        });
        built.factor();
        return built;
    }

    int unknowns() {
        return equations;
    }

    double bulk() {
        return bulk;
    }

    double[] solved(double[] load) {
        double[] x = load.clone();
        matrix.solve(x);
        return x;
    }

    /**
     * The vector l with l.u the mean normal stress on the die [Pa], pressure positive. At a bonded floor all strain is
     * along z, so the stress is -(lame + 2 shear) times the volume strain.
     */
    double[] dieReading() {
        double[] out = new double[equations];
        double[] area = {0};
        each((i, j, element, eq) -> {
            if (mesh.onDie(i, j)) {
                double r0 = mesh.r[i];
                double r1 = mesh.r[i + 1];
                double ring = Math.PI * (r1 * r1 - r0 * r0);
                double[] modes = {ring, 2 * Math.PI * (r1 - r0) * (r1 - r0) / 12, -ring};
                area[0] += ring;
                for (int u = 0; u < Element.UNKNOWNS; u++) {
                    if (eq[u] >= 0) {
                        for (int s = 0; s < 3; s++) {
                            out[eq[u]] -= (lame + 2 * shear) * modes[s] * element.strain[s][u];
                        }
                    }
                }
            }
        });
        for (int k = 0; k < equations; k++) {
            out[k] /= area[0];
        }
        return out;
    }

    /** Load of one unit of free volume expansion everywhere [N]. */
    double[] swelling() {
        double[] out = new double[equations];
        each((i, j, element, eq) -> {
            for (int u = 0; u < Element.UNKNOWNS; u++) {
                if (eq[u] >= 0) {
                    out[eq[u]] += bulk * element.volume[0][u];
                }
            }
        });
        return out;
    }

    /** Load of one pascal on the free sides [N]. */
    double[] ambient() {
        double[] out = new double[equations];
        for (int i = 0; i < mesh.columns(); i++) {
            addToEdge(out, i, high - 1, -1);
        }
        double outer = mesh.r[mesh.columns()];
        for (int j = 0; j < mesh.layers(); j++) {
            double[] share = {1.0 / 6, 4.0 / 6, 1.0 / 6};
            for (int d = 0; d < 3; d++) {
                int e = equation[2 * ((wide - 1) * high + 2 * j + d)];
                if (e >= 0) {
                    out[e] -= share[d] * (mesh.z[j + 1] - mesh.z[j]) * 2 * Math.PI * outer;
                }
            }
        }
        return out;
    }

    /** The vector q with q.u the volume that rubber bulges down into an unfilled port [m^3]; also one pascal of suction. */
    double[] bulge() {
        double[] out = new double[equations];
        each((i, j, element, eq) -> {
            if (mesh.onAir(i, j)) {
                addToEdge(out, i, 2 * j, -1);
            }
        });
        return out;
    }

    private void addToEdge(double[] out, int column, int row, double pressure) {
        double g = Math.sqrt(0.6);
        double[] points = {-g, 0, g};
        double[] weights = {5.0 / 9, 8.0 / 9, 5.0 / 9};
        double dr = mesh.r[column + 1] - mesh.r[column];
        for (int k = 0; k < 3; k++) {
            double radius = mesh.r[column] + dr * (points[k] + 1) / 2;
            for (int c = 0; c < 3; c++) {
                int e = equation[2 * ((2 * column + c) * high + row) + 1];
                if (e >= 0) {
                    out[e] += pressure * Element.shape(c, points[k]) * 2 * Math.PI * radius * weights[k] * dr / 2;
                }
            }
        }
    }

    /** Load of one newton down on the plate. */
    double[] onPlate() {
        double[] out = new double[equations];
        out[equations - 1] = -1;
        return out;
    }

    /** Offsets of the nodes of the upper side [m], shape (2 columns + 1). */
    double[] offsets() {
        double[] out = new double[wide];
        for (int i = 0; i < wide; i++) {
            out[i] = i % 2 == 0 ? mesh.r[i / 2] : (mesh.r[i / 2] + mesh.r[i / 2 + 1]) / 2;
        }
        return out;
    }

    /** The field at the upper side; {@code along} 0 = radial, 1 = upward. */
    double[] atTop(double[] field, int along) {
        double[] out = new double[wide];
        for (int i = 0; i < wide; i++) {
            int e = equation[2 * (i * high + high - 1) + along];
            out[i] = e < 0 ? 0 : field[e];
        }
        return out;
    }

    static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
