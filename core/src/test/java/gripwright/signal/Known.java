package gripwright.signal;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * The true figures of an invented log, and how far a fit that knew the log's making would be off: the model's form, the
 * force without noise at the right time, and the law of the noise. Written apart from the calibration.
 */
final class Known {
    private static final int BIN = 200;
    private static final double Z = 1.959963984540054;

    final Map<FigureKind, Double> truth = new EnumMap<>(FigureKind.class);

    /** Width of the 95 % interval of the fit that knows. */
    final Map<FigureKind, Double> width = new EnumMap<>(FigureKind.class);

    private final InventedLog log;
    private final InventedLog.Truth t;
    private final double[] own;

    Known(InventedLog log, int taxel, double temperature0, double ambient0, Rates rates) {
        this.log = log;
        this.t = log.truths.get(taxel);
        this.own = log.own(taxel);
        double[] at = {
            t.zero(),
            t.gain(),
            t.bend(),
            t.creep() * t.gain(),
            t.perKelvin(),
            t.perPascal(),
            t.play(),
            Math.log(t.creepTime())
        };
        double[][] c = covariance(at);
        double rest = at[0]
                + at[1] * at[6]
                + at[2] * at[6] * at[6]
                + at[4] * (temperature0 - 25)
                + at[5] * (ambient0 - 101000);
        double[] restSlope = {
            1, at[6], at[6] * at[6], 0, temperature0 - 25, ambient0 - 101000, at[1] + 2 * at[2] * at[6], 0
        };
        put(FigureKind.OFFSET, rest, spread(restSlope, c));
        put(FigureKind.SENSITIVITY, at[1], Math.sqrt(c[1][1]));
        put(FigureKind.QUADRATIC, at[2], Math.sqrt(c[2][2]));
        put(FigureKind.TEMPERATURE, at[4], Math.sqrt(c[4][4]));
        put(FigureKind.AMBIENT, at[5], Math.sqrt(c[5][5]));
        put(
                FigureKind.CREEP,
                t.creep(),
                spread(new double[] {0, -t.creep() / t.gain(), 0, 1 / t.gain(), 0, 0, 0, 0}, c));
        put(FigureKind.CREEP_TIME, t.creepTime(), t.creepTime() * Math.sqrt(c[7][7]));
        for (int k = 0; k < 3; k++) {
            FigureKind kind = List.of(FigureKind.FULL_SCALE, FigureKind.NONLINEARITY, FigureKind.HYSTERESIS)
                    .get(k);
            double[] slope = new double[8];
            for (int p = 1; p < 8; p++) {
                double h = 1e-3 * Math.max(Math.abs(at[p]), 1e-3);
                double[] up = at.clone();
                double[] down = at.clone();
                up[p] += h;
                down[p] -= h;
                slope[p] = (shape(up)[k] - shape(down)[k]) / (2 * h);
            }
            put(kind, shape(at)[k], spread(slope, c));
        }
        double noise = Math.sqrt(t.noise() * t.noise() + log.plan.quantum() * log.plan.quantum() / 12);
        int n = (int) (116 * log.plan.shorter() * log.plan.rate());
        put(FigureKind.NOISE, noise, noise / Math.sqrt(2.0 * n));
        double relative = Math.hypot(Math.sqrt(c[1][1]) / at[1], 1 / Math.sqrt(2.0 * n));
        double z = 1.6448536269514722;
        double critical = z * noise * Math.sqrt(1 + 1.0 / rates.zeros()) / at[1];
        put(FigureKind.CRITICAL, critical, relative * critical);
        put(FigureKind.DETECTION, 2 * critical, relative * 2 * critical);
        drift(noise, n);
        repeatability(noise, shape(at)[0]);
        if (Double.isFinite(t.clip())) {
            double[] slope = new double[8];
            for (int p : new int[] {0, 1, 2}) {
                double h = 1e-3;
                double[] up = at.clone();
                double[] down = at.clone();
                up[p] += h;
                down[p] -= h;
                slope[p] = (reach(up) - reach(down)) / (2 * h);
            }
            // Zero at the reference temperature and ambient pressure, where the figure is stated.
            double above = temperature0 - 25;
            double press = ambient0 - 101000;
            double[] fixed = at.clone();
            fixed[0] += at[4] * above + at[5] * press;
            slope[4] = slope[0] * above;
            slope[5] = slope[0] * press;
            put(FigureKind.SATURATION, reach(fixed), spread(slope, c));
        }
    }

    private void put(FigureKind kind, double value, double deviation) {
        truth.put(kind, value);
        width.put(kind, 2 * Z * deviation);
    }

