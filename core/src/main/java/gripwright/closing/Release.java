package gripwright.closing;

import java.util.List;

/**
 * Letting go: the hand is lowered until the object stands where it was picked up, the motors pay out, the hand goes back
 * the way it came.
 *
 * @param outcome KEPT is a failure here: the object came along; LOST = let go
 * @param fingers what is left in each finger after paying out
 * @param palmForce of the palm on the object after paying out [N]
 * @param dragged displacement of the object while the hand went back [m]; NaN = not reached
 * @param letGoAt share of the wound length still wound when the last finger let go [-]; NaN = one never did
 */
public record Release(
        Kept outcome, List<FingerLeft> fingers, double palmForce, double dragged, double letGoAt, String trouble) {
    /**
     * @param finger its name
     * @param angle greatest difference of a joint from its open angle [rad]
     * @param force on the object [N]
     * @param tension of its tendon [N]
     */
    public record FingerLeft(String finger, double angle, double force, double tension) {}

    public Release {
        fingers = List.copyOf(fingers);
    }

    /** True if nothing pressed on the object any more and it stayed when the hand went. */
    public boolean free() {
        return outcome == Kept.LOST;
    }
}
