package gripwright.signal;

import java.util.List;

/** Touch, release and suspicion of slip on one pad, by the rules of {@link Decoder}. */
final class PadEvents {
    private static final double TOUCH = 5;
    private static final double RELEASE = 0.5;

    /** Suspicions that follow one another within this time are of one slip [s]. */
    private static final double ONE_SLIP = 1;

    private final String name;
    private final PadForces forces;
    private final double[] force;
    private final double[] error;
    private final double[][] before;
    private final SlipWatch watch;
    private double lastSlip = Double.NaN;
    private boolean touched;
    private boolean slipping;
    private int above;

    /**
     * @param force of all taxels, as they are now [N]
     * @param error their standard deviations
     */
    PadEvents(Decoder.PadPlace place, PadForces forces, double[] force, double[] error) {
        this.name = place.name();
        this.forces = forces;
        this.force = force;
        this.error = error;
        this.before = new double[force.length][2];
        this.watch = new SlipWatch(place.pitch());
    }

    /** Looks at the forces of a row; what happened is added to the events. */
    void judge(double time, List<Decoder.Event> events) {
        int strongest = -1;
        boolean quiet = true;
        for (int i : forces.fitted()) {
            double clear = force[i] / error[i];
            if (clear > TOUCH && (strongest < 0 || force[i] > force[strongest])) {
                strongest = i;
            }
            quiet &= !(clear > RELEASE * TOUCH);
        }
        above = strongest >= 0 ? above + 1 : 0;
        if (!touched && above >= 2) {
            touched = true;
            events.add(new Decoder.Event(time, name, Decoder.Event.Kind.TOUCH, strongest));
        } else if (touched && quiet) {
            touched = false;
            events.add(new Decoder.Event(time, name, Decoder.Event.Kind.RELEASE, -1));
        }
        boolean moves = watch(time);
        slipping = touched && moves;
        if (slipping) {
            if (!(time - lastSlip <= ONE_SLIP)) {
                events.add(new Decoder.Event(time, name, Decoder.Event.Kind.SLIP, -1));
            }
            lastSlip = time;
        }
    }

    /** Looks for a slip in forces of which each is the middle of three: a single spike is none. */
    private boolean watch(double time) {
        double sum = 0;
        double moment = 0;
        for (int i : forces.fitted()) {
            double f = Double.isNaN(force[i]) ? before[i][1] : force[i];
            double a = before[i][0];
            double b = before[i][1];
            double middle = Math.max(Math.min(a, b), Math.min(Math.max(a, b), f));
            before[i][0] = b;
            before[i][1] = f;
            sum += middle;
            moment += middle * forces.along(i);
        }
        double at = sum > 0 && !Double.isNaN(forces.centre()) ? moment / sum : Double.NaN;
        return watch.step(time, at, sum, forces.centreNoise(), forces.centreBand());
    }

    boolean touched() {
        return touched;
    }

    boolean slipping() {
        return slipping;
    }
}