    private double reach(double[] at) {
        double low = 0;
        double high = 50;
        for (int i = 0; i < 60; i++) {
            double mid = 0.5 * (low + high);
            if (at[0] + at[1] * mid + at[2] * mid * mid < t.clip()) {
                low = mid;
            } else {
                high = mid;
            }
        }
        return low;
    }

    private static double spread(double[] slope, double[][] c) {
        double sum = 0;
        for (int i = 0; i < slope.length; i++) {
            for (int j = 0; j < slope.length; j++) {
                sum += slope[i] * c[i][j] * slope[j];
            }
        }
        return Math.sqrt(sum);
    }

    private double[] answer(double[] at) {
        return InventedLog.answer(own, at[1], at[2], Math.max(0, at[6]), at[3] / at[1], Math.exp(at[7]));
    }

    /** Rise, nonlinearity and hysteresis, the latter two as shares of the rise. */
    private double[] shape(double[] at) {
        double[] r = answer(at);
        double rise = 0;
        double[] up = new double[19];
        double[] down = new double[19];
        int count = log.cycles.size();
        for (int[] cycle : log.cycles) {
            int top = cycle[0];
            while (own[top] < log.plan.top() * 0.9999) {
                top++;
            }
            rise += (r[top + 250] - r[cycle[0] - 100]) / count;
            for (int k = 0; k < 19; k++) {
                double level = log.plan.top() * (k + 1) / 20.0;
                int i = cycle[0];
                while (own[i] < level) {
                    i++;
                }
                up[k] += r[i] / count;
                i = cycle[1];
                while (own[i] < level) {
                    i--;
                }
                down[k] += r[i] / count;
            }
        }
        double loop = 0;
        double[] mean = new double[19];
        for (int k = 0; k < 19; k++) {
            loop = Math.max(loop, Math.abs(down[k] - up[k]));
            mean[k] = 0.5 * (up[k] + down[k]);
        }
        // Least largest deviation from a line: convex in the slope.
        double a = 0;
        double b = 3 * rise;
        for (int i = 0; i < 200; i++) {
            double s1 = a + (b - a) / 3;
            double s2 = b - (b - a) / 3;
            if (half(mean, s1) < half(mean, s2)) {
                b = s2;
            } else {
                a = s1;
            }
        }
        return new double[] {rise, half(mean, a) / rise, loop / rise};
    }

