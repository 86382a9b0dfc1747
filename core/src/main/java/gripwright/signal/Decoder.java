package gripwright.signal;

import gripwright.check.Check;
import gripwright.pad.PadDesign;
import gripwright.pad.Readings;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * Turns readings into forces, row by row, with a memory that does not grow.
 *
 * <p>Per taxel: temperature, ambient pressure and creep are taken off, the zero is the mean of the first readings, the
 * curve is inverted. Play cannot be undone without knowing the way; it counts as an uncertainty of half its width by
 * sqrt 3. Where every taxel was pressed alone, their cross-talk is taken apart; else the force of a plate is shared out
 * evenly over the pad's taxels.
 *
 * <p>Rules (common practice, no source): a pad is touched when one of its taxels shows more than 5 standard deviations
 * twice in a row, and released when all show less than half of that. Slip is suspected when the centre of force moves by
 * more than a fifth of the pitch and more than 4 of its standard deviations within 0.1 s while the total force neither
 * rises by more than a tenth nor falls by more than a fifth.
 */
public final class Decoder {
    private static final double TOUCH = 5;
    private static final double RELEASE = 0.5;
    private static final double SLIP_TIME = 0.1;
    private static final double SLIP_PITCH = 0.2;
    private static final double SLIP_CLEAR = 4;
    private static final double SLIP_RISE = 0.1;
    private static final double SLIP_FALL = 0.2;
    private static final double CENTRE_CLEAR = 5;
    private static final int HISTORY = 256;

    /**
     * Where a pad's taxels lie.
     *
     * @param first index of its first taxel
     * @param along place of each along the pad [m]
     * @param pitch [m]
     */
    public record PadPlace(String name, int first, double[] along, double pitch) {}

    /** Where the taxels of the pads lie whose columns are named. */
    public static List<PadPlace> places(List<PadDesign> pads, Readings readings) {
        List<PadPlace> places = new ArrayList<>();
        int first = 0;
        for (var pad : readings.taxels().entrySet()) {
            PadDesign design = pads.stream()
                    .filter(p -> p.name().equals(pad.getKey()))
                    .findFirst()
                    .orElseThrow();
            double[] along = new double[pad.getValue().size()];
            int count = design.count();
            Arrays.setAll(along, i -> (i % count - 0.5 * (count - 1)) * design.pitch());
            places.add(new PadPlace(pad.getKey(), first, along, design.pitch()));
            first += along.length;
        }
        return places;
    }

    /** What happened, at a time [s], on a pad; the taxel's index, or -1 if it is about the pad. */
    public record Event(double time, String pad, Kind kind, int taxel) {
        /** What. */
        public enum Kind {
            TOUCH("touch"),
            RELEASE("release"),
            SLIP("slip suspected");

            private final String words;

            Kind(String words) {
                this.words = words;
            }

            public String words() {
                return words;
            }
        }
    }

    private final Decoding how;
    private final List<PadPlace> pads;
    private final double zeroTime;
    private final int zeros;
    private final int k;
    private final double[] zeroSum;
    private final int[] zeroCount;
    private final double[] creep;
    private final double[] raw;
    private final double[] linear;
    private final double[] force;
    private final double[] error;
    private final double[] total;
    private final double[] totalError;
    private final double[] centre;
    private final double[] centreError;
    private final boolean[] touched;
    private final boolean[] slipping;
    private final int[] above;
    private final boolean[] clipped;
    private final double[][] pastTime;
    private final double[][] pastCentre;
    private final double[][] pastTotal;
    private final int[][] fittedOf;
    private final int[] pastAt;
    private final Map<Integer, RealMatrix> apart = new LinkedHashMap<>();
    private double start = Double.NaN;
    private double last = Double.NaN;
    private boolean zeroed;

    /**
     * @param zeroTime the first seconds, without touch, whose mean is the zero; 0 to take the calibration's offset
     * @param zeros readings in it, about, for the uncertainty
     */
    public Decoder(Decoding how, List<PadPlace> pads, double zeroTime, int zeros) {
        this.how = how;
        this.pads = List.copyOf(pads);
        this.zeroTime = zeroTime;
        this.zeros = zeros;
        this.k = how.taxels().size();
        this.zeroSum = new double[k];
        this.zeroCount = new int[k];
        this.creep = new double[k];
        this.raw = new double[k];
        this.linear = new double[k];
        this.force = new double[k];
        this.error = new double[k];
        this.clipped = new boolean[k];
        int n = pads.size();
        this.total = new double[n];
        this.totalError = new double[n];
        this.centre = new double[n];
        this.centreError = new double[n];
        this.touched = new boolean[n];
        this.slipping = new boolean[n];
        this.above = new int[n];
        this.pastTime = new double[n][HISTORY];
        this.pastCentre = new double[n][HISTORY];
        this.pastTotal = new double[n][HISTORY];
        this.pastAt = new int[n];
        for (double[] p : pastTime) {
            Arrays.fill(p, Double.NaN);
        }
        this.fittedOf = new int[n][];
        for (int p = 0; p < n; p++) {
            int pad = p;
            fittedOf[p] = fitted(p).stream().mapToInt(i -> i).toArray();
            apart(p).ifPresent(inverse -> apart.put(pad, inverse));
        }
    }

