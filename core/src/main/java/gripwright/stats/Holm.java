package gripwright.stats;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Many questions asked of one set of trials: the chance that luck answers any of them wrongly stays below the stated one.
 *
 * <p>Source: S. Holm, "A simple sequentially rejective multiple test procedure", Scand. J. Stat. 6 (1979) 65-70.
 */
public final class Holm {
    private Holm() {}

    /** The chances corrected for their number, in the order given; never below the ones handed in, at most 1 [-]. */
    public static double[] corrected(double... chances) {
        Integer[] order = IntStream.range(0, chances.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> chances[i]))
                .toArray(Integer[]::new);
        double[] corrected = new double[chances.length];
        Arrays.fill(corrected, 1);
        double most = 0;
        for (int rank = 0; rank < order.length; rank++) {
            most = Math.max(most, Math.min(1, (chances.length - rank) * chances[order[rank]]));
            corrected[order[rank]] = most;
        }
        return corrected;
    }
}
