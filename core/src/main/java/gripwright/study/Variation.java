package gripwright.study;

import gripwright.check.Check;
import gripwright.closing.ClosingSimulator;
import gripwright.model.Project;
import java.util.List;

/**
 * How much the hand itself varies from copy to copy, where the project folder does not say: lognormal factors with
 * median 1, so that half of the hands are stiffer and none is negative.
 *
 * @param padStiffness coefficient of variation of the factor on pad stiffness [-]
 * @param springRate coefficient of variation of the factor on the rate of the joint springs [-]
 */
public record Variation(double padStiffness, double springRate) {
    /**
     * Rubber of a given hardness grade (plus or minus 5 Shore A) and ordinary wire springs. Source: common practice, no
     * source.
     */
    public static final Variation DEFAULT = new Variation(0.15, 0.05);

    public Variation {
        Check.notNegative(padStiffness, "variation of pad stiffness", "");
        Check.notNegative(springRate, "variation of spring rate", "");
    }

    /** What is assumed here, for the list of assumptions. */
    public List<Project.Assumption> assumptions() {
        return List.of(
                new Project.Assumption(
                        "trials: pad stiffness",
                        "one factor on the stiffness of all pads of a hand, lognormal, median 1, coefficient of variation "
                                + Phrases.percent(padStiffness) + " (common practice, no source)"),
                new Project.Assumption(
                        "trials: spring rate",
                        "one factor on the rate of all joint springs of a hand, lognormal, median 1, coefficient of"
                                + " variation " + Phrases.percent(springRate) + " (common practice, no source)"),
                new Project.Assumption(
                        "trials: friction and mass",
                        "normal about their means with the stated standard deviations; one score moves all pad"
                                + " coefficients of a run together; a sampled coefficient below "
                                + ClosingSimulator.LEAST_FRICTION + " is taken as "
                                + ClosingSimulator.LEAST_FRICTION + ", a sampled mass below "
                                + Phrases.percent(ClosingSimulator.LEAST_MASS) + " of its mean as that"));
    }

    /**
     * Factor [-] for a standard normal score.
     *
     * <p>Model: exp(s * score) with s^2 = ln(1 + c^2) for coefficient of variation c. Source: closed form.
     */
    static double factor(double coefficientOfVariation, double score) {
        return StrictMath.exp(Math.sqrt(StrictMath.log1p(coefficientOfVariation * coefficientOfVariation)) * score);
    }
}
