package gripwright.closing;

import gripwright.math.Vec3;
import java.util.List;

/**
 * How the held object springs back from small loads, before anything slides.
 *
 * @param matrix 6 x 6, row-major: loads (force [N], then torque about the centre of mass [N m]) per displacement of the
 *     centre of mass [m] and turn [rad], world axes
 * @param softestPush direction in which a force moves the centre farthest, the object free to turn
 * @param pushStiffness there [N/m]
 * @param softestTurn axis about which a torque turns the object farthest, its centre free to move
 * @param turnStiffness there [N m/rad]
 * @param stable false if some small displacement does not spring back
 */
public record GraspStiffness(
        List<Double> matrix,
        Vec3 softestPush,
        double pushStiffness,
        Vec3 softestTurn,
        double turnStiffness,
        boolean stable) {
    public GraspStiffness {
        matrix = List.copyOf(matrix);
    }
}