    private static double half(double[] mean, double slope) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < mean.length; k++) {
            double v = mean[k] - slope * (k + 1) / 20;
            low = Math.min(low, v);
            high = Math.max(high, v);
        }
        return 0.5 * (high - low);
    }

    /** From the derivatives of the readings by the parameters, whitened for noise and walk. */
    private double[][] covariance(double[] at) {
        int rows = own.length / BIN;
        double[][] j = new double[8][];
        for (int p = 0; p < 8; p++) {
            double h = p == 6 ? 1e-4 : 1e-4 * Math.max(1, Math.abs(at[p]));
            double[] d = new double[rows];
            double[] up = at.clone();
            double[] down = at.clone();
            up[p] += h;
            down[p] -= h;
            double[] a = p == 0 || p == 4 || p == 5 ? own : answer(up);
            double[] b = p == 0 || p == 4 || p == 5 ? own : answer(down);
            for (int i = 0; i < rows * BIN; i++) {
                double v = switch (p) {
                    case 0 -> 1;
                    case 4 -> log.warmth[i] - 25;
                    case 5 -> log.air[i] - 101000;
                    default -> (a[i] - b[i]) / (2 * h);
                };
                d[i / BIN] += v / BIN;
            }
            j[p] = d;
        }
        double white =
                (t.noise() * t.noise() + log.plan.quantum() * log.plan.quantum() / 12) / (BIN * 1e-3 * log.plan.rate());
        double growth = t.walk() * t.walk() * BIN * 1e-3;
        double[][] information = new double[8][8];
        double[] level = new double[8];
        double variance = 0;
        double limit = Double.isFinite(t.clip()) ? 0.95 * reach(at) : Double.POSITIVE_INFINITY;
        for (int r = 0; r < rows; r++) {
            boolean used = own[r * BIN] < limit;
            double s = variance + white;
            for (int p = 0; p < 8 && used; p++) {
                for (int q = 0; q < 8; q++) {
                    information[p][q] += (j[p][r] - level[p]) * (j[q][r] - level[q]) / s;
                }
            }
            if (used) {
                for (int p = 0; p < 8; p++) {
                    level[p] += variance / s * (j[p][r] - level[p]);
                }
                variance *= white / s;
            }
            variance += growth;
        }
        return inverse(information);
    }

    private static double[][] inverse(double[][] m) {
        int n = m.length;
        double[] scale = new double[n];
        double[][] a = new double[n][2 * n];
        for (int i = 0; i < n; i++) {
            scale[i] = Math.sqrt(m[i][i]);
        }
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < n; k++) {
                a[i][k] = m[i][k] / (scale[i] * scale[k]);
            }
            a[i][n + i] = 1;
        }
        for (int c = 0; c < n; c++) {
            double pivot = a[c][c];
            for (int k = 0; k < 2 * n; k++) {
                a[c][k] /= pivot;
            }
            for (int i = 0; i < n; i++) {
                double f = a[i][c];
                for (int k = 0; k < 2 * n && i != c; k++) {
                    a[i][k] -= f * a[c][k];
                }
            }
        }
        double[][] out = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < n; k++) {
                out[i][k] = a[i][n + k] / (scale[i] * scale[k]);
            }
        }
        return out;
    }

    private static double normal(SplittableRandom random) {
        return Math.sqrt(-2 * Math.log(1 - random.nextDouble())) * Math.cos(2 * Math.PI * random.nextDouble());
    }

    /** Allan deviation at 1 s of noise and walk; its scatter by trying. */
    private void drift(double noise, int n) {
        int m = (int) Math.round(log.plan.rate());
        double q = t.walk() * t.walk() / m;
        // Variance of half the squared difference of two means of m: noise^2/m + q (2 m^2 + 1)/(6 m).
        double truth2 = noise * noise / m + q * (2.0 * m * m + 1) / (6.0 * m);
        SplittableRandom random = new SplittableRandom(5);
        double sum = 0;
        double squares = 0;
        int tries = 60;
        for (int k = 0; k < tries; k++) {
            double[] total = new double[n + 1];
            double walk = 0;
            for (int i = 0; i < n; i++) {
                walk += Math.sqrt(q) * normal(random);
                total[i + 1] = total[i] + walk + noise * normal(random);
            }
            double v = 0;
            for (int i = 0; i + 2 * m <= n; i++) {
                double d = total[i + 2 * m] - 2 * total[i + m] + total[i];
                v += d * d;
            }
            double a = Math.sqrt(v / (2.0 * m * m * (n - 2 * m + 1)));
            sum += a / tries;
            squares += a * a / tries;
        }
        put(FigureKind.DRIFT, Math.sqrt(truth2), Math.sqrt(squares - sum * sum));
    }

    /** Scatter of means within 5 % of full force on a ramp, zeroed by the second before; its own scatter by trying. */
    private void repeatability(double noise, double rise) {
        double rate = log.plan.rate();
        double ramp = 8 * log.plan.shorter();
        // The barometer that ambient pressure is taken off by has its noise too, and so has the load cell, smoothed
        // over
        // about a third of a second.
        double reading = Math.hypot(noise, 0.4 * t.perPascal());
        double cell = t.gain() * log.plan.forceNoise() / Math.sqrt(0.35 * rate);
        double window = Math.hypot(reading / Math.sqrt(0.05 * ramp * rate), cell);
        double zero = reading / Math.sqrt(rate);
        List<Double> delays = new ArrayList<>();
        for (int k = 1; k <= 19; k++) {
            delays.add(0.75 + ramp * k / 20);
        }
        for (int k = 19; k >= 1; k--) {
            delays.add(0.75 + ramp + 0.5 + ramp * (1 - k / 20.0));
        }
        double mean = 0;
        for (double d : delays) {
            mean += (window * window + zero * zero + t.walk() * t.walk() * d) / delays.size();
        }
        SplittableRandom random = new SplittableRandom(6);
        int cycles = log.cycles.size();
        int tries = 300;
        double sum = 0;
        double squares = 0;
        for (int k = 0; k < tries; k++) {
            double[][] seen = new double[delays.size()][cycles];
            for (int c = 0; c < cycles; c++) {
                double z = zero * normal(random);
                double walk = 0;
                double last = 0;
                for (int d = 0; d < delays.size(); d++) {
                    walk += t.walk() * Math.sqrt(delays.get(d) - last) * normal(random);
                    last = delays.get(d);
                    seen[d][c] = z + walk + window * normal(random);
                }
            }
            double pooled = 0;
            for (double[] s : seen) {
                double m = 0;
                for (double v : s) {
                    m += v / cycles;
                }
                for (double v : s) {
                    pooled += (v - m) * (v - m) / (cycles - 1) / delays.size();
                }
            }
            sum += Math.sqrt(pooled) / tries;
            squares += pooled / tries;
        }
        put(FigureKind.REPEATABILITY, Math.sqrt(mean) / rise, Math.sqrt(squares - sum * sum) / rise);
    }
}
