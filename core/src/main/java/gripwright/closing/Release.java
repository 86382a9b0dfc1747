package gripwright.closing;

import java.util.List;

/**
 * Letting go: the hand is lowered until the object stands where it was picked up, the motors pay out, the hand goes back
 * the way it came.
 *
 * @param how it ended
 * @param fingers what is left in each finger after paying out
 * @param palmForce of the palm on the object after paying out [N]
 * @param dragged displacement of the object while the hand went back [m]; NaN = not reached
 * @param letGoAt share of the wound length still wound when the last finger left the object [-]; NaN = one never did
 * @param trouble what did not converge; empty unless UNDECIDED
 */
public record Release(
        How how, List<FingerLeft> fingers, double palmForce, double dragged, double letGoAt, String trouble) {
    /** How letting go ended. */
    public enum How {
        /** No finger pressed any more, and the object stayed when the hand went. */
        LET_GO("let go"),
        /** A finger still pressed, or the object came along. */
        NOT_LET_GO("not let go"),
        UNDECIDED("undecided");

        private final String words;

        How(String words) {
            this.words = words;
        }

        /** The word shown to people. */
        public String words() {
            return words;
        }
    }

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
}
