package gripwright.signal;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * Makes calibration logs of which everything is known. Shares no code with the calibration: force, play, creep, noise and
 * the figures' true values are written here a second time, on a grid of 1 ms.
 */
public final class InventedLog {
    private static final double FINE = 1e-3;

    /** A taxel as it is. */
    public record Truth(
            double zero,
            double gain,
            double bend,
            double perKelvin,
            double perPascal,
            double play,
            double creep,
            double creepTime,
            double noise,
            double walk,
            double clip,
            boolean dead) {
        static Truth sound() {
            return new Truth(6200, 95, -1.2, 8, 0.97, 0.03, 0.02, 12, 1.6, 0.05, Double.POSITIVE_INFINITY, false);
        }

        Truth gain(double g, double b) {
            return new Truth(zero, g, b, perKelvin, perPascal, play, creep, creepTime, noise, walk, clip, dead);
        }

        Truth air() {
            return new Truth(
                    zero, gain / 60, bend / 60, perKelvin / 4, 0.016, play, creep, creepTime, noise, walk, clip, dead);
        }

        Truth stuck() {
            return new Truth(zero, 0, 0, 0, 0, 0, 0, 1, 0, 0, clip, true);
        }

        Truth clipped(double at) {
            return new Truth(zero, gain, bend, perKelvin, perPascal, play, creep, creepTime, noise, walk, at, dead);
        }

        Truth play(double p) {
            return new Truth(zero, gain, bend, perKelvin, perPascal, p, creep, creepTime, noise, walk, clip, dead);
        }

        Truth creep(double share, double time) {
            return new Truth(zero, gain, bend, perKelvin, perPascal, play, share, time, noise, walk, clip, dead);
        }
    }

    /** How the bench was run. */
    public record Plan(
            double rate,
            double lag,
            double skew,
            double top,
            double spikes,
            double dropped,
            double forceNoise,
            double quantum,
            double warmUp,
            double jump,
            boolean taps,
            boolean hold,
            boolean visits,
            double neighbour,
            double shorter) {
        public static Plan usual() {
            return new Plan(100, 0.0372, 60e-6, 5, 0.002, 0.005, 0.002, 1, 6.5, 120, true, true, true, 0.08, 1);
        }

        Plan rate(double r) {
            return new Plan(
                    r,
                    lag,
                    skew,
                    top,
                    spikes,
                    dropped,
                    forceNoise,
                    quantum,
                    warmUp,
                    jump,
                    taps,
                    hold,
                    visits,
                    neighbour,
                    shorter);
        }

        Plan without(String what) {
            return new Plan(
                    rate,
                    lag,
                    skew,
                    top,
                    spikes,
                    dropped,
                    forceNoise,
                    quantum,
                    what.equals("warm-up") ? 1.5 : warmUp,
                    what.equals("jump") ? 0 : jump,
                    taps && !what.equals("taps"),
                    hold && !what.equals("hold"),
                    visits && !what.equals("visits"),
                    neighbour,
                    shorter);
        }
    }

    final Plan plan;
    final List<Truth> truths;

    /** On the fine grid: force of the load cell [N], number pressed, temperature [degC], ambient pressure [Pa]. */
    final double[] force;

    final int[] pressed;
    final double[] warmth;
    final double[] air;

    /** On the fine grid: first and last index of each counted cycle. */
    final List<int[]> cycles = new ArrayList<>();

    int[] firstTaps = {0, 0};
    int[] lastTaps = {0, 0};
    int[] practice = {0, 0};
    int[] visited = {0, 0};

    final SensorLog log;

    private final List<double[]> knots = new ArrayList<>();
    private double clock;
    private double level;
    private int at;

    private void to(double force, double time) {
        knots.add(new double[] {clock, level, clock + time, force, at});
        clock += time;
        level = force;
    }

    private int now() {
        return (int) Math.round(clock / FINE);
    }