    /** From readings in N to forces, for a pad of which every fitted taxel was pressed alone. */
    private Optional<RealMatrix> apart(int pad) {
        List<Integer> fitted = fitted(pad);
        int n = fitted.size();
        double[][] m = new double[n][n];
        for (int j = 0; j < n; j++) {
            List<Double> row = how.slopes().get(how.taxels().get(fitted.get(j)).column());
            for (int i = 0; i < n; i++) {
                double slope = row == null ? Double.NaN : row.get(fitted.get(i));
                m[i][j] = slope / model(fitted.get(i)).sensitivity();
                if (!Double.isFinite(slope)) {
                    return Optional.empty();
                }
            }
        }
        if (n == 0) {
            return Optional.empty();
        }
        LUDecomposition lu = new LUDecomposition(MatrixUtils.createRealMatrix(m));
        return lu.getSolver().isNonSingular() ? Optional.of(lu.getSolver().getInverse()) : Optional.empty();
    }

    private List<Integer> fitted(int pad) {
        List<Integer> fitted = new ArrayList<>();
        PadPlace place = pads.get(pad);
        for (int i = place.first(); i < place.first() + place.along().length; i++) {
            if (how.taxels().get(i).model().isPresent()) {
                fitted.add(i);
            }
        }
        return fitted;
    }

    private TaxelModel model(int taxel) {
        return how.taxels().get(taxel).model().orElseThrow();
    }

    /** Whether cross-talk of the pad is taken apart. */
    public boolean takesApart(int pad) {
        return apart.containsKey(pad);
    }

    /**
     * One row.
     *
     * @param time later than the row before [s]
     * @param reading per taxel, NaN where missing
     * @param temperature per taxel [degC], NaN where unknown
     * @param ambient [Pa], NaN if unknown
     * @param events out: what happened is added
     * @return whether forces are there; not yet while the zero is taken
     */
    public boolean step(double time, double[] reading, double[] temperature, double ambient, List<Event> events) {
        Check.count(reading.length, k, "readings", "one per taxel");
        if (Double.isNaN(start)) {
            start = time;
        }
        double step = Double.isNaN(last) ? 0 : time - last;
        last = time;
        boolean zeroing = time < start + zeroTime;
        for (int i = 0; i < k; i++) {
            if (how.taxels().get(i).model().isEmpty()) {
                raw[i] = Double.NaN;
                continue;
            }
            TaxelModel m = model(i);
            clipped[i] = reading[i] >= m.clip();
            double v = reading[i];
            v -= m.temperature() == 0 || Double.isNaN(temperature[i])
                    ? 0
                    : m.temperature() * (temperature[i] - m.temperature0());
            v -= m.ambient() == 0 || Double.isNaN(ambient) ? 0 : m.ambient() * (ambient - m.ambient0());
            if (zeroing && !Double.isNaN(v)) {
                zeroSum[i] += v;
                zeroCount[i]++;
            }
            raw[i] = v;
        }
        if (zeroing) {
            return false;
        }
        zeroed = true;
        for (int i = 0; i < k; i++) {
            linear[i] = Double.isNaN(raw[i]) ? Double.NaN : one(i, step);
        }
        for (int p = 0; p < pads.size(); p++) {
            share(p);
            sums(p);
            judge(p, time, events);
        }
        return true;
    }

    /** Force that the taxel by itself shows, and its standard deviation. */
    private double one(int i, double step) {
        TaxelModel m = model(i);
        double rest = zeroCount[i] > 0 ? zeroSum[i] / zeroCount[i] : m.rest();
        double atRest = m.play() * (m.sensitivity() + m.quadratic() * m.play());
        double above = raw[i] - rest - m.creep() * creep[i] + atRest;
        double p = m.behindPlay(above);
        // At rest the play stands at its upper end: from there to three half widths the force is told from both sides.
        double f = p >= 3 * m.play() ? p : 1.5 * (p - m.play());
        if (m.creep() != 0 && !Double.isNaN(f)) {
            creep[i] += -Math.expm1(-step / m.creepTime()) * (f - creep[i]);
        }
        double noise = m.noise() * Math.sqrt(1 + 1.0 / Math.max(1, zeroCount[i] > 0 ? zeroCount[i] : zeros));
        double slope = Math.max(0.1 * m.sensitivity(), m.sensitivity() + 2 * m.quadratic() * f);
        double play = f > m.play() ? m.play() / Math.sqrt(3) : 0;
        double variance = noise * noise / (slope * slope) + play * play + square(m.sensitivityError() * f);
        error[i] = Math.sqrt(variance);
        return f;
    }

