package gripwright.pad;

import java.util.function.DoubleUnaryOperator;

/**
 * An incompressible layer of thickness t bonded to a rigid board, loaded from above, in closed form: the pressure on the
 * board as integrals over the wave number (Hankel). A die flush with a board; no chip, no cavity.
 *
 * <p>With h = k t the board carries T(h) = (cosh h + h sinh h) / (cosh^2 h + h^2) of a surface pressure of wave number
 * k. Own derivation from Stokes-like incompressible elasticity; for great t it tends to (1 + h) exp(-h), which is
 * Boussinesq's half space.
 */
public final class BondedLayer {
    private static final double END = 40;
    private static final int PANELS = 160;
    private static final double[][] GAUSS = Special.gauss(8);

    private BondedLayer() {}

    static double transfer(double h) {
        double e = Math.exp(-2 * h);
        return 2 * Math.exp(-h) * ((1 + e) + h * (1 - e)) / ((1 + e) * (1 + e) + 4 * h * h * e);
    }

    /** Pressure on the board per newton of a point load at offset x [Pa/N]. */
    public static double point(double x, double t) {
        return integral(h -> h * transfer(h) * Special.j0(h * x / t)) / (2 * Math.PI * t * t);
    }

    /** Pressure on the board at x from the middle of one newton spread evenly over a disc of radius a [Pa/N]. */
    public static double disc(double x, double a, double t) {
        return integral(h -> transfer(h) * Special.j1(h * a / t) * Special.j0(h * x / t)) / (Math.PI * a * t);
    }

    /** Pressure on the board at x from a line that carries one newton per metre [Pa/(N/m)]. */
    public static double line(double x, double t) {
        return integral(h -> transfer(h) * Math.cos(h * x / t)) / (Math.PI * t);
    }

    private static double integral(DoubleUnaryOperator f) {
        double half = END / PANELS / 2;
        double sum = 0;
        for (int p = 0; p < PANELS; p++) {
            for (int k = 0; k < GAUSS[0].length; k++) {
                sum += GAUSS[1][k] * f.applyAsDouble((2 * p + 1 + GAUSS[0][k]) * half);
            }
        }
        return sum * half;
    }
}
