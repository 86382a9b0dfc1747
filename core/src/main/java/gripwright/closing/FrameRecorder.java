package gripwright.closing;

import gripwright.math.Pose;
import gripwright.math.Rotation;
import gripwright.math.Vec3;
import java.util.ArrayList;
import java.util.List;

/** Keeps the moments of a run that are worth drawing. */
final class FrameRecorder {
    private static final int MOST_FRAMES = 160;
    /** Motion of the object worth a frame [m], rise of tension [share of the greatest], tendon wound [m]. */
    private static final double FRAME_MOTION = 1.5e-3;

    private static final double FRAME_TENSION = 1 / 60.0;
    private static final double FRAME_WINDING = 1e-3;

    private final StepSystem system;
    private final int bodies;
    private final List<Frame> frames = new ArrayList<>();
    private double motion;
    private double tension;
    private double winding;

    FrameRecorder(StepSystem system) {
        this.system = system;
        bodies = system.rig.tree().bodies().size();
    }

    void begin() {
        frames.clear();
        motion = 0;
        tension = 0;
        winding = 0;
        add(Frame.Phase.APPROACH);
    }

    /** @param moved motion of the object in the step [m] */
    void step(Frame.Phase phase, double moved) {
        motion += moved;
        double nowTension = 0;
        double nowWinding = 0;
        double greatest = 1;
        for (int m = 0; m < system.rig.drive().motors(); m++) {
            nowTension = Math.max(nowTension, system.rig.drive().tension(m));
            nowWinding = Math.max(nowWinding, system.rig.drive().wound(m));
            greatest = Math.max(greatest, system.rig.drive().greatest(m));
        }
        if (phase != Frame.Phase.CLOSE
                || motion > FRAME_MOTION
                || Math.abs(nowTension - tension) > FRAME_TENSION * greatest
                || nowWinding - winding > FRAME_WINDING) {
            motion = 0;
            tension = nowTension;
            winding = nowWinding;
            add(phase);
        }
    }

    private void add(Frame.Phase phase) {
        List<Double> tensions = new ArrayList<>();
        for (int m = 0; m < system.rig.drive().motors(); m++) {
            tensions.add(system.rig.drive().tension(m));
        }
        List<Double> angles = new ArrayList<>();
        for (int j = 0; j < system.joints; j++) {
            if (system.rig.tree().coordinates().get(j).flexion()) {
                angles.add(system.q[j]);
            }
        }
        List<Pose> poses = new ArrayList<>();
        List<Double> force = new ArrayList<>();
        for (int b = 0; b < bodies; b++) {
            poses.add(system.bodyPose(b));
            force.add(system.pads.bodyForce(b));
        }
        int n = system.rig.points().points().size();
        float[] pressure = new float[n];
        for (int i = 0; i < n; i++) {
            double area = system.rig.points().points().get(i).area();
            pressure[i] = area > 0 ? (float) (system.pads.force(i) / area) : 0;
        }
        frames.add(new Frame(
                phase,
                tensions,
                angles,
                poses,
                new Pose(new Vec3(system.p[0], system.p[1], system.p[2]), Rotation.of(system.r, 0)),
                force,
                pressure,
                system.tableHeight));
    }

    /** At most {@link #MOST_FRAMES} frames, evenly thinned; the first and last of each phase stay. */
    List<Frame> frames() {
        if (frames.size() <= MOST_FRAMES) {
            return List.copyOf(frames);
        }
        List<Frame> out = new ArrayList<>();
        double every = (double) frames.size() / MOST_FRAMES;
        double next = 0;
        for (int i = 0; i < frames.size(); i++) {
            boolean edge = i == 0
                    || i == frames.size() - 1
                    || frames.get(i).phase() != frames.get(i - 1).phase()
                    || frames.get(i).phase() != frames.get(i + 1).phase();
            if (i >= next || edge) {
                out.add(frames.get(i));
                next = Math.max(next + every, i + 1.0);
            }
        }
        return out;
    }
}
