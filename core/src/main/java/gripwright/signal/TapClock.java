package gripwright.signal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.TDistribution;

/** How late the load cell is written and how fast its clock runs, from sharp taps at both ends of a log. */
final class TapClock {
    /** What to record where taps are missing. */
    static final String TAPS = "press sharply, 0.1 s long, five times at the start and five times at the end";

    /** Ten taps. */
    private static final double STUDENT = TDistribution.of(5).inverseSurvivalProbability(0.025);

    private static final int MOST_LEADS = 4;

    private final CleanLog log;
    private final boolean plate;
    private final List<Span> groups = new ArrayList<>();

    private TapClock(CleanLog log, LoadCourse course, boolean plate) {
        this.log = log;
        this.plate = plate;
        course.tapsAtStart().ifPresent(groups::add);
        course.tapsAtEnd().ifPresent(groups::add);
    }

    /**
     * @param course of the force as it stands in the rows
     * @param plate whether a plate presses all taxels at once
     */
    static Lag lag(CleanLog log, LoadCourse course, boolean plate) {
        return new TapClock(log, course, plate).lag();
    }

    static Calibration.Told lagTold(Lag lag, boolean ownClock) {
        return Double.isNaN(lag.atStartError())
                ? Calibration.Told.refused("no sharp taps that the taxels follow; " + taken(ownClock) + ": " + TAPS)
                : Calibration.Told.of(lag.atStart(), STUDENT * lag.atStartError());
    }

    static Calibration.Told skewTold(Lag lag, boolean ownClock) {
        return Double.isNaN(lag.skewError())
                ? Calibration.Told.refused("no sharp taps at both ends of the log; " + taken(ownClock) + ": " + TAPS)
                : Calibration.Told.of(lag.skew(), STUDENT * lag.skewError());
    }

    private static String taken(boolean ownClock) {
        return ownClock ? "taken as the rows have it" : "taken as 0";
    }

    private double begin(Span group) {
        return log.bins().start() + group.from() * log.bins().step();
    }

    private double end(Span group) {
        return log.bins().start() + group.to() * log.bins().step();
    }

    private Lag lag() {
        if (groups.isEmpty()) {
            return Lag.NONE;
        }
        double[] time = log.log().time();
        double[] series = log.sum();
        List<Lag.Seen> seen = new ArrayList<>();
        for (Span g : groups) {
            double from = begin(g);
            double to = end(g);
            Lag.alike(time, series, log.step(), log.reference(), from, to)
                    .ifPresent(shift -> seen.add(new Lag.Seen(0.5 * (from + to), shift, log.step() / 10)));
        }
        Lag rough = Lag.through(seen, time[0]);
        return seen.isEmpty() ? rough : refined(rough);
    }

    /** A taxel that follows the taps, its weight among the others, and its model. */
    private record Lead(int channel, double weight, TaxelFit.Fitted fit) {}

    /** Takes the play of the best few taxels out of the shift. */
    private Lag refined(Lag rough) {
        double[] moved = log.aligned(rough);
        LoadCourse all = LoadCourse.of(log.smooth(moved), log.bins().step());
        FitRows rows = new FitRows(log, all, Surroundings.of(log, all));
        List<Lead> leads = followers(moved).stream()
                .parallel()
                .map(c -> lead(c, moved, rows))
                .flatMap(Optional::stream)
                .toList();
        if (leads.isEmpty()) {
            return rough;
        }
        double scale = 0;
        for (Lead lead : leads) {
            scale += lead.weight() * lead.fit().coefficients()[TaxelFit.SENSITIVITY];
        }
        double[] felt = new double[log.rows()];
        for (Lead lead : leads) {
            for (int i = 0; i < felt.length; i++) {
                felt[i] += lead.weight() * log.readings(lead.channel())[i] / scale;
            }
        }
        double total = scale;
        double[] time = log.log().time();
        List<Lag.Seen> seen = new ArrayList<>();
        for (Span g : groups) {
            Lag.refined(
                            time,
                            felt,
                            log.step(),
                            log.reference(),
                            f -> modelled(f, leads, total),
                            rough,
                            begin(g),
                            end(g))
                    .ifPresent(seen::add);
        }
        return seen.isEmpty() ? rough : Lag.through(seen, time[0]);
    }

    private static double[] modelled(double[] f, List<Lead> leads, double total) {
        double[] out = new double[f.length];
        for (Lead lead : leads) {
            double[] p = Play.of(f, lead.fit().play());
            double b1 = lead.fit().coefficients()[TaxelFit.SENSITIVITY];
            double b2 = lead.fit().coefficients()[TaxelFit.QUADRATIC];
            for (int i = 0; i < out.length; i++) {
                out[i] += lead.weight() * (b1 + b2 * p[i]) * p[i] / total;
            }
        }
        return out;
    }

    private Optional<Lead> lead(int c, double[] moved, FitRows rows) {
        try {
            int number = log.channels().get(c).number();
            LoadCourse course = LoadCourse.of(
                    log.smooth(log.on(moved, number, plate)), log.bins().step());
            Clip clip = Clip.find(log.readings(c), moved, course.top());
            TaxelFit.Fitted fit = TaxelFit.of(rows.of(c, clip, course, course.force()));
            double noise = log.noise(c);
            return Optional.of(new Lead(c, fit.coefficients()[TaxelFit.SENSITIVITY] / (noise * noise), fit));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** The few taxels that follow the taps most clearly. */
    private List<Integer> followers(double[] moved) {
        int k = log.channels().size();
        double[] likeness = new double[k];
        for (int c = 0; c < k; c++) {
            double noise = log.noise(c);
            double[] y = log.bins().mean(log.readings(c));
            double[] f = log.binned(moved);
            likeness[c] = noise > 0 ? slope(y, f, groups) / noise : 0;
        }
        return IntStream.range(0, k)
                .filter(c -> likeness[c] > 0)
                .boxed()
                .sorted((a, b) -> Double.compare(likeness[b], likeness[a]))
                .limit(MOST_LEADS)
                .toList();
    }

    /** Least-squares slope of a series against the force over some stretches of bins; 0 if the force stands still. */
    static double slope(double[] y, double[] f, List<Span> where) {
        double n = 0;
        double sy = 0;
        double sf = 0;
        double sfy = 0;
        double sff = 0;
        for (Span span : where) {
            for (int i = span.from(); i < span.to(); i++) {
                if (!Double.isNaN(y[i])) {
                    n++;
                    sy += y[i];
                    sf += f[i];
                    sfy += y[i] * f[i];
                    sff += f[i] * f[i];
                }
            }
        }
        double below = n * sff - sf * sf;
        return below > 0 ? (n * sfy - sf * sy) / below : 0;
    }
}
