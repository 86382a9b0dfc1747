package gripwright.study;

import gripwright.stats.FisherExact;
import gripwright.study.TrialsResult.Split;
import gripwright.study.TrialsResult.Split.Side;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Looks for the parts of the sampled range where failures are more frequent than elsewhere. */
public final class Splits {
    /** The definition, for printing beside the sentences. */
    public static final String DEFINITION =
            "Where failures lie: of all one-sided and two-sided thresholds on one input, the one that separates failed"
                    + " from held runs with the smallest chance of being luck (Fisher's exact test). It is named only if"
                    + " that chance, times the number of thresholds looked at, is below 1 %. The threshold was found on"
                    + " the same runs as its counts, so the true contrast is somewhat weaker.";

    private static final int MOST_SPLITS = 2;
    private static final int FEWEST_RUNS = 4;
    private static final int CANDIDATES = 40;
    private static final double LUCK = 0.01;

    private Splits() {}

    /** Strongest first; each after the first is found among the runs that lie outside the ones before it. */
    static List<Split> of(List<Run> runs, List<SampledInput> varying) {
        List<Run> rest = runs.stream().filter(Run::decided).toList();
        List<Split> found = new ArrayList<>();
        while (found.size() < MOST_SPLITS) {
            Optional<Split> best = best(rest, varying);
            if (best.isEmpty()) {
                return found;
            }
            Split split = best.get();
            found.add(split);
            SampledInput input = SampledInput.of(split.input());
            rest = rest.stream()
                    .filter(run -> !beyond(run, input, split.side(), split.threshold()))
                    .toList();
        }
        return found;
    }

    private static Optional<Split> best(List<Run> runs, List<SampledInput> varying) {
        int failures = (int) runs.stream().filter(run -> !run.held()).count();
        Split best = null;
        double smallest = 1;
        int looks = 0;
        for (SampledInput input : varying) {
            for (Side side : Side.values()) {
                for (double threshold : thresholds(runs, input, side)) {
                    Split split = count(runs, input, side, threshold);
                    if (split.runs() < FEWEST_RUNS || split.runsElsewhere() == 0) {
                        continue;
                    }
                    looks++;
                    double luck = FisherExact.atLeast(split.failed(), split.runs(), failures, runs.size());
                    if (luck < smallest) {
                        smallest = luck;
                        best = split;
                    }
                }
            }
        }
        return smallest * looks < LUCK ? Optional.ofNullable(best) : Optional.empty();
    }

    static Split count(List<Run> runs, SampledInput input, Side side, double threshold) {
        int[] failed = new int[2];
        int[] all = new int[2];
        for (Run run : runs) {
            int part = beyond(run, input, side, threshold) ? 1 : 0;
            all[part]++;
            failed[part] += run.held() ? 0 : 1;
        }
        return new Split(input.words(), side, threshold, failed[1], all[1], failed[0], all[0]);
    }

    private static boolean beyond(Run run, SampledInput input, Side side, double threshold) {
        return along(run, input, side) > threshold;
    }

    private static double along(Run run, SampledInput input, Side side) {
        double deviation = input.deviation(run.conditions());
        return switch (side) {
            case ABOVE -> deviation;
            case BELOW -> -deviation;
            case EITHER -> Math.abs(deviation);
        };
    }

    // Numbers of two digits in the unit people read, so that the printed threshold is the one that was counted with.
    private static double[] thresholds(List<Run> runs, SampledInput input, Side side) {
        double[] sorted = runs.stream()
                .mapToDouble(run -> along(run, input, side))
                .filter(value -> value > 0)
                .sorted()
                .toArray();
        int every = Math.max(1, sorted.length / CANDIDATES);
        double[] thresholds = new double[sorted.length / every];
        for (int i = 0; i < thresholds.length; i++) {
            thresholds[i] = twoDigits(sorted[i * every] * input.perUnit()) / input.perUnit();
        }
        return Arrays.stream(thresholds).distinct().toArray();
    }

    private static double twoDigits(double value) {
        return new BigDecimal(value)
                .round(new MathContext(2, RoundingMode.HALF_EVEN))
                .doubleValue();
    }
}
