package gripwright.pad;

import gripwright.check.Check;
import java.util.Arrays;
import java.util.TreeSet;

/**
 * Lines of a graded mesh over radius and height, and what fills its cells.
 *
 * <p>Lines lie closer near the corners of lid, cavity and chip, where stresses are steep; between corners they are
 * placed so that each cell takes an equal share of the integral of one over the wished size.
 */
final class PadMesh {
    /** Cells per port radius at which the peak has converged to 0.02 %; measured by the convergence test. */
    static final int FINENESS = 3;

    private static final double GROWTH = 0.3;
    /** Largest cell along r and z over the rubber's thickness, at 4 cells per port radius. */
    private static final double WIDEST = 0.3;

    private static final double HIGHEST = 0.12;
    private static final int TIP = 8;
    private static final int SAMPLES = 400;
    private static final double SAME = 1e-9;

    enum Filling {
        RUBBER,
        RIGID,
        AIR
    }

    final double[] r;
    final double[] z;
    private final PadGeometry geometry;
    private final boolean filled;

    /** @param filled whether port and cavity hold rubber; else they are air */
    PadMesh(PadGeometry geometry, int fineness, boolean filled) {
        Check.that(fineness >= 1, "the fineness is " + fineness + "; it must be 1 or more");
        this.geometry = geometry;
        this.filled = filled;
        double t = geometry.overChip();
        double coarse = 4.0 / fineness;
        // Rubber over an empty port ends in a crack's tip at the port's edge.
        double finest = geometry.portRadius() / fineness / (filled ? 1 : TIP);
        boolean chip = geometry.chipHeight() > 0;
        double[] cornersR = chip
                ? new double[] {geometry.portRadius(), geometry.cavityRadius(), geometry.chipRadius()}
                : new double[] {geometry.portRadius()};
        r = lines(cornersR, geometry.outerRadius(), finest, WIDEST * t * coarse, cornersR);
        double under = geometry.chipHeight() - geometry.lid();
        double[] cornersZ =
                chip ? new double[] {under - geometry.cavityHeight(), under, geometry.chipHeight()} : new double[] {0};
        double finestZ = chip ? Math.min(finest, Math.min(geometry.lid(), geometry.cavityHeight()) / 2) : finest;
        z = lines(cornersZ, geometry.overBoard(), finestZ, HIGHEST * t * coarse, cornersZ);
    }

    private static double[] lines(double[] marks, double end, double finest, double widest, double[] corners) {
        TreeSet<Double> stops = new TreeSet<>();
        for (double mark : marks) {
            if (mark > SAME * end && mark < end * (1 - SAME)) {
                stops.add(mark);
            }
        }
        stops.add(end);
        double[] out = {0};
        for (double stop : stops) {
            out = append(out, stop, finest, widest, corners);
        }
        return out;
    }

    private static double[] append(double[] lines, double end, double finest, double widest, double[] corners) {
        double start = lines[lines.length - 1];
        double step = (end - start) / SAMPLES;
        double[] sum = new double[SAMPLES + 1];
        for (int i = 0; i < SAMPLES; i++) {
            double x = start + (i + 0.5) * step;
            double near = Double.POSITIVE_INFINITY;
            for (double corner : corners) {
                near = Math.min(near, Math.abs(x - corner));
            }
            sum[i + 1] = sum[i] + step / Math.min(widest, finest + GROWTH * near);
        }
        int count = Math.max(1, (int) Math.ceil(sum[SAMPLES] - 1e-6));
        double[] out = Arrays.copyOf(lines, lines.length + count);
        int at = 0;
        for (int k = 1; k < count; k++) {
            double wanted = sum[SAMPLES] * k / count;
            while (sum[at + 1] < wanted) {
                at++;
            }
            out[lines.length - 1 + k] = start + step * (at + (wanted - sum[at]) / (sum[at + 1] - sum[at]));
        }
        out[out.length - 1] = end;
        return out;
    }

    int columns() {
        return r.length - 1;
    }

    int layers() {
        return z.length - 1;
    }

    Filling filling(int column, int layer) {
        double rc = (r[column] + r[column + 1]) / 2;
        double zc = (z[layer] + z[layer + 1]) / 2;
        if (zc > geometry.chipHeight() || rc > geometry.chipRadius()) {
            return Filling.RUBBER;
        }
        double under = geometry.chipHeight() - geometry.lid();
        boolean port = rc < geometry.portRadius() && zc > under;
        boolean cavity = rc < geometry.cavityRadius() && zc < under && zc > under - geometry.cavityHeight();
        return port || cavity ? filled ? Filling.RUBBER : Filling.AIR : Filling.RIGID;
    }

    /** Height of the die [m]. */
    double dieHeight() {
        return geometry.chipHeight() - geometry.lid() - geometry.cavityHeight();
    }

    /** Radius of the area whose mean pressure the die reads [m]. */
    double dieRadius() {
        return geometry.chipHeight() > 0 ? geometry.cavityRadius() : geometry.portRadius();
    }

    /** Whether a cell's lower edge lies on the die. */
    boolean onDie(int column, int layer) {
        return filled && close(z[layer], dieHeight()) && r[column + 1] <= dieRadius() * (1 + SAME);
    }

    /** Whether a cell's lower edge is rubber over the air of an unfilled port. */
    boolean onAir(int column, int layer) {
        return !filled && close(z[layer], geometry.chipHeight()) && r[column + 1] <= geometry.portRadius() * (1 + SAME);
    }

    private boolean close(double a, double b) {
        return Math.abs(a - b) < SAME * geometry.overBoard();
    }
}
