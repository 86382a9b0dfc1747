package gripwright.study;

import gripwright.check.Check;
import gripwright.stats.SampleSize;

/** What a set of trials is to tell, and so how many trials of each hand it takes. */
public sealed interface PlanGoal {
    /** Confidence of every test and interval of a plan [-]. */
    double CONFIDENCE = gripwright.stats.BinomialIntervals.CONFIDENCE;

    /**
     * Trials of each hand.
     *
     * @param expected success [-]
     */
    int trials(double expected);

    /** How that number was found, in a sentence. */
    String method();

    /**
     * Tells two hands apart that differ by so much.
     *
     * @param points difference of the shares held [-]
     * @param power chance to see it [-]
     * @param paired both hands meet the same places
     */
    record Difference(double points, double power, boolean paired) implements PlanGoal {
        public Difference {
            Check.that(points > 0 && points < 1, "the difference is " + points + "; it must lie between 0 and 100 %");
            Check.that(power > 0.5 && power < 1, "the power is " + power + "; it must lie between 50 and 100 %");
        }

        /** Share of the worse hand [-]. */
        double worse(double expected) {
            Check.that(
                    expected - points > 0,
                    "a difference of " + Phrases.percent(points) + " from an expected success of "
                            + Phrases.percent(expected)
                            + " leaves nothing; expect more or look for less");
            return expected - points;
        }

        @Override
        public int trials(double expected) {
            double worse = worse(expected);
            return paired
                    ? SampleSize.paired(expected * (1 - worse), worse * (1 - expected), CONFIDENCE, power)
                    : SampleSize.separate(expected, worse, CONFIDENCE, power);
        }

        @Override
        public String method() {
            return paired
                    ? "Number of pairs: smallest with which the exact McNemar test at 5 % sees the difference with the"
                            + " stated power (all tables added up; Connor's formula above "
                            + 2 * SampleSize.EXACT_UP_TO
                            + " pairs). Taken as if two trials at the same place had nothing else in common; what they"
                            + " have in common makes the test better than that."
                    : "Number of trials of each hand: smallest with which Fisher's exact test at 5 % sees the difference"
                            + " with the stated power (all tables added up; Fleiss' formula with continuity correction"
                            + " above " + SampleSize.EXACT_UP_TO + " trials).";
        }
    }

    /**
     * Narrows the 95 % interval of the share held.
     *
     * @param width from end to end [-]
     */
    record Width(double width) implements PlanGoal {
        public Width {
            Check.that(width > 0 && width < 1, "the width is " + width + "; it must lie between 0 and 100 %");
        }

        @Override
        public int trials(double expected) {
            return SampleSize.forWidth(expected, width);
        }

        @Override
        public String method() {
            return "Number of trials: smallest for which the 95 % Wilson interval of all trials together is no wider than"
                    + " wanted if the expected share is held.";
        }
    }
}
