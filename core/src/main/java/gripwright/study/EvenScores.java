package gripwright.study;

import gripwright.model.Scatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.hipparchus.random.HaltonSequenceGenerator;

/**
 * Scores that cover the laws of several inputs evenly, to average over them with few. Drawn by lot, as many points have a
 * mean and a spread of their own, which all trials of a sheet would share.
 *
 * <p>The order of the points is that of a Halton sequence and its mirror image; along each input they stand at the middles of
 * equal shares of the law, and normal scores are stretched to a standard deviation of exactly 1.
 */
final class EvenScores {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    private final double[] shares;
    private final double stretch;

    private EvenScores(double[] shares, double stretch) {
        this.shares = shares;
        this.stretch = stretch;
    }

    /**
     * @param count even number of points
     * @param inputs how many inputs each has a score for
     */
    static List<EvenScores> of(int count, int inputs) {
        HaltonSequenceGenerator halton = new HaltonSequenceGenerator(inputs);
        halton.skipTo(1); // point 0 is a corner
        double[][] points = new double[count][];
        for (int i = 0; i < count; i += 2) {
            points[i] = halton.nextVector();
            points[i + 1] = new double[inputs];
            for (int k = 0; k < inputs; k++) {
                points[i + 1][k] = 1 - points[i][k];
            }
        }
        double square = 0;
        for (int rank = 0; rank < count; rank++) {
            double score = NORMAL.inverseCumulativeProbability(middle(rank, count));
            square += score * score / count;
        }
        double[][] shares = new double[count][inputs];
        for (int k = 0; k < inputs; k++) {
            int input = k;
            int[] order = IntStream.range(0, count)
                    .boxed()
                    .sorted(Comparator.comparingDouble(i -> points[i][input]))
                    .mapToInt(i -> i)
                    .toArray();
            for (int rank = 0; rank < count; rank++) {
                shares[order[rank]][k] = middle(rank, count);
            }
        }
        List<EvenScores> all = new ArrayList<>();
        for (double[] share : shares) {
            all.add(new EvenScores(share, 1 / Math.sqrt(square)));
        }
        return all;
    }

    private static double middle(int rank, int count) {
        return (rank + 0.5) / count;
    }

    /** Standard normal score of an input. */
    double normal(int input) {
        return stretch * NORMAL.inverseCumulativeProbability(shares[input]);
    }

    /** Deviation of a scattered input, in its unit. */
    double scattered(Scatter scatter, int input, double times) {
        double score = scatter.law() == Scatter.Law.NORMAL ? normal(input) : 2 * shares[input] - 1;
        return times * scatter.size() * score;
    }
}
