package gripwright.record;

import gripwright.files.Recording;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Counts and taxels over time in a bounded number of strips: when they are full, pairs of them are joined. */
final class Traces {
    private static final int STRIPS = 400; // even
    private static final double FIRST_WIDTH = 0.1;

    private final long[] readings = new long[STRIPS];
    private final long[] missing = new long[STRIPS];
    private final long[] malformed = new long[STRIPS];
    private float[][] low = new float[0][];
    private float[][] high = new float[0][];
    private double width = FIRST_WIDTH;
    private int used;

    void taxels(int count) {
        low = new float[count][STRIPS];
        high = new float[count][STRIPS];
        for (int i = 0; i < count; i++) {
            Arrays.fill(low[i], Float.NaN);
            Arrays.fill(high[i], Float.NaN);
        }
    }

    void reading(double seconds, long lacking) {
        int strip = strip(seconds);
        readings[strip]++;
        missing[strip] += Math.max(0, lacking);
    }

    void malformed(double seconds) {
        malformed[strip(seconds)]++;
    }

    /** After {@link #reading} at the same time. */
    void value(double seconds, int taxel, double value) {
        int strip = strip(seconds);
        float v = (float) value;
        if (!(low[taxel][strip] <= v)) {
            low[taxel][strip] = v;
        }
        if (!(high[taxel][strip] >= v)) {
            high[taxel][strip] = v;
        }
    }

    private int strip(double seconds) {
        while (seconds >= STRIPS * width) {
            join();
        }
        int strip = Math.max(0, (int) (seconds / width));
        used = Math.max(used, strip + 1);
        return Math.min(strip, STRIPS - 1);
    }

    private void join() {
        join(readings);
        join(missing);
        join(malformed);
        for (int t = 0; t < low.length; t++) {
            for (int i = 0; i < STRIPS; i++) {
                boolean there = i < STRIPS / 2;
                low[t][i] = there ? least(low[t][2 * i], low[t][2 * i + 1]) : Float.NaN;
                high[t][i] = there ? -least(-high[t][2 * i], -high[t][2 * i + 1]) : Float.NaN;
            }
        }
        used = (used + 1) / 2;
        width *= 2;
    }

    private static void join(long[] counts) {
        for (int i = 0; i < STRIPS; i++) {
            counts[i] = i < STRIPS / 2 ? counts[2 * i] + counts[2 * i + 1] : 0;
        }
    }

    private static float least(float a, float b) {
        return Float.isNaN(a) ? b : Float.isNaN(b) ? a : Math.min(a, b);
    }

    double width() {
        return width;
    }

    List<Recording.Strip> strips() {
        List<Recording.Strip> strips = new ArrayList<>();
        for (int i = 0; i < used; i++) {
            strips.add(new Recording.Strip(readings[i], missing[i], malformed[i]));
        }
        return strips;
    }

    List<Float> low(int taxel) {
        return list(low[taxel]);
    }

    List<Float> high(int taxel) {
        return list(high[taxel]);
    }

    private List<Float> list(float[] values) {
        List<Float> list = new ArrayList<>(used);
        for (int i = 0; i < used; i++) {
            list.add(values[i]);
        }
        return list;
    }
}
