package gripwright.closing;

import gripwright.closing.PullResult.Kind;
import gripwright.closing.PullResult.Sample;
import gripwright.math.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleSupplier;

/** Looks on while a held object is pulled, turned or pushed: load over displacement, and which body lets go first. */
final class PullWatch implements Stepper.Watch {
    /** Pulling stops at this force [N], turning at it times {@link HoldPlan#TURN_ARM}. */
    private static final double STRONGEST = 500;

    private static final double NEARLY = 0.99;
    /** A peak beyond this share of the travel "yields". */
    private static final double LATE = 0.9;

    private static final int MOST_SAMPLES = 80;

    private final StepSystem system;
    private final List<String> bodies;
    private final DoubleSupplier loadNow;
    private final DoubleSupplier movedNow;
    private final Vec3 axis;
    final boolean turning;
    final double travel;
    private final boolean[] pressed;
    private final boolean[] slid;
    private final List<Sample> curve = new ArrayList<>();
    private List<String> first = List.of();
    private double firstLoad = Double.NaN;
    private double lostAt = Double.NaN;
    private boolean beyond;

    /**
     * @param load on the object now [N or N m]
     * @param moved how far it has moved in the hand [m or rad]
     * @param travel at which it is enough [m or rad]
     */
    PullWatch(
            StepSystem system,
            Criteria criteria,
            DoubleSupplier load,
            DoubleSupplier moved,
            Vec3 axis,
            boolean turning,
            double travel) {
        this.system = system;
        bodies = system.rig.tree().bodies().stream().map(b -> b.name()).toList();
        loadNow = load;
        movedNow = moved;
        this.axis = axis;
        this.turning = turning;
        this.travel = travel;
        pressed = new boolean[bodies.size()];
        slid = new boolean[bodies.size()];
        for (int b = 0; b < slid.length; b++) {
            pressed[b] = system.pads.bodyForce(b) > criteria.touchForce();
            slid[b] = slides(b);
        }
        curve.add(new Sample(0, 0));
    }

    /** True if all pressed points of a body slide, or it has none. */
    private boolean slides(int body) {
        for (int i = system.rig.points().firstPoint(body);
                i < system.rig.points().firstPoint(body + 1);
                i++) {
            if (system.pads.force(i) > 0
                    && !system.pads.slides(i, system.objectRotation, system.objectPosition, body)) {
                return false;
            }
        }
        return true;
    }

    @Override
    public boolean stop(double motion) {
        double load = loadNow.getAsDouble();
        double moved = movedNow.getAsDouble();
        curve.add(new Sample(moved, load));
        boolean touched = false;
        for (int b = 0; b < pressed.length; b++) {
            touched |= system.pads.bodyForce(b) > 0;
        }
        if (first.isEmpty()) {
            findFirst(load);
        }
        if (!touched && Double.isNaN(lostAt)) {
            // where it was last still touched: the spring then flings it on
            lostAt = curve.get(curve.size() - 2).moved();
        }
        beyond = load > (turning ? STRONGEST * HoldPlan.TURN_ARM : STRONGEST);
        return beyond || moved >= travel || !touched;
    }

    private void findFirst(double load) {
        List<String> now = new ArrayList<>();
        for (int b = 0; b < pressed.length; b++) {
            boolean gone = system.pads.bodyForce(b) == 0 || (!slid[b] && slides(b));
            if (pressed[b] && gone) {
                now.add(bodies.get(b));
            }
        }
        if (!now.isEmpty()) {
            first = now;
            firstLoad = load;
        }
    }

    /** @param trouble what kept it from an end, if it was stuck */
    PullResult result(Stepper.End end, String trouble) {
        int best = 0;
        for (int i = 1; i < curve.size(); i++) {
            if (curve.get(i).load() > curve.get(best).load()) {
                best = i;
            }
        }
        Sample peak = curve.get(best);
        Sample nearly = curve.stream()
                .filter(s -> s.load() >= NEARLY * peak.load())
                .findFirst()
                .orElse(peak);
        Sample last = curve.get(curve.size() - 1);
        Kind kind = kind(end, nearly);
        return new PullResult(
                axis,
                turning,
                peak.load(),
                peak.moved(),
                nearly.moved(),
                last.moved(),
                lostAt,
                kind,
                first,
                firstLoad,
                thinned(best),
                kind == Kind.UNDECIDED ? trouble : "");
    }

    private Kind kind(Stepper.End end, Sample nearly) {
        if (end == Stepper.End.STUCK) {
            return Kind.UNDECIDED;
        }
        if (beyond || end == Stepper.End.DONE) {
            return Kind.BEYOND;
        }
        return nearly.moved() > LATE * travel ? Kind.YIELDS : Kind.SLIPS;
    }

    private List<Sample> thinned(int keep) {
        List<Sample> out = new ArrayList<>();
        int every = Math.max(1, curve.size() / MOST_SAMPLES);
        for (int i = 0; i < curve.size(); i++) {
            if (i % every == 0 || i == keep || i == curve.size() - 1) {
                out.add(curve.get(i));
            }
        }
        return out;
    }
}
