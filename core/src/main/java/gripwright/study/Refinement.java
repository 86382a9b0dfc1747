package gripwright.study;

import gripwright.closing.ClosingDetail;
import gripwright.closing.ClosingDetail.JointState;
import gripwright.closing.Numerics;
import gripwright.math.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * One closing with one choice of the calculation made finer, against the same closing as usual.
 *
 * @param choice that was halved
 * @param usual closing
 * @param finer closing
 */
public record Refinement(String choice, ClosingDetail usual, ClosingDetail finer) {
    /** Halves step, pad pitch and damping in turn. */
    public static List<Refinement> of(Numerics numerics, Function<Numerics, ClosingDetail> closing) {
        ClosingDetail usual = closing.apply(numerics);
        List<Refinement> all = new ArrayList<>();
        all.add(new Refinement(
                "half the step", usual, closing.apply(numerics.withStepScale(numerics.stepScale() / 2))));
        all.add(new Refinement(
                "half the pad pitch",
                usual,
                closing.apply(numerics.withPadPoints(2 * numerics.padRows(), 2 * numerics.padColumns()))));
        all.add(new Refinement(
                "half the damping", usual, closing.apply(numerics.withViscosityScale(numerics.viscosityScale() / 2))));
        return all;
    }

    /** True if the outcome is another. */
    public boolean turns() {
        return finer.summary().outcome() != usual.summary().outcome();
    }

    /** Distance between the ends of the object's centre of mass, seen from the lifted hand's table [m]. */
    public double moved() {
        return finer.centreOfMass().minus(usual.centreOfMass()).length();
    }

    /** Angle between the object's end poses [rad]. */
    public double turned() {
        double trace = 0;
        for (Vec3 axis : List.of(Vec3.X, Vec3.Y, Vec3.Z)) {
            trace += usual.object()
                    .rotation()
                    .apply(axis)
                    .dot(finer.object().rotation().apply(axis));
        }
        return StrictMath.acos(Math.max(-1, Math.min(1, (trace - 1) / 2)));
    }

    /** Greatest change of a turning joint's angle at the end [rad]. */
    public double joint() {
        double most = 0;
        for (int i = 0; i < usual.joints().size(); i++) {
            JointState a = usual.joints().get(i);
            if (!a.slides()) {
                most = Math.max(most, Math.abs(finer.joints().get(i).value() - a.value()));
            }
        }
        return most;
    }

    /** Change of the greatest force of one body on the object [N]. */
    public double force() {
        return finer.summary().peakForce() - usual.summary().peakForce();
    }

    /** Change of the greatest pad pressure [Pa]. */
    public double pressure() {
        return finer.summary().peakPressure() - usual.summary().peakPressure();
    }
}
