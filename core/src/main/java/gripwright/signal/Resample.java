package gripwright.signal;

import java.util.Arrays;

/** Values of a series between its readings, and smoother series. */
final class Resample {
    /** A gap longer than this many usual steps is not bridged. */
    static final double GAP = 3.5;

    private Resample() {}

    /**
     * A smooth curve through readings (natural cubic spline), to be asked at other times. Readings that are missing are
     * left out.
     */
    static final class Curve {
        private final double[] time;
        private final double[] value;
        private final double[] bend;
        private final double step;

        /**
         * @param time rising [s], shape n
         * @param step the usual step [s]
         */
        Curve(double[] time, double[] value, double step) {
            int n = 0;
            double[] t = new double[time.length];
            double[] v = new double[time.length];
            for (int i = 0; i < time.length; i++) {
                if (!Double.isNaN(value[i])) {
                    t[n] = time[i];
                    v[n] = value[i];
                    n++;
                }
            }
            this.time = Arrays.copyOf(t, n);
            this.value = Arrays.copyOf(v, n);
            this.step = step;
            this.bend = bends(this.time, this.value);
        }

        /** Second derivatives, by elimination down the three diagonals. */
        private static double[] bends(double[] t, double[] v) {
            int n = t.length;
            double[] bend = new double[n];
            double[] carry = new double[n];
            for (int i = 1; i + 1 < n; i++) {
                double a = t[i] - t[i - 1];
                double b = t[i + 1] - t[i];
                double pivot = 2 * (a + b) - a * carry[i - 1];
                carry[i] = b / pivot;
                bend[i] = (6 * ((v[i + 1] - v[i]) / b - (v[i] - v[i - 1]) / a) - a * bend[i - 1]) / pivot;
            }
            for (int i = n - 2; i > 0; i--) {
                bend[i] -= carry[i] * bend[i + 1];
            }
            return bend;
        }

        /** Values at rising places; NaN outside and in gaps. */
        double[] at(double[] places) {
            double[] out = new double[places.length];
            int n = time.length;
            int i = 0;
            for (int k = 0; k < out.length; k++) {
                double x = places[k];
                if (n < 2 || x < time[0] || x > time[n - 1]) {
                    out[k] = Double.NaN;
                    continue;
                }
                while (i < n - 2 && time[i + 1] <= x) {
                    i++;
                }
                double h = time[i + 1] - time[i];
                double u = (x - time[i]) / h;
                double w = 1 - u;
                out[k] = h > GAP * step
                        ? Double.NaN
                        : w * value[i]
                                + u * value[i + 1]
                                + h * h / 6 * ((w * w * w - w) * bend[i] + (u * u * u - u) * bend[i + 1]);
            }
            return out;
        }
    }

    /**
     * Means under a bell of that standard deviation, as three running means in a row; NaN are bridged by what is near.
     *
     * @param width in readings
     */
    static double[] smooth(double[] value, double width) {
        // Three boxes of length L have a variance of 3 (L^2 - 1) / 12.
        int half = (int) Math.max(0, Math.round((Math.sqrt(4 * width * width + 1) - 1) / 2));
        double[] out = value;
        for (int pass = 0; pass < 3 && half > 0; pass++) {
            out = running(out, half);
        }
        return half == 0 ? value.clone() : out;
    }

    /**
     * Replaces stretches in which a series only shows noise by its mean over a longer while.
     *
     * @param value changed
     * @param half readings on each side
     * @param within greatest range that counts as standing still
     */
    static void calm(double[] value, int half, double within) {
        double[] mean = running(value, half);
        double[] before = value.clone();
        for (int i = 0; i < value.length; i++) {
            double low = before[i];
            double high = before[i];
            int to = Math.min(value.length - 1, i + half);
            for (int k = Math.max(0, i - half); k <= to && high - low <= within; k++) {
                low = Math.min(low, before[k]);
                high = Math.max(high, before[k]);
            }
            if (high - low <= within) {
                value[i] = mean[i];
            }
        }
    }

    /** Mean over a reading and {@code half} on each side, as far as there are any. */
    static double[] running(double[] value, int half) {
        int n = value.length;
        double[] out = new double[n];
        double sum = 0;
        int count = 0;
        int from = 0;
        int to = 0;
        for (int i = 0; i < n; i++) {
            for (; to < Math.min(n, i + half + 1); to++) {
                if (!Double.isNaN(value[to])) {
                    sum += value[to];
                    count++;
                }
            }
            for (; from < i - half; from++) {
                if (!Double.isNaN(value[from])) {
                    sum -= value[from];
                    count--;
                }
            }
            out[i] = count > 0 ? sum / count : Double.NaN;
        }
        return out;
    }

    /** Replaces NaN by a straight line between what stands around them; at the ends by the nearest; all NaN stay. */
    static void bridge(double[] value) {
        int last = -1;
        for (int i = 0; i < value.length; i++) {
            if (Double.isNaN(value[i])) {
                continue;
            }
            for (int k = last + 1; k < i; k++) {
                value[k] =
                        last < 0 ? value[i] : value[last] + (value[i] - value[last]) * (k - last) / (double) (i - last);
            }
            last = i;
        }
        for (int k = last + 1; k < value.length && last >= 0; k++) {
            value[k] = value[last];
        }
    }
}
