package gripwright.closing;

import gripwright.closing.Release.FingerLeft;
import gripwright.closing.Release.How;
import gripwright.math.Vec3;
import gripwright.mechanics.HandTree;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleConsumer;

/** Puts the held object down again and opens the hand. The state is put back afterwards. */
final class LettingGo {
    private static final double LOWERING_SECONDS = 1;
    private static final double BACK_SECONDS = 10;
    /** Tendon paid out per second [m/s], as fast as it was wound. */
    private static final double PAYING_OUT = 0.12;

    private final StepSystem system;
    private final Stepper stepper;
    private final Criteria criteria;
    private final List<String> fingers;
    private double letGoAt = Double.NaN;

    LettingGo(StepSystem system, Stepper stepper, Criteria criteria, List<String> fingers) {
        this.system = system;
        this.stepper = stepper;
        this.criteria = criteria;
        this.fingers = fingers;
    }

    /**
     * @param handBack puts the hand so many metres back on its way in
     * @param retreat how far it goes [m]
     */
    Release from(Snapshot held, DoubleConsumer handBack, double retreat) {
        held.restore(system);
        stepper.reset();
        try {
            return run(handBack, retreat);
        } finally {
            handBack.accept(0);
            held.restore(system);
        }
    }

    private Release run(DoubleConsumer handBack, double retreat) {
        Stepper.Watch none = motion -> false;
        double low = system.tableHeight;
        Stepper.End end = stepper.ramp(t -> system.tableHeight = low * (1 - t), LOWERING_SECONDS, 0.01, 0.05, none);
        end = end == Stepper.End.DONE ? stepper.settle(none) : end;
        if (end == Stepper.End.DONE) {
            end = payOut();
        }
        if (end != Stepper.End.DONE) {
            return undecided();
        }
        end = stepper.settle(none);
        if (end != Stepper.End.DONE) {
            return undecided();
        }
        List<FingerLeft> left = left();
        double palmForce = system.pads.bodyForce(0);
        boolean pressing = left.stream().anyMatch(f -> f.force() > criteria.touchForce());
        Vec3 before = place();
        end = stepper.ramp(
                t -> handBack.accept(retreat * t),
                BACK_SECONDS,
                0.02,
                1,
                motion -> place().minus(before).length() > criteria.pushed());
        double dragged = place().minus(before).length();
        if (end == Stepper.End.STUCK) {
            return undecided();
        }
        boolean free = !pressing && end == Stepper.End.DONE;
        return new Release(
                free ? How.LET_GO : How.NOT_LET_GO, left, palmForce, dragged, pressing ? Double.NaN : letGoAt, "");
    }

    private Stepper.End payOut() {
        int motors = system.rig.drive().motors();
        double[] wound = new double[motors];
        double most = 1e-3;
        for (int m = 0; m < motors; m++) {
            wound[m] = system.rig.drive().wound(m);
            most = Math.max(most, wound[m]);
        }
        system.rig.drive().release();
        letGoAt = 1;
        double[] now = new double[1];
        return stepper.ramp(
                t -> {
                    now[0] = t;
                    for (int m = 0; m < motors; m++) {
                        system.rig.drive().wind(m, wound[m] * (1 - t));
                    }
                },
                most / PAYING_OUT,
                0.01,
                0.05,
                motion -> {
                    if (fingerForce() > criteria.touchForce()) {
                        letGoAt = 1 - now[0];
                    }
                    return false;
                });
    }

    /** Greatest force of a finger on the object [N]. */
    private double fingerForce() {
        double most = 0;
        for (int b = 1; b < system.rig.tree().bodies().size(); b++) {
            most = Math.max(most, system.pads.bodyForce(b));
        }
        return most;
    }

    private List<FingerLeft> left() {
        List<FingerLeft> out = new ArrayList<>();
        double[] open = system.rig.open();
        for (int f = 0; f < fingers.size(); f++) {
            double angle = 0;
            for (int j = 0; j < system.joints; j++) {
                HandTree.Coordinate c = system.rig.tree().coordinates().get(j);
                if (c.finger() == f && !c.slides()) {
                    angle = Math.max(angle, Math.abs(system.q[j] - open[j]));
                }
            }
            double force = 0;
            for (int b = 0; b < system.rig.tree().bodies().size(); b++) {
                if (system.rig.tree().bodies().get(b).finger() == f) {
                    force += system.pads.bodyForce(b);
                }
            }
            out.add(new FingerLeft(
                    fingers.get(f), angle, force, system.rig.drive().fingerTension(f)));
        }
        return out;
    }

    private Vec3 place() {
        return new Vec3(system.p[0], system.p[1], system.p[2]);
    }

    private Release undecided() {
        return new Release(How.UNDECIDED, left(), system.pads.bodyForce(0), Double.NaN, Double.NaN, stepper.trouble);
    }
}
