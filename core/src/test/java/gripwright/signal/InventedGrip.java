package gripwright.signal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * A strip of eight taxels that takes hold of something, and then one thing happens: a slip or something that is none.
 * Invented; shares no code with the decoder. Force is spread under the rubber by a bell of 0.8 pitches.
 */
final class InventedGrip {
    static final double RATE = 100;
    static final double PITCH = 6e-3;
    private static final int TAXELS = 8;
    private static final double GAIN = 95;
    private static final double ZERO = 6200;
    private static final double PLAY = 0.02;
    private static final double SPIKES = 0.001;
    private static final double LENGTH = 8;

    /** What happens, from 4 s on. */
    enum Kind {
        CREEPING_SLIP(0.6e-3, 2),
        SLOW_SLIP(3e-3, 1.5),
        SLIP(10e-3, 0.6),
        FAST_SLIP(30e-3, 0.3),
        /** What is held slides along under the pad without the force's centre moving: only vibration. */
        SLIP_OF_A_LONG_OBJECT(0, 0.8),
        HOLD(0, 0),
        TOUCHES_AND_RELEASES(0, 0),
        WARMING(0, 0),
        TAP(0, 0),
        SLOW_SQUEEZE(0, 0);

        final double speed;
        final double lasts;

        Kind(double speed, double lasts) {
            this.speed = speed;
            this.lasts = lasts;
        }

        boolean isSlip() {
            return lasts > 0;
        }
    }

    static final double BEGINS = 4;

    final double noise;
    private final Kind kind;
    private final SplittableRandom random;
    private final List<double[]> rows = new ArrayList<>();

    InventedGrip(Kind kind, long seed) {
        this.kind = kind;
        this.random = new SplittableRandom(seed);
        this.noise = 0.01 + 0.02 * random.nextDouble();
        make();
    }

    private void make() {
        double load = 1 + 4 * random.nextDouble();
        double touch = 1.3 + 0.4 * random.nextDouble();
        double rise = 0.05 + 0.4 * random.nextDouble();
        double release = 7 + 0.5 * random.nextDouble();
        double fall = 0.05 + 0.3 * random.nextDouble();
        double centre = (random.nextDouble() - 0.5) * 3 * PITCH;
        double way = centre > 0 ? -1 : 1;
        double tapAt = BEGINS + 0.5 * random.nextDouble();
        double tapLasts = 0.03 + 0.05 * random.nextDouble();
        double tapForce = load * (0.3 + 0.7 * random.nextDouble());
        double tapCentre = centre + (random.nextDouble() - 0.5) * PITCH;
        double squeeze = load * (0.3 + 0.7 * random.nextDouble()) / 2.5;
        double[] drift = new double[TAXELS];
        for (int i = 0; i < TAXELS; i++) {
            drift[i] = kind == Kind.WARMING ? 0.02 * random.nextGaussian() : 0; // N per second
        }
        double vibration = kind.isSlip() ? 0.01 + 0.02 * random.nextDouble() : 0;
        double perSecond = 5 + 20 * random.nextDouble();
        double next = BEGINS;
        double x = centre;
        double[] pin = new double[TAXELS];
        for (int k = 0; k < LENGTH * RATE; k++) {
            double t = k / RATE;
            double f = load * between(t, touch, rise) * (1 - between(t, release, fall));
            boolean slips = kind.isSlip() && t >= BEGINS && t < BEGINS + kind.lasts;
            while (slips && t >= next) {
                x += way * kind.speed / perSecond * (0.5 + random.nextDouble());
                next += -Math.log(1 - random.nextDouble()) / perSecond;
            }
            f *= slips ? 1 + vibration * random.nextGaussian() : 1;
            if (kind == Kind.SLOW_SQUEEZE && t > BEGINS) {
                f += squeeze * Math.min(2.5, t - BEGINS) * (1 - between(t, release, fall));
            }
            if (kind == Kind.TOUCHES_AND_RELEASES && t > 3) {
                double again = (t - 3) % 1.3;
                f = load * between(again, 0.2, rise) * (1 - between(again, 0.8, fall));
            }
            double[] row = new double[TAXELS];
            double tap = kind == Kind.TAP && t > tapAt && t < tapAt + tapLasts
                    ? tapForce * Math.sin(Math.PI * (t - tapAt) / tapLasts)
                    : 0;
            for (int i = 0; i < TAXELS; i++) {
                double own = f * share(i, x) + tap * share(i, tapCentre);
                if (Math.abs(own - pin[i]) > PLAY) {
                    pin[i] = own - Math.copySign(PLAY, own - pin[i]);
                }
                row[i] = ZERO + GAIN * (pin[i] + drift[i] * t + noise * random.nextGaussian());
                if (random.nextDouble() < SPIKES) {
                    row[i] += (random.nextBoolean() ? 1 : -1) * (50 + 3000 * random.nextDouble());
                }
            }
            rows.add(row);
        }
    }

    /** 0 before, 1 after, a straight rise that lasts so long. */
    private static double between(double t, double from, double lasts) {
        return Math.max(0, Math.min(1, (t - from) / lasts));
    }

    private static double share(int taxel, double centre) {
        double u = (place(taxel) - centre) / (0.8 * PITCH);
        return Math.exp(-u * u / 2) / (0.8 * Math.sqrt(2 * Math.PI));
    }

    private static double place(int taxel) {
        return (taxel - 0.5 * (TAXELS - 1)) * PITCH;
    }

    /** Times at which slip is suspected. */
    List<Double> suspicions() {
        TaxelModel model = new TaxelModel(
                ZERO, GAIN, 0, 0, 1, PLAY, 0, 0, Double.NaN, Double.NaN, GAIN * noise, 0.01, 10, Double.NaN);
        List<Decoding.Cell> cells = new ArrayList<>();
        double[] along = new double[TAXELS];
        for (int i = 0; i < TAXELS; i++) {
            along[i] = place(i);
            cells.add(new Decoding.Cell("p" + i, "strip", Optional.of(model), "", Optional.empty()));
        }
        Decoder decoder = new Decoder(
                new Decoding("Pa", false, cells, Map.of()),
                List.of(new Decoder.PadPlace("strip", 0, along, PITCH)),
                1,
                100);
        List<Decoder.Event> events = new ArrayList<>();
        double[] none = new double[TAXELS];
        Arrays.fill(none, Double.NaN);
        for (int k = 0; k < rows.size(); k++) {
            decoder.step(k / RATE, rows.get(k), none, Double.NaN, events);
        }
        return events.stream()
                .filter(e -> e.kind() == Decoder.Event.Kind.SLIP)
                .map(Decoder.Event::time)
                .toList();
    }
}
