package gripwright.study;

import gripwright.stats.BinomialIntervals;
import gripwright.stats.Holm;
import gripwright.stats.Interval;
import gripwright.stats.UnequalChances;
import gripwright.study.ExplainResult.Foretold;
import java.util.ArrayList;
import java.util.List;

/**
 * The law of the number held among trials of one object and grip, as foretold: friction is the same in all of them and
 * known as well as the project states it.
 */
final class Foretelling {
    private static final double NEGLIGIBLE = 1e-6;
    private static final double WORK = 3e7;

    private final String object;
    private final String grip;
    private final double[] weights;
    private final List<double[][]> chances = new ArrayList<>();
    private int held;

    /** @param spread standard deviation of the friction over its mean [-] */
    Foretelling(String object, String grip, double[] factors, double spread) {
        this.object = object;
        this.grip = grip;
        this.weights = weights(factors, spread);
    }

    private static double[] weights(double[] factors, double spread) {
        double[] weights = new double[factors.length];
        double step = factors[1] - factors[0];
        // An exact value still has the width of the grid.
        double deviation = Math.max(spread, step / 4);
        double sum = 0;
        for (int f = 0; f < factors.length; f++) {
            double z = (factors[f] - 1) / deviation;
            weights[f] = StrictMath.exp(-z * z / 2);
            sum += weights[f];
        }
        for (int f = 0; f < factors.length; f++) {
            weights[f] /= sum;
        }
        return weights;
    }

    /** @param chance by fitted surface and friction factor [-] */
    void add(double[][] chance, boolean isHeld, int count) {
        for (int i = 0; i < count; i++) {
            chances.add(chance);
        }
        held += isHeld ? count : 0;
    }

    private Foretold foretold() {
        int n = chances.size();
        double[] law = new double[n + 1];
        double mean = 0;
        int surfaces = chances.get(0).length;
        // Very long sheets are judged by fewer of the surfaces.
        int used = (int) Math.max(4, Math.min(surfaces, WORK / ((double) n * n * weights.length)));
        for (int m = 0; m < used; m++) {
            for (int f = 0; f < weights.length; f++) {
                if (weights[f] < NEGLIGIBLE) {
                    continue;
                }
                double[] at = new double[n];
                for (int i = 0; i < n; i++) {
                    at[i] = chances.get(i)[m][f];
                    mean += weights[f] * at[i] / n / used;
                }
                double[] one = UnequalChances.law(at);
                for (int k = 0; k <= n; k++) {
                    law[k] += weights[f] * one[k] / used;
                }
            }
        }
        double luck = UnequalChances.luck(law, held);
        Interval seen = BinomialIntervals.clopperPearson(held, n, BinomialIntervals.CONFIDENCE);
        return new Foretold(
                object,
                grip,
                mean,
                (double) quantile(law, (1 - BinomialIntervals.CONFIDENCE) / 2) / n,
                (double) quantile(law, (1 + BinomialIntervals.CONFIDENCE) / 2) / n,
                held,
                n,
                n < Scoring.SMALL ? seen : BinomialIntervals.wilson(held, n),
                luck,
                luck);
    }

    private static int quantile(double[] law, double share) {
        double sum = 0;
        for (int k = 0; k < law.length; k++) {
            sum += law[k];
            if (sum >= share) {
                return k;
            }
        }
        return law.length - 1;
    }

    /** All with their chances of luck corrected for their number. */
    static List<Foretold> finished(List<Foretelling> all) {
        List<Foretold> found = all.stream().map(Foretelling::foretold).toList();
        double[] corrected =
                Holm.corrected(found.stream().mapToDouble(Foretold::luck).toArray());
        List<Foretold> out = new ArrayList<>();
        for (int i = 0; i < corrected.length; i++) {
            Foretold f = found.get(i);
            out.add(new Foretold(
                    f.object(),
                    f.grip(),
                    f.share(),
                    f.low(),
                    f.high(),
                    f.held(),
                    f.decided(),
                    f.seen(),
                    f.luck(),
                    corrected[i]));
        }
        return out;
    }
}
