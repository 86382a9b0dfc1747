package gripwright.stats;

import gripwright.check.Check;
import java.util.List;
import java.util.Objects;
import java.util.function.IntToDoubleFunction;

/**
 * A smooth chance of yes or no over several inputs, from runs that answered yes or no, and how well it is known.
 *
 * <p>Model: the logit is a sum of all products of degree 2 or less (the trend) and of bumps exp(-r^2 / 2 s^2) about some
 * of the runs, with normal priors on their weights; the surface is the most probable one (Newton's method), what is left
 * open is the normal law with the curvature there (Laplace's approximation). Of a few widths and heights of the bumps
 * those with the greatest evidence are taken. Source: D. J. C. MacKay, "The evidence framework applied to classification
 * networks", Neural Comput. 4 (1992) 720-736 (from memory). Own code: no library of the project fits a classifier.
 */
public final class LogisticSurface {
    private static final int MOST_BUMPS = 40;
    private static final double TREND = 2;
    private static final double[] HEIGHTS = {0.3, 1, 3};
    private static final double[] WIDTHS = {0.7, 1.2, 2};
    private static final int MOST_STEPS = 50;

    private final double[][] centres;
    private final double height;
    private final double width;
    private final double[] weights;
    private final double[][] factor;
    private final double evidence;

    private LogisticSurface(double[][] centres, double height, double width, double[][] inputs, boolean[] yes) {
        this.centres = centres;
        this.height = height;
        this.width = width;
        double[][] phi = new double[inputs.length][];
        for (int i = 0; i < phi.length; i++) {
            phi[i] = features(inputs[i]);
        }
        int d = phi[0].length;
        double[] w = new double[d];
        double[][] l = new double[d][d];
        double best = objective(phi, yes, w);
        for (int step = 0; step < MOST_STEPS; step++) {
            double[] down = solve(l, gradient(phi, yes, w, l));
            double share = 1;
            double found = best;
            while (share > 1e-5) {
                double[] tried = new double[d];
                for (int i = 0; i < d; i++) {
                    tried[i] = w[i] + share * down[i];
                }
                found = objective(phi, yes, tried);
                if (found >= best) {
                    w = tried;
                    break;
                }
                share /= 2;
            }
            if (!(found - best > 1e-8)) {
                break;
            }
            best = found;
        }
        gradient(phi, yes, w, l);
        double log = 0;
        for (int i = 0; i < d; i++) {
            log += StrictMath.log(l[i][i]);
        }
        weights = w;
        factor = l;
        evidence = best - log;
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
        int n = Math.min(MOST_BUMPS, inputs.length);
        double[][] centres = new double[n][];
        for (int i = 0; i < n; i++) {
            centres[i] = inputs[(int) ((long) i * inputs.length / n)].clone();
        }
        LogisticSurface best = null;
        for (double height : HEIGHTS) {
            for (double width : WIDTHS) {
                LogisticSurface one = new LogisticSurface(centres, height, width, inputs, yes);
                best = best == null || one.evidence > best.evidence ? one : best;
            }
        }
        return Objects.requireNonNull(best);
    }

    /** The same bumps fitted to other runs, to see how the surface does on runs it has not met. */
    public LogisticSurface refit(double[][] otherInputs, boolean[] otherYes) {
        return new LogisticSurface(centres, height, width, otherInputs, otherYes);
    }

    /** Chance of yes of the most probable surface [-]. */
    public double chance(double... at) {
        return logistic(dot(weights, features(at)));
    }

    /**
     * Chances at places times values of the last input, for the most probable surface (first) and others that the runs
     * leave possible.
     *
     * @param places the last entry of each is not used
     * @param last values of the last input
     * @param others how many
     * @param scores standard normal score by number; the same scores give the same surfaces
     * @return by surface, place, value of the last input [-]
     */
    public double[][][] chances(List<double[]> places, double[] last, int others, IntToDoubleFunction scores) {
        double[][] surfaces = new double[others + 1][];
        surfaces[0] = weights;
        for (int m = 1; m <= others; m++) {
            surfaces[m] = possible(m, scores);
        }
        double[][][] chances = new double[others + 1][places.size()][last.length];
        for (int p = 0; p < places.size(); p++) {
            double[] at = places.get(p).clone();
            for (int q = 0; q < last.length; q++) {
                at[at.length - 1] = last[q];
                double[] phi = features(at);
                for (int m = 0; m <= others; m++) {
                    chances[m][p][q] = logistic(dot(surfaces[m], phi));
                }
            }
        }
        return chances;
    }

    /** Weights drawn from what the runs leave open: most probable + L^-T z. */
    private double[] possible(int number, IntToDoubleFunction scores) {
        int d = weights.length;
        double[] x = new double[d];
        for (int i = d - 1; i >= 0; i--) {
            double sum = scores.applyAsDouble(number * d + i);
            for (int j = i + 1; j < d; j++) {
                sum -= factor[j][i] * x[j];
            }
            x[i] = sum / factor[i][i];
        }
        for (int i = 0; i < d; i++) {
            x[i] += weights[i];
        }
        return x;
    }

    /** Scaled so that every weight has a standard normal prior. */
    private double[] features(double[] u) {
        int d = u.length;
        double[] phi = new double[(d + 1) * (d + 2) / 2 + centres.length];
        int k = 0;
        phi[k++] = TREND;
        for (int i = 0; i < d; i++) {
            phi[k++] = TREND * u[i];
            for (int j = 0; j <= i; j++) {
                phi[k++] = (i == j ? TREND / 2 : TREND) * u[i] * u[j];
            }
        }
        for (double[] c : centres) {
            double r2 = 0;
            for (int i = 0; i < d; i++) {
                r2 += (u[i] - c[i]) * (u[i] - c[i]);
            }
            phi[k++] = height * StrictMath.exp(-r2 / (2 * width * width));
        }
        return phi;
    }

    private static double objective(double[][] phi, boolean[] yes, double[] w) {
        double sum = -0.5 * dot(w, w);
        for (int i = 0; i < phi.length; i++) {
            double f = dot(w, phi[i]);
            double against = yes[i] ? -f : f;
            sum -= against > 30 ? against : StrictMath.log1p(StrictMath.exp(against));
        }
        return sum;
    }

    /** Slope of the objective; the Cholesky factor of its curvature, downwards, goes to {@code l}. */
    private static double[] gradient(double[][] phi, boolean[] yes, double[] w, double[][] l) {
        int d = w.length;
        double[] slope = new double[d];
        double[][] curvature = new double[d][d];
        for (int i = 0; i < d; i++) {
            slope[i] = -w[i];
            curvature[i][i] = 1;
        }
        for (int n = 0; n < phi.length; n++) {
            double[] row = phi[n];
            double p = logistic(dot(w, row));
            double off = (yes[n] ? 1 : 0) - p;
            double weight = p * (1 - p);
            for (int i = 0; i < d; i++) {
                slope[i] += off * row[i];
                double c = weight * row[i];
                for (int j = 0; j <= i; j++) {
                    curvature[i][j] += c * row[j];
                }
            }
        }
        for (int i = 0; i < d; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = curvature[i][j];
                for (int m = 0; m < j; m++) {
                    sum -= l[i][m] * l[j][m];
                }
                l[i][j] = i == j ? Math.sqrt(sum) : sum / l[j][j];
            }
        }
        return slope;
    }

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

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    private static double logistic(double f) {
        return 1 / (1 + StrictMath.exp(-f));
    }
}
