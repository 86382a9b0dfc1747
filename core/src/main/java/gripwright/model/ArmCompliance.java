package gripwright.model;

import gripwright.check.Check;
import gripwright.math.Vec3;

/**
 * How much the arm gives at the palm, as six independent springs in the hand frame.
 *
 * @param stiffness along x, y, z [N/m]
 * @param turning about x, y, z through the origin of the hand frame [N m/rad]
 */
public record ArmCompliance(Vec3 stiffness, Vec3 turning) {
    public ArmCompliance {
        for (double k : new double[] {stiffness.x(), stiffness.y(), stiffness.z()}) {
            Check.positive(k, "arm stiffness", "N/m");
        }
        for (double k : new double[] {turning.x(), turning.y(), turning.z()}) {
            Check.positive(k, "arm turning stiffness", "N*m/rad");
        }
    }
}
