package gripwright.signal;

import gripwright.check.Check;
import gripwright.pad.PadDesign;
import gripwright.pad.Readings;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Turns readings into forces, row by row, with a memory that does not grow.
 *
 * <p>Per taxel see {@link TaxelForce}. Where every taxel was pressed alone, their cross-talk is taken apart; else the
 * force of a plate is shared out evenly over the pad's taxels.
 *
 * <p>Rules (common practice, no source): a pad is touched when one of its taxels shows more than 5 standard deviations
 * twice in a row, and released when all show less than half of that. Slip is suspected when the centre of force moves by
 * more than a fifth of the pitch, more than 5 of its standard deviations and more than the taxels' play can move it,
 * within 0.1 s, 0.3 s or 1 s, while the total force neither rises by more than a tenth nor falls by more than a fifth.
 */
public final class Decoder {

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
            Arrays.setAll(along, design::along);
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
    private final double zeroTime;
    private final int k;
    private final @Nullable TaxelForce[] one;
    private final double[] linear;
    private final double[] force;
    private final double[] error;
    private final double[] noise;
    private final double[] band;
    private final boolean[] clipped;
    private final List<PadForces> forces;
    private final List<PadEvents> judges;
    private double start = Double.NaN;
    private double last = Double.NaN;
    private boolean zeroed;

    /**
     * @param zeroTime the first seconds, without touch, whose mean is the zero; 0 to take the calibration's offset
     * @param zeros readings in it, about, for the uncertainty
     */
    public Decoder(Decoding how, List<PadPlace> pads, double zeroTime, int zeros) {
        this.how = how;
        this.zeroTime = zeroTime;
        this.k = how.taxels().size();
        this.one = new TaxelForce[k];
        for (int i = 0; i < k; i++) {
            one[i] = how.taxels()
                    .get(i)
                    .model()
                    .map(m -> new TaxelForce(m, zeros))
                    .orElse(null);
        }
        this.linear = new double[k];
        this.force = new double[k];
        this.error = new double[k];
        this.noise = new double[k];
        this.band = new double[k];
        this.clipped = new boolean[k];
        this.forces = pads.stream()
                .map(p -> new PadForces(how, p, force, error, noise, band))
                .toList();
        this.judges = IntStream.range(0, pads.size())
                .mapToObj(p -> new PadEvents(pads.get(p), forces.get(p), force, error))
                .toList();
    }

    /** Whether cross-talk of the pad is taken apart. */
    public boolean takesApart(int pad) {
        return forces.get(pad).takesApart();
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
            TaxelForce taxel = one[i];
            if (taxel == null) {
                continue;
            }
            clipped[i] = reading[i] >= taxel.model().clip();
            taxel.read(reading[i], temperature[i], ambient);
            if (zeroing) {
                taxel.zero();
            } else {
                taxel.turn(step);
                linear[i] = taxel.force();
                error[i] = taxel.error();
                noise[i] = taxel.noise();
                band[i] = taxel.model().play();
            }
        }
        if (zeroing) {
            return false;
        }
        zeroed = true;
        for (int p = 0; p < forces.size(); p++) {
            forces.get(p).share(linear);
            forces.get(p).sum();
            judges.get(p).judge(time, events);
        }
        return true;
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
        return forces.get(pad).total();
    }

    public double totalError(int pad) {
        return forces.get(pad).totalError();
    }

    /** Centre of force along a pad [m]; NaN if the force is not clear of the noise. */
    public double centre(int pad) {
        return forces.get(pad).centre();
    }

    public double centreError(int pad) {
        return forces.get(pad).centreError();
    }

    public boolean touched(int pad) {
        return judges.get(pad).touched();
    }

    public boolean slipping(int pad) {
        return judges.get(pad).slipping();
    }
}
