package gripwright.closing;

import gripwright.closing.ChipReadings.Value;
import gripwright.math.Draws;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleSupplier;

/**
 * Samples the chips along a closing. Between two states the die pressures are taken to change evenly. The
 * noise is drawn round by round, all chips in turn, so a step that is taken again meets the same noise. Workspace of one
 * thread.
 */
final class ChipWatch {
    private static final int ROUNDS = 128;

    private final Sensing sensing;
    private final ChipBank bank;
    private final int chips;
    private final double[] noise;
    private final double[] resolution;
    private final double[] least;
    private final double[] greatest;
    private final double[] threshold;
    private final double[] zero;
    private final double[] alarm;
    private final int[] next;
    private int drawn;
    private double[] scores;
    private DoubleSupplier source = () -> 0;
    private final List<List<Value>> values = new ArrayList<>();
    private double[] before;
    private double[] after;
    /** Keep all readings, not only look for alarms. */
    private final boolean keep;

    double clock;

    ChipWatch(Sensing sensing, ChipBank bank, boolean keep) {
        this.sensing = sensing;
        this.bank = bank;
        this.keep = keep;
        chips = sensing.chips();
        noise = new double[chips];
        resolution = new double[chips];
        least = new double[chips];
        greatest = new double[chips];
        threshold = new double[chips];
        zero = new double[chips];
        alarm = new double[chips];
        next = new int[chips];
        scores = new double[chips * ROUNDS];
        before = new double[chips];
        after = new double[chips];
        int c = 0;
        for (Sensing.Strip strip : sensing.strips()) {
            for (int i = 0; i < strip.design().cells(); i++, c++) {
                noise[c] = strip.design().chip().noise();
                resolution[c] = strip.design().chip().resolution();
                least[c] = strip.design().chip().least();
                greatest[c] = strip.design().chip().greatest();
                threshold[c] = sensing.threshold(strip);
                values.add(new ArrayList<>());
            }
        }
    }

    /** The open hand, far from everything: takes the zeros. */
    void begin(Draws draws) {
        clock = 0;
        source = draws.normals("chips");
        drawn = 0;
        for (int c = 0; c < chips; c++) {
            zero[c] = Sensing.AMBIENT + noise[c] / Math.sqrt(sensing.zeros()) * source.getAsDouble();
            next[c] = 0;
            while (sensing.clock().sampled(c, next[c]) < 0) {
                next[c]++;
            }
            values.get(c).clear();
        }
        forgetAlarms();
    }

    void forgetAlarms() {
        Arrays.fill(alarm, Double.POSITIVE_INFINITY);
    }

    /** Takes the pressures as they are now: after motion that takes no time. */
    void refresh() {
        bank.committed(before);
    }

    /** Makes the state within the present step the end of a stretch of time to look at. */
    void lookAhead() {
        bank.present(after);
    }

    /** Arrival of a chip's first value over its threshold in the stretch looked at [s]; infinite if there is none. */
    double firstAlarm(int chip, double seconds) {
        if (alarm[chip] < Double.POSITIVE_INFINITY) {
            return alarm[chip];
        }
        for (int k = next[chip]; sensing.clock().sampled(chip, k) <= clock + seconds; k++) {
            if (reading(chip, k, seconds) - zero[chip] > threshold[chip]) {
                return arrival(chip, k);
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    /** Ends a stretch of time at the committed state. */
    void accept(double seconds) {
        bank.committed(after);
        for (int c = 0; c < chips; c++) {
            for (; sensing.clock().sampled(c, next[c]) <= clock + seconds; next[c]++) {
                int k = next[c];
                double reading = reading(c, k, seconds);
                if (reading - zero[c] > threshold[c]) {
                    alarm[c] = Math.min(alarm[c], arrival(c, k));
                }
                if (keep) {
                    values.get(c)
                            .add(new Value(
                                    sensing.clock().sampled(c, k),
                                    arrival(c, k),
                                    reading,
                                    rise(c, k, seconds),
                                    reading >= greatest[c] || reading <= least[c]));
                }
            }
        }
        clock += seconds;
        double[] swap = before;
        before = after;
        after = swap;
    }

    /** Arrival of the first alarm since they were forgotten [s]; infinite if there is none. */
    double alarm(int chip) {
        return alarm[chip];
    }

    private double arrival(int chip, int round) {
        return sensing.clock().sampled(chip, round) + sensing.clock().lag(chip);
    }

    private double rise(int chip, int round, double seconds) {
        double share = seconds > 0 ? (sensing.clock().sampled(chip, round) - clock) / seconds : 1;
        return before[chip] + Math.max(0, share) * (after[chip] - before[chip]);
    }

    private double reading(int chip, int round, double seconds) {
        double raw = Sensing.AMBIENT + rise(chip, round, seconds) + noise[chip] * score(chip, round);
        double step = resolution[chip];
        return Math.max(least[chip], Math.min(greatest[chip], step * Math.rint(raw / step)));
    }

    private double score(int chip, int round) {
        int at = round * chips + chip;
        if (at >= scores.length) {
            scores = Arrays.copyOf(scores, Math.max(at + 1, 2 * scores.length));
        }
        while (drawn <= at) {
            scores[drawn++] = source.getAsDouble();
        }
        return scores[at];
    }

    /** All chips with what they said; empty lists if readings are not kept. */
    List<ChipReadings.Chip> chips(List<String> bodies) {
        List<ChipReadings.Chip> out = new ArrayList<>();
        int c = 0;
        for (Sensing.Strip strip : sensing.strips()) {
            for (int i = 0; i < strip.design().cells(); i++, c++) {
                out.add(new ChipReadings.Chip(
                        strip.design().name(),
                        i,
                        bodies.get(bank.body(c)),
                        strip.along(i),
                        strip.across(i),
                        zero[c],
                        threshold[c],
                        greatest[c],
                        values.get(c)));
            }
        }
        return out;
    }
}
