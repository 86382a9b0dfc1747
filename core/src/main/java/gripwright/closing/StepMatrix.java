package gripwright.closing;

import java.util.Arrays;

/**
 * The linear system of one Newton iteration: gradient, second derivative and what sliding friction adds to it.
 *
 * <p>Unknowns, in order: the hand's coordinates, the turns of spools, the object's twist (3 shifts, 3 turns). Matrices are
 * row-major, size x size. Workspace of one thread.
 */
final class StepMatrix {
    /** Index of the object's first unknown. */
    final int object;

    final int size;
    final double[] gradient;
    /** Symmetric part of the second derivative. */
    final double[] hessian;
    /** What sliding friction adds to it: not symmetric. */
    final double[] skew;

    /** True if {@link #skew} is not all zero. */
    boolean slipping;

    StepMatrix(int object) {
        this.object = object;
        size = object + 6;
        gradient = new double[size];
        hessian = new double[size * size];
        skew = new double[size * size];
    }

    void clear(boolean wantHessian) {
        slipping = false;
        Arrays.fill(gradient, 0);
        if (wantHessian) {
            Arrays.fill(hessian, 0);
            Arrays.fill(skew, 0);
        }
    }

    /** Adds to an entry of the second derivative and to its mirror; twice to the same on the diagonal. */
    void addEven(int i, int k, double v) {
        hessian[i * size + k] += v;
        hessian[k * size + i] += v;
    }

    /** The same, but once only on the diagonal. */
    void addEvenOnce(int i, int k, double v) {
        hessian[i * size + k] += v;
        if (i != k) {
            hessian[k * size + i] += v;
        }
    }

    /** Takes the unknowns from {@code first} on out of the system. @param scale of the pinned unknowns, for the solver */
    void pin(int first, double scale) {
        for (int i = first; i < size; i++) {
            gradient[i] = 0;
            for (int k = 0; k < size; k++) {
                hessian[i * size + k] = 0;
                hessian[k * size + i] = 0;
                skew[i * size + k] = 0;
                skew[k * size + i] = 0;
            }
            hessian[i * size + i] = scale * scale;
        }
    }
}
