package gripwright.signal;

/**
 * Watches the centre of force on one pad for a slip: it moves while the total force stays. Looks back over three
 * stretches of time, so that a quick slip is seen at once and a slow one out of the noise.
 */
final class SlipWatch {
    /** How far back to compare with, and the means over how long [s]. */
    private static final double[][] LOOKS = {{0.1, 0.02}, {0.3, 0.1}, {1, 0.2}};

    private static final double PITCHES = 0.2;
    private static final double CLEAR = 5;

    /** A taxel that turns comes through its play from one end to the other. */
    private static final double BANDS = 2;

    private static final double RISE = 0.1;
    private static final double FALL = 0.2;
    private static final double CALM = 0.2;
    private static final int KEPT = 4096;

    private final double pitch;
    private final double[] time = new double[KEPT];
    private final double[] moment = new double[KEPT];
    private final double[] total = new double[KEPT];
    private final long[] unclear = new long[KEPT];
    private final long[] from = new long[2 * LOOKS.length];
    private long rows;
    private double lastSeen = Double.NEGATIVE_INFINITY;

    /** @param pitch between taxels [m] */
    SlipWatch(double pitch) {
        this.pitch = pitch;
    }

    private static int at(long row) {
        return (int) (row % KEPT);
    }

    /**
     * The next row.
     *
     * @param centre of force [m]; NaN where the force is not clear of the noise
     * @param sum total force [N]
     * @param noise standard deviation of the centre by noise alone [m]
     * @param band how far the play of all taxels, each by half its width, moves the centre [m]
     * @return whether slip is suspected
     */
    boolean step(double now, double centre, double sum, double noise, double band) {
        boolean clear = !Double.isNaN(centre);
        int last = at(rows == 0 ? 0 : rows - 1);
        int here = at(rows);
        // Sums from the beginning: means over any stretch are differences of two of them.
        moment[here] = (rows == 0 ? 0 : moment[last]) + (clear ? centre * sum : 0);
        total[here] = (rows == 0 ? 0 : total[last]) + (clear ? sum : 0);
        unclear[here] = (rows == 0 ? 0 : unclear[last]) + (clear ? 0 : 1);
        time[here] = now;
        rows++;
        for (int look = 0; look < LOOKS.length; look++) {
            if (moves(look, now, noise, band)) {
                lastSeen = now;
            }
        }
        return now - lastSeen < CALM;
    }

    /** Row before the first one that is not older than {@code before}; keeps its place, as times rise. */
    private long since(int pointer, double before) {
        long row = Math.max(from[pointer], rows - KEPT);
        while (row < rows - 1 && time[at(row + 1)] <= before) {
            row++;
        }
        from[pointer] = row;
        return row;
    }

    private boolean moves(int look, double now, double noise, double band) {
        double back = LOOKS[look][0];
        double over = LOOKS[look][1];
        long end = rows - 1;
        long recent = Math.min(end - 1, since(2 * look, now - over * 0.999));
        long old = since(2 * look + 1, now - back * 0.999);
        long count = end - recent;
        long begin = old - count;
        if (begin < 0 || begin < rows - KEPT || old > recent || unclear[at(end)] != unclear[at(begin)]) {
            return false;
        }
        double nowTotal = (total[at(end)] - total[at(recent)]) / count;
        double oldTotal = (total[at(old)] - total[at(begin)]) / count;
        double moved = (moment[at(end)] - moment[at(recent)]) / (nowTotal * count)
                - (moment[at(old)] - moment[at(begin)]) / (oldTotal * count);
        return Math.abs(moved) > PITCHES * pitch
                && Math.abs(moved) > CLEAR * Math.sqrt(2.0 / count) * noise
                && Math.abs(moved) > BANDS * band
                && nowTotal <= (1 + RISE) * oldTotal
                && nowTotal >= (1 - FALL) * oldTotal;
    }
}
