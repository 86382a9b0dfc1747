package gripwright.pad;

/** A smooth curve through points: a cubic spline, level at its start if it is even, straight at its end. */
final class Curve {
    private final double[] x;
    private final double[] y;
    private final double[] bend;

    /**
     * @param x rising, at least 3
     * @param even whether the curve goes on as its mirror image below x[0]; else it is straight there
     */
    Curve(double[] x, double[] y, boolean even) {
        this.x = x.clone();
        this.y = y.clone();
        int n = x.length;
        bend = new double[n];
        double[] upper = new double[n];
        if (even) {
            double h = x[1] - x[0];
            upper[0] = 0.5;
            bend[0] = 3 / h * ((y[1] - y[0]) / h);
        }
        for (int i = 1; i < n - 1; i++) {
            double before = x[i] - x[i - 1];
            double after = x[i + 1] - x[i];
            double right = 6 * ((y[i + 1] - y[i]) / after - (y[i] - y[i - 1]) / before);
            double pivot = 2 * (before + after) - before * upper[i - 1];
            upper[i] = after / pivot;
            bend[i] = (right - before * bend[i - 1]) / pivot;
        }
        for (int i = n - 2; i >= 0; i--) {
            bend[i] -= upper[i] * bend[i + 1];
        }
    }

    private int before(double at) {
        int low = 0;
        int high = x.length - 1;
        while (high - low > 1) {
            int middle = (low + high) / 2;
            if (x[middle] > at) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return low;
    }

    /** The value; 0 beyond the last point. */
    double at(double where) {
        if (where > x[x.length - 1]) {
            return 0;
        }
        int i = before(where);
        double h = x[i + 1] - x[i];
        double a = (x[i + 1] - where) / h;
        double b = (where - x[i]) / h;
        return a * y[i] + b * y[i + 1] + ((a * a * a - a) * bend[i] + (b * b * b - b) * bend[i + 1]) * h * h / 6;
    }

    double slope(double where) {
        if (where > x[x.length - 1]) {
            return 0;
        }
        int i = before(where);
        double h = x[i + 1] - x[i];
        double a = (x[i + 1] - where) / h;
        double b = (where - x[i]) / h;
        return (y[i + 1] - y[i]) / h + ((1 - 3 * a * a) * bend[i] + (3 * b * b - 1) * bend[i + 1]) * h / 6;
    }

    double end() {
        return x[x.length - 1];
    }
}
