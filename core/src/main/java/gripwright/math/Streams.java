package gripwright.math;

import gripwright.check.Check;

/**
 * Random numbers that belong to what they are for, not to the order in which they are asked for.
 *
 * <p>Each number is a function of (seed, purpose, subject, sample, input) only. So it is the same on any number of
 * threads, and two designs or two grips tried with the same seed meet the very same misplacements and materials
 * (common random numbers): a difference between them is not the luck of the draw.
 *
 * @param seed chosen by the user, any value
 * @param purpose keeps sets apart that must not share numbers, such as "choosing" and "scoring"
 */
public record Streams(long seed, String purpose) {
    /**
     * All inputs of one sample.
     *
     * @param subject what is sampled, such as the name of an object
     * @param sample its number, 0 or more
     */
    public Draws draws(String subject, int sample) {
        Check.that(sample >= 0, "sample is " + sample + "; it must be 0 or more");
        return new Draws(seed, Draws.key(purpose), Draws.key(subject), sample);
    }
}
