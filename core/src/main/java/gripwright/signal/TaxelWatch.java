package gripwright.signal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Last values of the taxels, and which of them are stuck, saturated or silent. */
public final class TaxelWatch {
    /** A taxel that does not change for so long, and so many readings, is called stuck [s]. */
    public static final double STUCK_SECONDS = 5;

    /** A source, or a taxel, that gives no number for so long is called silent [s]. */
    public static final double SILENCE = 2;

    private static final int STUCK_READINGS = 50;

    private final List<Layout.Taxel> taxels;
    private final double[] last;
    private final double[] least;
    private final double[] greatest;
    private final double[] changedAt;
    private final double[] heardAt;
    private final double[] unchanged;
    private final int[] same;
    private final long[] values;
    private final long[] saturated;
    private final boolean[] saturatedNow;
    private double now;
    private boolean absolute;
    private boolean begun;

    public TaxelWatch(List<Layout.Taxel> taxels) {
        this.taxels = List.copyOf(taxels);
        int n = taxels.size();
        last = nan(n);
        least = nan(n);
        greatest = nan(n);
        changedAt = new double[n];
        heardAt = new double[n];
        unchanged = new double[n];
        same = new int[n];
        values = new long[n];
        saturated = new long[n];
        saturatedNow = new boolean[n];
    }

    private static double[] nan(int n) {
        double[] values = new double[n];
        Arrays.fill(values, Double.NaN);
        return values;
    }

    /**
     * Takes one reading.
     *
     * @param seconds when it arrived
     * @param fields values of all columns
     * @param places where among them each taxel stands
     */
    public void next(double seconds, double[] fields, int[] places) {
        now = seconds;
        if (!begun) {
            begun = true;
            Arrays.fill(heardAt, seconds);
            absolute = withinRange(fields, places);
        }
        for (int i = 0; i < last.length; i++) {
            double value = fields[places[i]];
            if (Double.isNaN(value)) {
                continue;
            }
            heardAt[i] = seconds;
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
            saturatedNow[i] = absolute && (value <= t.least() || value >= t.greatest());
            saturated[i] += saturatedNow[i] ? 1 : 0;
        }
    }

    /** Ranges are of absolute pressure: they say something only if the source sends that, not a difference. */
    private boolean withinRange(double[] fields, int[] places) {
        int within = 0;
        int known = 0;
        for (int i = 0; i < last.length; i++) {
            Layout.Taxel t = taxels.get(i);
            double value = fields[places[i]];
            if (!Double.isNaN(t.least()) && !Double.isNaN(value)) {
                known++;
                within += value > t.least() && value < t.greatest() ? 1 : 0;
            }
        }
        return known > 0 && 2 * within > known;
    }

    public int count() {
        return last.length;
    }

    public String column(int taxel) {
        return taxels.get(taxel).column();
    }

    public String pad(int taxel) {
        return taxels.get(taxel).pad();
    }

    public double last(int taxel) {
        return last[taxel];
    }

    public double least(int taxel) {
        return least[taxel];
    }

    public double greatest(int taxel) {
        return greatest[taxel];
    }

    public long values(int taxel) {
        return values[taxel];
    }

    public long saturated(int taxel) {
        return saturated[taxel];
    }

    public boolean saturatedNow(int taxel) {
        return saturatedNow[taxel];
    }

    public double unchanged(int taxel) {
        return unchanged[taxel];
    }

    /** For how long it has not changed, 0 if that is too short or too few readings to call it stuck [s]. */
    public double stuckFor(int taxel) {
        double seconds = now - changedAt[taxel];
        return same[taxel] >= STUCK_READINGS && seconds >= STUCK_SECONDS ? seconds : 0;
    }

    /** For how long it has given no number while others did, 0 if that is too short to call it silent [s]. */
    public double silentFor(int taxel) {
        double seconds = now - heardAt[taxel];
        return seconds > SILENCE ? seconds : 0;
    }

    /** What is wrong with the taxels, in words. */
    public List<String> warnings() {
        List<String> stuck = new ArrayList<>();
        List<String> saturatedOnes = new ArrayList<>();
        List<String> silent = new ArrayList<>();
        for (int i = 0; i < last.length; i++) {
            boolean mute = silentFor(i) > 0;
            if (mute) {
                silent.add(column(i));
            } else if (stuckFor(i) > 0) {
                stuck.add(column(i));
            }
            if (saturated[i] > 0) {
                saturatedOnes.add(column(i));
            }
        }
        return WatchWords.warnings(stuck, saturatedOnes, silent);
    }
}
