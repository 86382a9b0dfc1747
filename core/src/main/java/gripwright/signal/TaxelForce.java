package gripwright.signal;

/**
 * The force on one taxel from its readings, one after the other: zero, temperature, ambient pressure and creep are taken
 * off, the curve is inverted, and play is undone by the way the force has come.
 *
 * <p>Behind the play arrives {@code p}; the force is {@code p + play} while it rises and {@code p - play} while it falls.
 * Noise must not count as a way: {@code p} is smoothed over 0.2 s, and the turn from one to the other takes as far as its
 * noise reaches. At rest the play stands at its upper end, as after a load.
 */
final class TaxelForce {
    private static final double SMOOTH = 0.2;

    /** A turn takes so many standard deviations of the smoothed force, each way. */
    private static final double TURN = 10;

    /** A turn takes at least such a share of the play, so that drift makes no turn. */
    private static final double LEAST_TURN = 0.2;

    private static final double AT_REST = 2;

    private final TaxelModel m;
    private final int zeros;
    private double zeroSum;
    private int zeroCount;
    private double creep;
    private double smooth = Double.NaN;
    private double last = Double.NaN;
    private double lastButOne = Double.NaN;
    private double way = -1;
    private double corrected = Double.NaN;
    private double force = Double.NaN;
    private double noise = Double.NaN;
    private double error = Double.NaN;

    /** @param zeros readings in a zero that was not taken here, about, for the uncertainty */
    TaxelForce(TaxelModel m, int zeros) {
        this.m = m;
        this.zeros = zeros;
    }

    TaxelModel model() {
        return m;
    }

    /** Takes the effects of temperature [degC] and ambient pressure [Pa] off a reading; NaN where not known. */
    void read(double reading, double temperature, double ambient) {
        double v = reading;
        v -= m.temperature() == 0 || Double.isNaN(temperature) ? 0 : m.temperature() * (temperature - m.temperature0());
        v -= m.ambient() == 0 || Double.isNaN(ambient) ? 0 : m.ambient() * (ambient - m.ambient0());
        corrected = v;
    }

    /** The reading counts for the zero. */
    void zero() {
        if (!Double.isNaN(corrected)) {
            zeroSum += corrected;
            zeroCount++;
        }
    }

    /** Turns the reading into a force; {@code step} since the last one [s]. */
    void turn(double step) {
        if (Double.isNaN(corrected)) {
            force = Double.NaN;
            return;
        }
        double rest = zeroCount > 0 ? zeroSum / zeroCount : m.rest();
        double atRest = m.play() * (m.sensitivity() + m.quadratic() * m.play());
        double p = m.behindPlay(corrected - rest - m.creep() * creep + atRest);
        double slope = Math.max(0.1 * m.sensitivity(), m.sensitivity() + 2 * m.quadratic() * Math.max(0, p));
        double over = Math.sqrt(1 + 1.0 / Math.max(1, zeroCount > 0 ? zeroCount : zeros));
        force = m.play() > 0 ? p + m.play() * way(p, m.noise() / slope, step) : p;
        if (m.creep() != 0 && !Double.isNaN(force)) {
            creep += -Math.expm1(-step / m.creepTime()) * (force - creep);
        }
        noise = m.noise() / slope * over;
        // At rest the place in the play is known; else the force may have turned back without the taxel feeling it.
        double play = m.play() * (force > m.play() ? 1 : 0.5 * (1 + way)) / Math.sqrt(3);
        error = Math.sqrt(noise * noise + play * play + square(m.sensitivityError() * force));
    }

    /** Between -1, falling, and 1, rising: follows the smoothed force and is held at both ends. */
    private double way(double p, double deviation, double step) {
        if (Double.isNaN(p)) {
            return way;
        }
        // The middle of three, so that a single spike is no way.
        double middle = Math.max(Math.min(p, last), Math.min(Math.max(p, last), lastButOne));
        lastButOne = last;
        last = p;
        if (Double.isNaN(middle)) {
            return way;
        }
        double share = -Math.expm1(-step / SMOOTH);
        double before = smooth;
        smooth = Double.isNaN(smooth) ? middle : smooth + share * (middle - smooth);
        double left = deviation * Math.sqrt(share / (2 - share));
        if (smooth < m.play() + AT_REST * left) {
            way = -1;
        } else if (!Double.isNaN(before)) {
            double reach = Math.max(TURN * left, LEAST_TURN * m.play());
            way = Math.max(-1, Math.min(1, way + (smooth - before) / reach));
        }
        return way;
    }

    private static double square(double v) {
        return v * v;
    }

    /** Force [N]; NaN if there is no reading. */
    double force() {
        return force;
    }

    /** Standard deviation of the force by noise alone [N]. */
    double noise() {
        return noise;
    }

    /** Its standard deviation with what is not known of the play and the sensitivity [N]. */
    double error() {
        return error;
    }
}
