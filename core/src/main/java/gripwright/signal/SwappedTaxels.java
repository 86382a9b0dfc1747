package gripwright.signal;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Taxels whose columns are exchanged: each answers when the other is pressed. */
final class SwappedTaxels {
    private static final double CLEAR = 5;

    private SwappedTaxels() {}

    /**
     * Pairs that answer for one another, by number, both ways.
     *
     * @param all what the force does, whatever it presses
     * @param smoothed force per bin [N]
     */
    static Map<Integer, Integer> of(CleanLog log, ProbePresses presses, LoadCourse all, double[] smoothed) {
        CrossTalk.Slope[][] slopes = presses.slopes(List.of());
        double[] own = own(log, presses, all, smoothed);
        int k = own.length;
        int[] strongest = new int[k];
        Arrays.fill(strongest, -1);
        for (int j = 0; j < k; j++) {
            double most = 0;
            for (int c = 0; c < k && slopes[j] != null; c++) {
                double answer = slopes[j][c].value() / Math.max(own[c], Double.MIN_NORMAL);
                if (answer > most && slopes[j][c].value() > CLEAR * slopes[j][c].error()) {
                    most = answer;
                    strongest[j] = c;
                }
            }
        }
        Map<Integer, Integer> pairs = new LinkedHashMap<>();
        for (int j = 0; j < k; j++) {
            int other = strongest[j];
            if (other >= 0 && other != j && strongest[other] == j) {
                pairs.put(
                        log.channels().get(j).number(),
                        log.channels().get(other).number());
            }
        }
        return pairs;
    }

    /** What each taxel answers to the plate, to compare its answer to a probe with; 1 without a plate. */
    private static double[] own(CleanLog log, ProbePresses presses, LoadCourse all, double[] smoothed) {
        List<Span> plates = all.loads().stream().filter(l -> !presses.meets(l)).toList();
        double[] own = new double[log.channels().size()];
        for (int c = 0; c < own.length; c++) {
            if (plates.isEmpty()) {
                own[c] = 1;
                continue;
            }
            double slope = TapClock.slope(log.bins().mean(log.readings(c)), smoothed, plates);
            // A taxel that hardly answers the plate must not be scaled up to the strongest by its noise.
            own[c] = Math.max(Math.abs(slope), log.noise(c) / all.top());
        }
        return own;
    }
}