    public InventedLog(Plan plan, List<Truth> truths, long seed) {
        this.plan = plan;
        this.truths = List.copyOf(truths);
        SplittableRandom random = new SplittableRandom(seed);
        schedule(random);
        int n = now();
        force = new double[n];
        pressed = new int[n];
        for (double[] k : knots) {
            int from = (int) Math.round(k[0] / FINE);
            int to = Math.min(n, (int) Math.round(k[2] / FINE));
            for (int i = from; i < to; i++) {
                double u = (i - from) / (double) Math.max(1, to - from);
                double soft = k[2] - k[0] < 1 ? 0.5 - 0.5 * Math.cos(Math.PI * u) : u;
                force[i] = k[1] + (k[3] - k[1]) * soft;
                pressed[i] = (int) k[4];
            }
        }
        warmth = new double[n];
        air = new double[n];
        double weather = 0;
        for (int i = 0; i < n; i++) {
            double t = i * FINE;
            warmth[i] = 24 + plan.warmUp() * (1 - Math.exp(-t / (100 * plan.shorter()))) + 0.1 * Math.sin(t / 37);
            weather += 0.005 * normal(random);
            double jar = t > 55 * plan.shorter() && t < 85 * plan.shorter() ? plan.jump() : 0;
            double soft = 1 / (1 + Math.exp(-(t - 55 * plan.shorter()) / 0.3))
                    - 1 / (1 + Math.exp(-(t - 85 * plan.shorter()) / 0.3));
            air[i] = 100900
                    + 15 * Math.sin(2 * Math.PI * t / 900)
                    + weather
                    + (jar > 0 || plan.jump() > 0 ? plan.jump() * soft : 0);
        }
        log = record(random);
    }

    /** A log of so many sound taxels that differ a little. */
    public static InventedLog alike(Plan plan, int count, long seed) {
        List<Truth> taxels = new ArrayList<>();
        for (int k = 0; k < count; k++) {
            taxels.add(Truth.sound().gain(90 + k % 11, -1.2));
        }
        return new InventedLog(plan, taxels, seed);
    }

    private void schedule(SplittableRandom random) {
        double s = plan.shorter();
        to(0, 1);
        firstTaps = taps(random);
        to(0, 120 * s);
        int before = now();
        for (int c = 0; c < 3; c++) {
            to(plan.top(), 2);
            to(0, 2);
        }
        practice = new int[] {before, now()};
        to(0, 30 * s);
        for (int c = 0; c < 6; c++) {
            int from = now();
            to(plan.top(), 8 * s);
            to(plan.top(), 0.5);
            to(0, 8 * s);
            cycles.add(new int[] {from, now()});
            to(0, 2.5);
        }
        to(0, 5);
        for (double f : new double[] {1, 2, 3, 4, 5, 4, 3, 2, 1, 0}) {
            to(f * plan.top() / 5, 0.6);
            to(f * plan.top() / 5, 4 * s);
        }
        to(0, 80 * Math.sqrt(s));
        if (plan.hold()) {
            to(0.8 * plan.top(), 0.3);
            to(0.8 * plan.top(), 60 * Math.sqrt(s));
            to(0, 0.3);
        }
        to(0, 40 * s);
        int start = now();
        if (plan.visits()) {
            for (int k = 1; k <= truths.size(); k++) {
                for (int again = 0; again < 2; again++) {
                    at = k;
                    to(0.6 * plan.top() / focus(), 1.5);
                    to(0.6 * plan.top() / focus(), 0.4);
                    to(0, 1.5);
                    at = 0;
                    to(0, 2);
                }
            }
        }
        visited = new int[] {start, now()};
        lastTaps = taps(random);
        to(0, 4);
    }

    private int[] taps(SplittableRandom random) {
        int from = now();
        for (int k = 0; k < 5 && plan.taps(); k++) {
            // By hand: no two taps are alike, nor do they keep step with the readings.
            double peak = plan.top() * (0.5 + 0.2 * random.nextDouble());
            to(peak, 0.04 + 0.03 * random.nextDouble());
            to(peak, 0.04 + 0.02 * random.nextDouble());
            to(0, 0.04 + 0.03 * random.nextDouble());
            to(0, 0.7 + 0.4 * random.nextDouble());
        }
        return new int[] {from, now()};
    }

    private static double normal(SplittableRandom random) {
        return Math.sqrt(-2 * Math.log(1 - random.nextDouble())) * Math.cos(2 * Math.PI * random.nextDouble());
    }

    /** A probe on one taxel presses it as hard as a plate would with so many times its force. */
    private int focus() {
        return truths.size();
    }

    /** Force of a plate that would press one taxel as hard. */
    double[] own(int taxel) {
        double[] own = new double[force.length];
        for (int i = 0; i < own.length; i++) {
            own[i] = pressed[i] == 0 ? force[i] : pressed[i] == taxel + 1 ? focus() * force[i] : 0;
        }
        return own;
    }

