package gripwright.study;

import gripwright.stats.Interval;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the closing model says to a score sheet: what it foretold, and which friction and scatter explain it best.
 *
 * @param hand label of the trials that were looked at
 * @param trials decided ones
 * @param leftOut trials left out, in words; empty if none
 * @param closings made for it
 * @param wanted closings that would have been made; more than made if stopped
 * @param foretold object by grip; empty if stopped
 * @param friction factor on the friction of all rubbers on each surface; empty if stopped
 * @param common one factor on all surfaces together
 *     (of the only one, if there is one)
 * @param scatter factor on the need's placement scatter; empty if every place was measured
 * @param factors grid of the friction factor [-]
 * @param scatters grid of the scatter factor [-]; one value, 1, if every place was measured
 * @param support log-likelihood over scatters x factors with one friction factor, greatest 0
 * @param surfaces how good the fitted surfaces are
 * @param placing the assumed error of a measured place
 */
public record ExplainResult(
        String hand,
        int trials,
        List<String> leftOut,
        int closings,
        int wanted,
        List<Foretold> foretold,
        List<Estimate> friction,
        Optional<Estimate> common,
        Optional<Estimate> scatter,
        double[] factors,
        double[] scatters,
        double[][] support,
        List<HeldSurface.Quality> surfaces,
        Placing placing) {
    /**
     * How well a measured place is known: standard deviations.
     *
     * @param shift in x and y [m]
     * @param turn [rad]
     */
    public record Placing(double shift, double turn) {
        /** Common practice, no source: a ruler and a drawn line. */
        public static final Placing DEFAULT = new Placing(0.002, Math.toRadians(2));
    }

    /**
     * A prediction beside what was seen.
     *
     * @param share predicted share held, over the stated spreads of friction, mass, pads and springs [-]
     * @param low and
     * @param high ends between which the count lies in at least 95 % of cases, as shares [-]
     * @param held and
     * @param decided trials
     * @param seen 95 % interval of the share seen [-]
     * @param luck chance of a count no likelier than the one seen, if the prediction is right [-]
     * @param corrected the same, corrected by Holm for the number of objects and grips
     */
    public record Foretold(
            String object,
            String grip,
            double share,
            double low,
            double high,
            int held,
            int decided,
            Interval seen,
            double luck,
            double corrected) {
        /** True if chance alone does not explain the difference. */
        public boolean off() {
            return corrected <= 1 - gripwright.stats.BinomialIntervals.CONFIDENCE;
        }
    }

    /**
     * A factor on an assumption.
     *
     * @param subject surface, "all surfaces" or "placement"
     * @param value most likely factor [-]
     * @param low and
     * @param high ends of the 95 % likelihood interval [-]
     * @param openLow if the interval reaches the low end of the grid: the true end may lie lower
     * @param openHigh likewise
     * @param trials that bear on it
     * @param luck chance of evidence this strong against the factor 1 if it is right: likelihood ratio against chi-square
     *     with one degree of freedom [-]
     * @param corrected the same, corrected by Holm for the number of factors
     */
    public record Estimate(
            String subject,
            double value,
            double low,
            double high,
            boolean openLow,
            boolean openHigh,
            int trials,
            double luck,
            double corrected) {
        /** True if the assumption is refuted. */
        public boolean off() {
            return corrected <= 1 - gripwright.stats.BinomialIntervals.CONFIDENCE;
        }

        /** Such as "friction on glass". */
        public String words() {
            return subject.equals("placement") ? "placement scatter" : "friction on " + subject;
        }

        /** True if the interval holds a factor, ends at the end of what was tried counted as open. */
        public boolean allows(double factor) {
            return (openLow || low <= factor) && (openHigh || factor <= high);
        }

        /** " or less", " or more" if the most likely factor is the end of what was tried; else empty. */
        public String beyond() {
            return openLow && value <= low ? " or less" : openHigh && value >= high ? " or more" : "";
        }

        /** True if the trials say nothing about it within the grid. */
        public boolean silent() {
            return openLow && openHigh;
        }

        Estimate corrected(double chance) {
            return new Estimate(subject, value, low, high, openLow, openHigh, trials, luck, chance);
        }
    }

    public ExplainResult {
        leftOut = List.copyOf(leftOut);
        foretold = List.copyOf(foretold);
        friction = List.copyOf(friction);
        surfaces = List.copyOf(surfaces);
    }

    /** All estimates in the order in which people read them: all surfaces if there are several, each, the scatter. */
    public List<Estimate> estimates() {
        List<Estimate> all = new ArrayList<>();
        if (friction.size() > 1) {
            common.ifPresent(all::add);
        }
        all.addAll(friction);
        scatter.ifPresent(all::add);
        return all;
    }

    /**
     * Estimates that refute an assumption and so ask for an edit: one friction factor for all surfaces if it is refuted and
     * explains every one of them, else those of the single surfaces that are refuted; and the scatter.
     */
    public List<Estimate> refuted() {
        List<Estimate> single = friction.stream().filter(Estimate::off).toList();
        boolean oneForAll =
                friction.size() > 1 && common.filter(this::explainsAll).isPresent();
        List<Estimate> all = new ArrayList<>(oneForAll ? List.of() : single);
        if (oneForAll || single.isEmpty()) {
            common.filter(Estimate::off).ifPresent(all::add);
        }
        scatter.filter(Estimate::off).ifPresent(all::add);
        return all;
    }

    private boolean explainsAll(Estimate one) {
        return one.off() && friction.stream().allMatch(e -> e.allows(one.value()));
    }

    /** True if the closings were stopped before their end, so that nothing can be said yet. */
    public boolean stopped() {
        return closings < wanted;
    }
}
