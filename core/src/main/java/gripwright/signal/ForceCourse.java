package gripwright.signal;

import java.util.ArrayList;
import java.util.List;

/**
 * The course of a pad's force over a log of any length, thinned to what a picture can show: lowest and highest force over
 * equal numbers of rows, which double when there are too many.
 */
public final class ForceCourse {
    private static final int MOST = 1600;

    /**
     * Some rows together.
     *
     * @param time of the first of them [s]
     * @param low smallest total force [N]
     * @param high greatest [N]
     * @param centre mean of the centre of force over the rows that have one [m]; NaN if none has
     */
    public record Stretch(double time, double low, double high, double centre, int rows, int centred) {
        private Stretch with(Stretch next) {
            int both = centred + next.centred;
            double mean = centred == 0
                    ? next.centre
                    : next.centred == 0 ? centre : (centred * centre + next.centred * next.centre) / both;
            return new Stretch(time, Math.min(low, next.low), Math.max(high, next.high), mean, rows + next.rows, both);
        }
    }

    private final List<Stretch> stretches = new ArrayList<>();
    private int each = 1;

    /** The next row. */
    public void add(double time, double total, double centre) {
        boolean known = !Double.isNaN(centre);
        Stretch one = new Stretch(time, total, total, centre, 1, known ? 1 : 0);
        int last = stretches.size() - 1;
        if (last >= 0 && stretches.get(last).rows() < each) {
            stretches.set(last, stretches.get(last).with(one));
            return;
        }
        if (stretches.size() == MOST) {
            for (int k = 0; k < MOST / 2; k++) {
                stretches.set(k, stretches.get(2 * k).with(stretches.get(2 * k + 1)));
            }
            stretches.subList(MOST / 2, MOST).clear();
            each *= 2;
        }
        stretches.add(one);
    }

    public List<Stretch> stretches() {
        return List.copyOf(stretches);
    }
}