    /** What the taxel reads for its own force, with nothing else, from rest after a load; other parameters may be tried. */
    static double[] answer(double[] own, double gain, double bend, double play, double creep, double creepTime) {
        double[] out = new double[own.length];
        double pin = play;
        double slow = 0;
        double keep = Math.exp(-FINE / creepTime);
        for (int i = 0; i < own.length; i++) {
            if (own[i] - play > pin) {
                pin = own[i] - play;
            }
            if (own[i] + play < pin) {
                pin = own[i] + play;
            }
            slow = keep * slow + (1 - keep) * own[i];
            out[i] = gain * pin + bend * pin * pin + creep * gain * slow;
        }
        return out;
    }

    double[] answer(int taxel) {
        Truth t = truths.get(taxel);
        double[] out = answer(own(taxel), t.gain, t.bend, t.play, t.creep, t.creepTime);
        for (int i = 0; i < out.length; i++) {
            int by = Math.abs(pressed[i] - 1 - taxel);
            if (pressed[i] > 0 && by == 1) {
                out[i] += plan.neighbour() * t.gain * focus() * force[i];
            }
        }
        return out;
    }

    private SensorLog record(SplittableRandom random) {
        int every = (int) Math.round(1 / (plan.rate() * FINE));
        int most = force.length / every;
        int burst = (int) (0.45 * most);
        int[] fine = new int[most];
        int n = 0;
        for (int i = 0; i < most; i++) {
            boolean lost = random.nextDouble() < plan.dropped() || plan.dropped() > 0 && i >= burst && i < burst + 30;
            if (!lost) {
                fine[n++] = i * every;
            }
        }
        double[] time = new double[n];
        double[] cell = new double[n];
        double[] ambient = new double[n];
        double[] number = new double[n];
        double[] temperature = new double[n];
        for (int i = 0; i < n; i++) {
            time[i] = fine[i] * FINE;
            double shown = time[i] / (1 + plan.skew()) - plan.lag();
            double x = Math.max(0, Math.min(force.length - 1.001, shown / FINE));
            int k = (int) x;
            cell[i] = force[k] + (x - k) * (force[k + 1] - force[k]) + plan.forceNoise() * normal(random);
            ambient[i] = air[fine[i]] + 0.4 * normal(random);
            number[i] = pressed[k];
            temperature[i] = Math.round((warmth[fine[i]] + 0.01 * normal(random)) / 0.02) * 0.02;
        }
        List<SensorLog.Channel> channels = new ArrayList<>();
        for (int c = 0; c < truths.size(); c++) {
            Truth t = truths.get(c);
            double[] answer = answer(c);
            double[] readings = new double[n];
            double walk = 0;
            double q = plan.quantum();
            for (int i = 0; i < n; i++) {
                walk += t.walk * normal(random) * Math.sqrt(1 / plan.rate());
                double v = t.zero
                        + answer[fine[i]]
                        + t.perKelvin * (warmth[fine[i]] - 25)
                        + t.perPascal * (air[fine[i]] - 101000)
                        + walk
                        + t.noise * normal(random);
                v = Math.min(q > 0 ? Math.round(v / q) * q : v, t.clip);
                if (!t.dead && random.nextDouble() < plan.spikes()) {
                    v += (random.nextBoolean() ? 1 : -1) * (50 + 3000 * random.nextDouble());
                }
                readings[i] = t.dead ? t.zero : v;
            }
            channels.add(new SensorLog.Channel("p0" + c, "strip", c + 1, readings, temperature));
        }
        return new SensorLog("Pa", time, cell, ambient, number, channels);
    }

    /** The log as text, as `record` writes it. */
    public void write(Appendable out, String head) {
        try {
            out.append(head).append("arrival,wall,seq,t");
            for (SensorLog.Channel c : log.channels()) {
                out.append(',').append(c.column());
            }
            out.append(",temp,F,ambient,pressed\n");
            for (int i = 0; i < log.time().length; i++) {
                double t = log.time()[i];
                out.append(String.format(
                        Locale.ROOT,
                        "%.4f,%d,%d,%.3f",
                        t + 0.002,
                        1795600000000L + Math.round(t * 1e3),
                        Math.round(t * plan.rate()),
                        t));
                for (SensorLog.Channel c : log.channels()) {
                    out.append(',').append(plain(c.readings()[i]));
                }
                out.append(String.format(
                        Locale.ROOT,
                        ",%.2f,%.4f,%.1f,%d\n",
                        log.channels().get(0).temperature()[i],
                        log.force()[i],
                        log.ambient()[i],
                        (int) log.pressed()[i]));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String plain(double v) {
        return v == Math.rint(v) ? String.valueOf((long) v) : String.format(Locale.ROOT, "%.2f", v);
    }
}
