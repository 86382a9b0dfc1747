package gripwright.record;

/** When something came: silences, and steps of the machine's clock. */
final class Hearing {
    private static final double SECOND = 1e9;
    private static final double STEP_MILLIS = 500;

    private long last;
    private boolean silent;
    private int silences;
    private double longest;
    private int wallSteps;
    private double wallOffset = Double.NaN;

    /** @param start of the recording [ns] */
    Hearing(long start) {
        this.last = start;
    }

    /** Something came. */
    void heard(long nanos, long wallMillis) {
        if (silent) {
            longest = Math.max(longest, (nanos - last) / SECOND);
            silent = false;
        }
        last = nanos;
        double offset = wallMillis - nanos / 1e6;
        if (Math.abs(offset - wallOffset) > STEP_MILLIS) {
            wallSteps++;
        }
        wallOffset = offset;
    }

    /** Nothing came until now. */
    void still(long nanos) {
        double seconds = silentFor(nanos);
        if (seconds > Recorder.SILENCE) {
            silences += silent ? 0 : 1;
            silent = true;
            longest = Math.max(longest, seconds);
        }
    }

    /** Time since anything came [s]. */
    double silentFor(long nanos) {
        return (nanos - last) / SECOND;
    }

    int silences() {
        return silences;
    }

    /** Longest silence [s]. */
    double longest() {
        return longest;
    }

    int wallSteps() {
        return wallSteps;
    }
}
