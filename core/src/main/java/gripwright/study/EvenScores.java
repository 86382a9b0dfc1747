package gripwright.study;

import gripwright.model.Scatter;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.hipparchus.random.HaltonSequenceGenerator;

/**
 * Scores that cover the law of several inputs evenly, to average over them with few: points of a Halton sequence and their
 * mirror images, so that every mean is 0. Drawn by lot, as many points have a mean and a spread of their own, which all
 * trials of a sheet would share.
 */
final class EvenScores {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    private final double[] points;

    private EvenScores(double[] points) {
        this.points = points;
    }

    /**
     * @param count even number of points
     * @param inputs how many inputs each has a score for
     */
    static List<EvenScores> of(int count, int inputs) {
        HaltonSequenceGenerator halton = new HaltonSequenceGenerator(inputs);
        halton.skipTo(1); // point 0 is a corner
        List<EvenScores> all = new ArrayList<>();
        while (all.size() < count) {
            double[] point = halton.nextVector();
            double[] mirrored = new double[inputs];
            for (int i = 0; i < inputs; i++) {
                mirrored[i] = 1 - point[i];
            }
            all.add(new EvenScores(point));
            all.add(new EvenScores(mirrored));
        }
        return all;
    }

    /** Standard normal score of an input. */
    double normal(int input) {
        return NORMAL.inverseCumulativeProbability(points[input]);
    }

    /** Deviation of a scattered input, in its unit. */
    double scattered(Scatter scatter, int input, double times) {
        double score = scatter.law() == Scatter.Law.NORMAL ? normal(input) : 2 * points[input] - 1;
        return times * scatter.size() * score;
    }
}
