package gripwright.stats;

import gripwright.check.Check;
import org.apache.commons.statistics.distribution.HypergeometricDistribution;

/**
 * Fisher's exact test of two groups with two answers each, one-sided.
 *
 * <p>Source: R. A. Fisher, The Design of Experiments (1935), the tea-tasting example.
 */
public final class FisherExact {
    private FisherExact() {}

    /**
     * Chance [-] of at least {@code hits} among the {@code members} of a group, if membership had nothing to do with
     * being one of the {@code allHits} among {@code all}.
     */
    public static double atLeast(int hits, int members, int allHits, int all) {
        Check.that(
                0 <= hits && hits <= members && members <= all && hits <= allHits && allHits <= all,
                "a group with " + hits + " hits of " + members + " does not fit into " + allHits + " hits of " + all);
        if (all == 0) {
            return 1;
        }
        // survivalProbability is P(X > x).
        return HypergeometricDistribution.of(all, allHits, members).survivalProbability(hits - 1);
    }
}
