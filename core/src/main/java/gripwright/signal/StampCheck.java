package gripwright.signal;

/** Whether the source's own time goes on from reading to reading. */
public final class StampCheck {
    private double last = Double.NaN;
    private long back;
    private long equal;

    /** Takes the time of the next reading, NaN if it has none [s]. */
    public void next(double seconds) {
        if (seconds < last) {
            back++;
        } else if (seconds == last) {
            equal++;
        }
        last = Double.isNaN(seconds) ? last : seconds;
    }

    /** Readings whose time is before that of the reading before. */
    public long back() {
        return back;
    }

    /** Readings whose time is that of the reading before. */
    public long equal() {
        return equal;
    }
}
