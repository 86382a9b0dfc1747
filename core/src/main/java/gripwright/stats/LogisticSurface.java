package gripwright.stats;

import gripwright.check.Check;

/**
 * A smooth chance of yes or no over several inputs, from runs that answered yes or no.
 *
 * <p>Model: the logit is a Gaussian process; its covariance is a polynomial of second degree (so that far away the
 * answer follows the trend) plus a bump exp(-r^2 / 2) over scaled distance r; the surface is the most probable one
 * (Newton's method on the penalised likelihood), and a chance averages over what the runs leave open, logit / sqrt(1 +
 * pi v / 8). Of a few scales the one with the greatest evidence (Laplace's approximation) is taken. Source: C. E.
 * Rasmussen and C. K. I. Williams, Gaussian Processes for Machine Learning (2006), algorithms 3.1 and 3.2; D. J. C.
 * MacKay, Neural Comput. 4 (1992) 720-736, for the average (both from memory). Own code: no library of the project fits
 * a classifier.
 */
public final class LogisticSurface {
    private static final double TREND = 4;
    private static final double[] BUMPS = {1, 10};
    private static final double[] SCALES = {0.6, 1, 1.7};
    private static final int MOST_STEPS = 40;

    private final double[][] inputs;
    private final double[] weights;
    private final double[][] factor;
    private final double[] rootCurvature;
    private final double bump;
    private final double scale;
    private final double evidence;

