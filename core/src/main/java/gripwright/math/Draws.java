package gripwright.math;

import java.util.function.DoubleSupplier;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The random inputs of one sample, each found by its name; asking twice gives the same number.
 *
 * <p>Model: Philox 4x64 with ten rounds, key (seed, purpose), counter (1, subject, sample, input); names become words
 * by FNV-1a. Source of the generator: Salmon, Moraes, Dror and Shaw, "Parallel random numbers: as easy as 1, 2, 3",
 * SC11 (2011), as implemented in Apache Commons RNG.
 */
public final class Draws {
    private static final NormalDistribution STANDARD_NORMAL = NormalDistribution.of(0, 1);
    private static final long FNV_START = 0xcbf29ce484222325L;
    private static final long FNV_PRIME = 0x100000001b3L;

    private final long seed;
    private final long purpose;
    private final long subject;
    private final long sample;

    Draws(long seed, long purpose, long subject, long sample) {
        this.seed = seed;
        this.purpose = purpose;
        this.subject = subject;
        this.sample = sample;
    }

    /** Uniform between 0 and 1, both excluded [-]: the middle of one of 2^52 equal cells. */
    public double uniform(String input) {
        return ((bits(key(input)) >>> 12) + 0.5) * 0x1p-52;
    }

    /**
     * Standard normal [-], by the inverse of the distribution function, so that it rises with {@link #uniform} of the
     * same name: changing a law from uniform to normal keeps the order of the samples.
     */
    public double normal(String input) {
        return STANDARD_NORMAL.inverseCumulativeProbability(uniform(input));
    }

    /**
     * A long row of standard normal numbers for one input, in order; by the ziggurat method of Apache Commons RNG (C. D.
     * McFarland 2016), several times as fast as {@link #normal} and unrelated to it.
     */
    public DoubleSupplier normals(String input) {
        return ZigguratSampler.NormalizedGaussian.of(source(key(input)))::sample;
    }

    /** The 64 bits behind one input; the generator counts up before its first block, hence 0 here and 1 above. */
    long bits(long input) {
        return source(input).nextLong();
    }

    private UniformRandomProvider source(long input) {
        return RandomSource.PHILOX_4X64.create(new long[] {seed, purpose, 0, subject, sample, input});
    }

    /** FNV-1a, 64 bits, over UTF-16, low byte first. Source: IETF draft-eastlake-fnv (constants from memory). */
    static long key(String name) {
        long hash = FNV_START;
        for (int i = 0; i < name.length(); i++) {
            char unit = name.charAt(i);
            hash = (hash ^ (unit & 0xff)) * FNV_PRIME;
            hash = (hash ^ (unit >>> 8)) * FNV_PRIME;
        }
        return hash;
    }
}
