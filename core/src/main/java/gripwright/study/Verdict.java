package gripwright.study;

import gripwright.model.Need;

/** Whether a share found by counting meets the wanted one, given its interval. */
public enum Verdict {
    /** The whole interval is at the wanted share or above. */
    REACHES("reached"),
    /** The wanted share lies inside the interval: more runs are needed to tell. */
    MAY_REACH("not settled"),
    /** The whole interval is below the wanted share. */
    BELOW("not reached"),
    /** Nothing was counted. */
    UNKNOWN("unknown");

    private final String words;

    Verdict(String words) {
        this.words = words;
    }

    /** Completes "the wanted share is ...". */
    public String words() {
        return words;
    }

    /**
     * Judges a share by its interval.
     *
     * @param wanted share, as in {@link Need#wantedSuccess} [-]
     */
    public static Verdict of(Proportion found, double wanted) {
        return of(found.share(), found.low(), found.high(), wanted);
    }

    /**
     * Judges a weighted total by its interval.
     *
     * @param wanted share, as in {@link Need#wantedSuccess} [-]
     */
    public static Verdict of(TrialsResult.Weighted found, double wanted) {
        return of(found.share(), found.low(), found.high(), wanted);
    }

    private static Verdict of(double share, double low, double high, double wanted) {
        if (Double.isNaN(share)) {
            return UNKNOWN;
        }
        if (low >= wanted) {
            return REACHES;
        }
        return high < wanted ? BELOW : MAY_REACH;
    }
}