    private LogisticSurface(double[][] inputs, boolean[] yes, double bump, double scale) {
        this.inputs = inputs;
        this.bump = bump;
        this.scale = scale;
        int n = inputs.length;
        double[][] k = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                k[i][j] = covariance(inputs[i], inputs[j]);
                k[j][i] = k[i][j];
            }
        }
        double[] f = new double[n];
        double[] a = new double[n];
        double[] gradient = new double[n];
        rootCurvature = new double[n];
        double[][] l = new double[n][n];
        double best = Double.NEGATIVE_INFINITY;
        for (int step = 0; step < MOST_STEPS; step++) {
            double[] b = new double[n];
            for (int i = 0; i < n; i++) {
                double p = logistic(f[i]);
                double w = Math.max(1e-12, p * (1 - p));
                gradient[i] = (yes[i] ? 1 : 0) - p;
                rootCurvature[i] = Math.sqrt(w);
                b[i] = w * f[i] + gradient[i];
            }
            factor(k, l);
            double[] kb = times(k, b);
            double[] right = new double[n];
            for (int i = 0; i < n; i++) {
                right[i] = rootCurvature[i] * kb[i];
            }
            double[] solved = solve(l, right);
            double[] wanted = new double[n];
            for (int i = 0; i < n; i++) {
                wanted[i] = b[i] - rootCurvature[i] * solved[i];
            }
            double share = 1;
            double found = Double.NEGATIVE_INFINITY;
            while (share > 1e-4) {
                double[] tried = new double[n];
                for (int i = 0; i < n; i++) {
                    tried[i] = a[i] + share * (wanted[i] - a[i]);
                }
                double[] at = times(k, tried);
                found = objective(tried, at, yes);
                if (found >= best) {
                    a = tried;
                    f = at;
                    break;
                }
                share /= 2;
            }
            if (found - best < 1e-6 * n) {
                break;
            }
            best = found;
        }
        for (int i = 0; i < n; i++) {
            double p = logistic(f[i]);
            rootCurvature[i] = Math.sqrt(Math.max(1e-12, p * (1 - p)));
        }
        factor(k, l);
        double log = 0;
        for (int i = 0; i < n; i++) {
            log += StrictMath.log(l[i][i]);
        }
        weights = a;
        factor = l;
        evidence = objective(a, f, yes) - log;
    }

    /**
     * Fits the surface to runs.
     *
     * @param inputs shape n x d, each scaled so that 1 is a change that matters
     * @param yes shape n
     */
    public static LogisticSurface fit(double[][] inputs, boolean[] yes) {
        Check.that(inputs.length >= 2, inputs.length + " runs; a surface needs at least 2");
        Check.count(yes.length, inputs.length, "answers", "one per run");
        LogisticSurface best = null;
        for (double bump : BUMPS) {
            for (double scale : SCALES) {
                LogisticSurface one = new LogisticSurface(inputs, yes, bump, scale);
                best = best == null || one.evidence > best.evidence ? one : best;
            }
        }
        return java.util.Objects.requireNonNull(best);
    }

    /** The same scales fitted to other runs, to see how the surface does on runs it has not met. */
    public LogisticSurface refit(double[][] otherInputs, boolean[] otherYes) {
        return new LogisticSurface(otherInputs, otherYes, bump, scale);
    }

    /** Logit of the most probable surface. */
    public double logit(double... at) {
        double sum = 0;
        for (int i = 0; i < inputs.length; i++) {
            sum += weights[i] * covariance(inputs[i], at);
        }
        return sum;
    }

    /** Chance of yes of the most probable surface [-]. */
    public double chance(double... at) {
        return logistic(logit(at));
    }

    /** Chance of yes, averaged over what the runs leave open: nearer to a half than {@link #chance} [-]. */
    public double carefulChance(double... at) {
        int n = inputs.length;
        double[] k = new double[n];
        double mean = 0;
        for (int i = 0; i < n; i++) {
            k[i] = covariance(inputs[i], at);
            mean += weights[i] * k[i];
        }
        double variance = covariance(at, at);
        for (int i = 0; i < n; i++) {
            double[] row = factor[i];
            double sum = rootCurvature[i] * k[i];
            for (int j = 0; j < i; j++) {
                sum -= row[j] * k[j];
            }
            k[i] = sum / row[i];
            variance -= k[i] * k[i];
        }
        return logistic(mean / Math.sqrt(1 + Math.PI * Math.max(0, variance) / 8));
    }

    /**
     * Chances at places times values of the last input; as {@link #chance} at each, but much faster.
     *
     * @param places shape m x d, the last entry of each is not used
     * @param last values of the last input, shape q
     * @return shape m x q [-]
     */
    public double[][] chances(double[][] places, double[] last) {
        int n = inputs.length;
        int d = inputs[0].length;
        double[][] bumpOfLast = new double[last.length][n];
        for (int q = 0; q < last.length; q++) {
            for (int i = 0; i < n; i++) {
                double r = inputs[i][d - 1] - last[q];
                bumpOfLast[q][i] = StrictMath.exp(-r * r / (2 * scale * scale));
            }
        }
        double[][] chances = new double[places.length][last.length];
        double[] dot = new double[n];
        double[] near = new double[n];
        for (int p = 0; p < places.length; p++) {
            for (int i = 0; i < n; i++) {
                double sum = 1;
                double r2 = 0;
                for (int c = 0; c < d - 1; c++) {
                    double off = inputs[i][c] - places[p][c];
                    sum += inputs[i][c] * places[p][c];
                    r2 += off * off;
                }
                dot[i] = sum;
                near[i] = bump * StrictMath.exp(-r2 / (2 * scale * scale));
            }
            for (int q = 0; q < last.length; q++) {
                double f = 0;
                for (int i = 0; i < n; i++) {
                    double whole = dot[i] + inputs[i][d - 1] * last[q];
                    f += weights[i] * (TREND / (1 + d) * whole * whole + near[i] * bumpOfLast[q][i]);
                }
                chances[p][q] = logistic(f);
            }
        }
        return chances;
    }

    private double covariance(double[] a, double[] b) {
        double dot = 1;
        double r2 = 0;
        for (int i = 0; i < a.length; i++) {
            dot += a[i] * b[i];
            r2 += (a[i] - b[i]) * (a[i] - b[i]);
        }
        return TREND / (1 + a.length) * dot * dot + bump * StrictMath.exp(-r2 / (2 * scale * scale));
    }

    private static double objective(double[] a, double[] f, boolean[] yes) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum -= 0.5 * a[i] * f[i] + StrictMath.log1p(StrictMath.exp(yes[i] ? -f[i] : f[i]));
        }
        return sum;
    }

    /** Lower Cholesky factor of 1 + W^1/2 K W^1/2. */
    private void factor(double[][] k, double[][] l) {
        for (int i = 0; i < l.length; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = rootCurvature[i] * rootCurvature[j] * k[i][j] + (i == j ? 1 : 0);
                double[] li = l[i];
                double[] lj = l[j];
                for (int m = 0; m < j; m++) {
                    sum -= li[m] * lj[m];
                }
                l[i][j] = i == j ? Math.sqrt(sum) : sum / lj[j];
            }
        }
    }

    /** W^1/2-scaled system: solves L L^T x = right, and scales by nothing. */
    private static double[] solve(double[][] l, double[] right) {
        int n = right.length;
        double[] x = right.clone();
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                x[i] -= l[i][j] * x[j];
            }
            x[i] /= l[i][i];
        }
        for (int i = n - 1; i >= 0; i--) {
            for (int j = i + 1; j < n; j++) {
                x[i] -= l[j][i] * x[j];
            }
            x[i] /= l[i][i];
        }
        return x;
    }

    private static double[] times(double[][] k, double[] v) {
        double[] out = new double[v.length];
        for (int i = 0; i < v.length; i++) {
            double[] row = k[i];
            double sum = 0;
            for (int j = 0; j < v.length; j++) {
                sum += row[j] * v[j];
            }
            out[i] = sum;
        }
        return out;
    }

    private static double logistic(double f) {
        return 1 / (1 + StrictMath.exp(-f));
    }
}
