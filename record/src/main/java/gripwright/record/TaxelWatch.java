package gripwright.record;

import java.util.List;

/** Last values of the taxels, and which of them are stuck or saturated. */
final class TaxelWatch {
    /** A taxel that does not change for so long, and so many readings, is called stuck [s]. */
    static final double STUCK_SECONDS = 5;

    private static final int STUCK_READINGS = 50;

    private final List<Layout.Taxel> taxels;
    private final double[] last;
    private final double[] least;
    private final double[] greatest;
    private final double[] changedAt;
    private final double[] unchanged;
    private final int[] same;
    private final long[] values;
    private final long[] saturated;
    private final boolean[] saturatedNow;
    private double now;
    private int absolute = -1;

    TaxelWatch(List<Layout.Taxel> taxels) {
        this.taxels = taxels;
        int n = taxels.size();
        last = nan(n);
        least = nan(n);
        greatest = nan(n);
        changedAt = new double[n];
        unchanged = new double[n];
        same = new int[n];
        values = new long[n];
        saturated = new long[n];
        saturatedNow = new boolean[n];
    }

    private static double[] nan(int n) {
        double[] values = new double[n];
        java.util.Arrays.fill(values, Double.NaN);
        return values;
    }

    /** Takes one reading; {@code fields} are the values of all columns. */
    void next(double seconds, double[] fields, Columns columns) {
        now = seconds;
        if (absolute < 0) {
            absolute = withinRange(fields, columns) ? 1 : 0;
        }
        for (int i = 0; i < last.length; i++) {
            double value = fields[columns.taxel(i)];
            if (Double.isNaN(value)) {
                continue;
            }
            if (value == last[i]) {
                same[i]++;
                unchanged[i] = Math.max(unchanged[i], seconds - changedAt[i]);
            } else {
                same[i] = 0;
                changedAt[i] = seconds;
            }
            last[i] = value;
            least[i] = values[i] == 0 ? value : Math.min(least[i], value);
            greatest[i] = values[i] == 0 ? value : Math.max(greatest[i], value);
            values[i]++;
            Layout.Taxel t = taxels.get(i);
            saturatedNow[i] = absolute == 1 && (value <= t.least() || value >= t.greatest());
            saturated[i] += saturatedNow[i] ? 1 : 0;
        }
    }

    /** Ranges are of absolute pressure: they say something only if the source sends that, not a difference. */
    private boolean withinRange(double[] fields, Columns columns) {
        int within = 0;
        int known = 0;
        for (int i = 0; i < last.length; i++) {
            Layout.Taxel t = taxels.get(i);
            double value = fields[columns.taxel(i)];
            if (!Double.isNaN(t.least()) && !Double.isNaN(value)) {
                known++;
                within += value > t.least() && value < t.greatest() ? 1 : 0;
            }
        }
        return known > 0 && 2 * within > known;
    }

    int count() {
        return last.length;
    }

    String column(int taxel) {
        return taxels.get(taxel).column();
    }

    String pad(int taxel) {
        return taxels.get(taxel).pad();
    }

    double last(int taxel) {
        return last[taxel];
    }

    double least(int taxel) {
        return least[taxel];
    }

    double greatest(int taxel) {
        return greatest[taxel];
    }

    long values(int taxel) {
        return values[taxel];
    }

    long saturated(int taxel) {
        return saturated[taxel];
    }

    boolean saturatedNow(int taxel) {
        return saturatedNow[taxel];
    }

    double unchanged(int taxel) {
        return unchanged[taxel];
    }

    /** For how long it has not changed, 0 if that is too short or too few readings to call it stuck [s]. */
    double stuckFor(int taxel) {
        double seconds = now - changedAt[taxel];
        return same[taxel] >= STUCK_READINGS && seconds >= STUCK_SECONDS ? seconds : 0;
    }
}