    private static double square(double v) {
        return v * v;
    }

    private void share(int pad) {
        int[] fitted = fittedOf[pad];
        RealMatrix inverse = apart.get(pad);
        int n = fitted.length;
        if (inverse == null) {
            double part = how.plate() ? 1.0 / Math.max(1, n) : 1;
            for (int i : fitted) {
                force[i] = part * linear[i];
                error[i] *= part;
            }
            return;
        }
        double[] spread = new double[n];
        for (int a = 0; a < n; a++) {
            double f = 0;
            double v = 0;
            for (int b = 0; b < n; b++) {
                double g = inverse.getEntry(a, b);
                f += g * linear[fitted[b]];
                v += square(g * error[fitted[b]]);
            }
            force[fitted[a]] = f;
            spread[a] = Math.sqrt(v);
        }
        for (int a = 0; a < n; a++) {
            error[fitted[a]] = spread[a];
        }
    }

    private void sums(int pad) {
        PadPlace place = pads.get(pad);
        double sum = 0;
        double moment = 0;
        double variance = 0;
        for (int i : fittedOf[pad]) {
            if (!Double.isNaN(force[i])) {
                sum += force[i];
                moment += force[i] * place.along()[i - place.first()];
                variance += square(error[i]);
            }
        }
        total[pad] = sum;
        totalError[pad] = Math.sqrt(variance);
        boolean clear = sum > CENTRE_CLEAR * totalError[pad] && sum > 0;
        centre[pad] = clear ? moment / sum : Double.NaN;
        double spread = 0;
        for (int i : fittedOf[pad]) {
            if (clear && !Double.isNaN(force[i])) {
                spread += square((place.along()[i - place.first()] - centre[pad]) * error[i] / sum);
            }
        }
        centreError[pad] = clear ? Math.sqrt(spread) : Double.NaN;
    }

    private void judge(int pad, double time, List<Event> events) {
        int strongest = -1;
        boolean quiet = true;
        for (int i : fittedOf[pad]) {
            double clear = force[i] / error[i];
            if (clear > TOUCH && (strongest < 0 || force[i] > force[strongest])) {
                strongest = i;
            }
            quiet &= !(clear > RELEASE * TOUCH);
        }
        above[pad] = strongest >= 0 ? above[pad] + 1 : 0;
        if (!touched[pad] && above[pad] >= 2) {
            touched[pad] = true;
            events.add(new Event(time, pads.get(pad).name(), Event.Kind.TOUCH, strongest));
        } else if (touched[pad] && quiet) {
            touched[pad] = false;
            events.add(new Event(time, pads.get(pad).name(), Event.Kind.RELEASE, -1));
        }
        boolean slips = touched[pad] && moves(pad, time);
        if (slips && !slipping[pad]) {
            events.add(new Event(time, pads.get(pad).name(), Event.Kind.SLIP, -1));
        }
        slipping[pad] = slips;
        int at = pastAt[pad] % HISTORY;
        pastTime[pad][at] = time;
        pastCentre[pad][at] = centre[pad];
        pastTotal[pad][at] = total[pad];
        pastAt[pad]++;
    }

    private boolean moves(int pad, double time) {
        for (int back = 1; back <= HISTORY && back <= pastAt[pad]; back++) {
            int at = (pastAt[pad] - back) % HISTORY;
            if (time - pastTime[pad][at] >= 0.999 * SLIP_TIME || back == HISTORY) {
                double moved = Math.abs(centre[pad] - pastCentre[pad][at]);
                return moved > SLIP_PITCH * pads.get(pad).pitch()
                        && moved > SLIP_CLEAR * Math.sqrt(2) * centreError[pad]
                        && total[pad] <= (1 + SLIP_RISE) * pastTotal[pad][at]
                        && total[pad] >= (1 - SLIP_FALL) * pastTotal[pad][at];
            }
        }
        return false;
    }

    public boolean zeroed() {
        return zeroed;
    }

    /** Force on a taxel [N]; NaN if it has no model or no reading. */
    public double force(int taxel) {
        return how.taxels().get(taxel).model().isPresent() ? force[taxel] : Double.NaN;
    }

    /** Its standard deviation [N]. */
    public double error(int taxel) {
        return how.taxels().get(taxel).model().isPresent() ? error[taxel] : Double.NaN;
    }

    /** Whether the taxel is at its end and the force may be greater. */
    public boolean clipped(int taxel) {
        return clipped[taxel];
    }

    /** Sum of the forces on a pad [N]. */
    public double total(int pad) {
        return total[pad];
    }

    public double totalError(int pad) {
        return totalError[pad];
    }

    /** Centre of force along a pad [m]; NaN if the force is not clear of the noise. */
    public double centre(int pad) {
        return centre[pad];
    }

    public double centreError(int pad) {
        return centreError[pad];
    }

    public boolean touched(int pad) {
        return touched[pad];
    }

    public boolean slipping(int pad) {
        return slipping[pad];
    }
}
