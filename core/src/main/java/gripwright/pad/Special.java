package gripwright.pad;

/** Bessel functions, elliptic integrals and quadrature points, to about 1e-13; each from its textbook definition. */
final class Special {
    private Special() {}

    /** Bessel's integral by the trapezoidal rule, whose error for a periodic integrand falls faster than any power. */
    static double j0(double x) {
        int quarter = quarter(x);
        double sum = 0.5 + 0.5 * Math.cos(x);
        for (int k = 1; k < quarter; k++) {
            sum += Math.cos(x * Math.sin(Math.PI / 2 * k / quarter));
        }
        return sum / quarter;
    }

    static double j1(double x) {
        int quarter = quarter(x);
        double sum = 0.5 * Math.sin(x);
        for (int k = 1; k < quarter; k++) {
            double s = Math.sin(Math.PI / 2 * k / quarter);
            sum += s * Math.sin(x * s);
        }
        return sum / quarter;
    }

    private static int quarter(double x) {
        return 6 + (int) Math.ceil((Math.abs(x) + 10 * Math.cbrt(Math.abs(x))) / 4 + 2);
    }

    /** Complete elliptic integrals of the first and second kind for the parameter m = k^2, by means. */
    static double[] elliptic(double m) {
        double a = 1;
        double b = Math.sqrt(1 - m);
        double c = Math.sqrt(m);
        double sum = c * c / 2;
        double power = 0.5;
        while (Math.abs(c) > 1e-16) {
            double next = (a + b) / 2;
            c = (a - b) / 2;
            b = Math.sqrt(a * b);
            a = next;
            power *= 2;
            sum += power * c * c;
        }
        double first = Math.PI / (2 * a);
        return new double[] {first, first * (1 - sum)};
    }

    /** Gauss-Legendre points and weights on -1 to 1. */
    static double[][] gauss(int n) {
        double[] x = new double[n];
        double[] w = new double[n];
        for (int i = 0; i < n; i++) {
            double at = Math.cos(Math.PI * (i + 0.75) / (n + 0.5));
            double slope = 1;
            for (int step = 0; step < 100; step++) {
                double p0 = 1;
                double p1 = at;
                for (int k = 2; k <= n; k++) {
                    double p2 = ((2 * k - 1) * at * p1 - (k - 1) * p0) / k;
                    p0 = p1;
                    p1 = p2;
                }
                slope = n * (at * p1 - p0) / (at * at - 1);
                double move = p1 / slope;
                at -= move;
                if (Math.abs(move) < 1e-15) {
                    break;
                }
            }
            x[i] = at;
            w[i] = 2 / ((1 - at * at) * slope * slope);
        }
        return new double[][] {x, w};
    }
}
