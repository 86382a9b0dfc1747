package gripwright.record;

/** When a replayed reading is due. */
final class Pace {
    private double origin = Double.NaN;
    private long start;

    /**
     * Time left until a reading is due, 0 or less if it is [ns].
     *
     * @param stamp its time [s]; one without a time is due at once
     */
    long left(double stamp, long now) {
        if (Double.isNaN(stamp)) {
            return 0;
        }
        if (Double.isNaN(origin)) {
            origin = stamp;
            start = now;
        }
        return start + Math.round((stamp - origin) * 1e9) - now;
    }
}
