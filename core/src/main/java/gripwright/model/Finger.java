package gripwright.model;

import gripwright.check.Check;
import gripwright.math.Vec3;
import java.util.List;

/**
 * One finger.
 *
 * @param base where the first joint sits, in the hand frame [m]
 * @param closesToward direction in the palm plane towards which the finger flexes [rad], 0 = +x, 90 degrees = +y
 * @param phalanges proximal first, 1 to 4
 * @param joints one per phalanx, proximal first
 */
public record Finger(String name, Vec3 base, double closesToward, List<Phalanx> phalanges, List<Joint> joints) {
    public static final int MOST_PHALANGES = 4;

    public Finger {
        phalanges = List.copyOf(phalanges);
        joints = List.copyOf(joints);
        Check.that(
                !phalanges.isEmpty() && phalanges.size() <= MOST_PHALANGES,
                "finger " + name + " has " + phalanges.size() + " phalanges; expected 1 to " + MOST_PHALANGES);
        Check.count(joints.size(), phalanges.size(), "joints of finger " + name, "one per phalanx");
    }

    /** From the first joint to the end of the last phalanx, stretched [m]. */
    public double reach() {
        return phalanges.stream().mapToDouble(Phalanx::length).sum();
    }
}
