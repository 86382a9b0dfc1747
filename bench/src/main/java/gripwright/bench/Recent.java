package gripwright.bench;

import java.util.Arrays;

/** The last ten seconds of every column, as lowest and highest values of strips of time; its size is fixed. */
final class Recent {
    /** Of a strip [s]. */
    static final double WIDTH = 0.04;

    static final int STRIPS = 256;
    private static final int A_SECOND = 25;

    private final float[][] low;
    private final float[][] high;
    private final int[] readings = new int[STRIPS];
    private long first = -1;
    private long newest = -1;

    Recent(int columns) {
        low = new float[columns][STRIPS];
        high = new float[columns][STRIPS];
        for (int c = 0; c < columns; c++) {
            Arrays.fill(low[c], Float.NaN);
            Arrays.fill(high[c], Float.NaN);
        }
    }

    /** Takes one reading; one that is older than all that is kept is left out. */
    void next(double seconds, double[] values) {
        long strip = (long) Math.floor(seconds / WIDTH);
        if (newest < 0) {
            first = strip;
            newest = strip;
        }
        if (strip > newest) {
            for (long s = Math.max(newest + 1, strip - STRIPS + 1); s <= strip; s++) {
                clear((int) (s % STRIPS));
            }
            newest = strip;
        } else if (strip <= newest - STRIPS) {
            return;
        }
        int at = (int) (strip % STRIPS);
        readings[at]++;
        for (int c = 0; c < values.length; c++) {
            float v = (float) values[c];
            if (!(low[c][at] <= v)) {
                low[c][at] = v;
            }
            if (!(high[c][at] >= v)) {
                high[c][at] = v;
            }
        }
    }

    private void clear(int at) {
        readings[at] = 0;
        for (int c = 0; c < low.length; c++) {
            low[c][at] = Float.NaN;
            high[c][at] = Float.NaN;
        }
    }

    /** Readings in the last second before the newest, by the strips that are complete [1/s]. */
    double rate() {
        int strips = (int) Math.min(A_SECOND, newest - first);
        long sum = 0;
        for (int i = 1; i <= strips; i++) {
            sum += readings[(int) ((newest - i) % STRIPS)];
        }
        return strips == 0 ? 0 : sum / (strips * WIDTH);
    }

    /** Number of the newest strip; -1 before the first reading. A strip begins at its number times its width. */
    long newest() {
        return newest;
    }

    /** Number of the oldest strip that is kept. */
    long oldest() {
        return newest < 0 ? 0 : Math.max(first, newest - STRIPS + 1);
    }

    /** Lowest value of a strip that is kept, NaN if there is none. */
    float low(int column, long strip) {
        return low[column][(int) (strip % STRIPS)];
    }

    /** And the highest. */
    float high(int column, long strip) {
        return high[column][(int) (strip % STRIPS)];
    }
}
