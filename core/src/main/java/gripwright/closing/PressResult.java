package gripwright.closing;

import gripwright.model.Press;
import java.util.List;

/**
 * Whether a free finger can do a job on the held object, and what the hold bears of it. Forces are components along the
 * direction of the task.
 *
 * @param reach whether the finger's last pad comes over the place on the way its own line draws it
 * @param miss least distance of that pad from the place on the way [m]; 0 if it reaches it
 * @param met the body that meets the object, or comes too near to another finger, before that; empty = none
 * @param touchTension of the finger's own line when it touches the place [N]; NaN = it does not
 * @param posture joint angles then, or at the greatest tension if it does not touch [rad]
 * @param fingerForce at the greatest tension [N]; NaN = it does not touch
 * @param lastForce the same once the place has given way as far as it is to, and the hold with it [N]; NaN = not so far
 * @param neededTension of its own line for the force wanted, at the start [N]; NaN = more than the greatest
 * @param off angle between the finger's force and the direction of the task [rad]; NaN = it does not touch
 * @param slides the pad slides over the place while it presses
 * @param followed travel through which the finger can follow the place [m]
 * @param push of the hold: the place pushed along the finger's own force, or the direction wanted if it does not touch
 * @param holdForce greatest force of that push [N], along the direction of the task
 * @param give of the place in the hand under the force wanted [m]; NaN = the hold does not bear it
 * @param turned turn of the object in the hand at the end of the push [rad]
 * @param share of the place's motion that the centre of mass made as well [-]: near 1 it slides, near 0 it turns
 * @param trouble what did not converge; empty unless UNDECIDED
 */
public record PressResult(
        Press task,
        Reach reach,
        double miss,
        String met,
        double touchTension,
        List<Double> posture,
        double fingerForce,
        double lastForce,
        double neededTension,
        double off,
        boolean slides,
        double followed,
        PullResult push,
        double holdForce,
        double give,
        double turned,
        double share,
        Verdict verdict,
        String trouble) {
    /** How the finger comes to the place. */
    public enum Reach {
        REACHES("reaches it"),
        BESIDE("the place lies beside its plane"),
        PAST("it has passed the place before it is pulled"),
        SHORT("its pad does not come over the place"),
        BLOCKED("it meets something else first");

        private final String words;

        Reach(String words) {
            this.words = words;
        }

        /** Shown to people. */
        public String words() {
            return words;
        }
    }

    /** The answer, in the order in which it is sought. */
    public enum Verdict {
        WORKS("works"),
        NOT_REACHED("not reached"),
        SLIDES_OFF("the fingertip slides off"),
        CANNOT_FOLLOW("the finger cannot follow so far"),
        TOO_WEAK("the finger's tendon is too weak"),
        TURNS("the object turns in the grip"),
        SLIPS("the object slips in the grip"),
        YIELDS("the hold yields"),
        UNDECIDED("undecided");

        private final String words;

        Verdict(String words) {
            this.words = words;
        }

        /** Shown to people. */
        public String words() {
            return words;
        }
    }

    public PressResult {
        posture = List.copyOf(posture);
    }

    /** Greatest force along the direction that finger and hold both bear [N]; 0 if the finger does not reach it. */
    public double greatest() {
        if (reach != Reach.REACHES) {
            return 0;
        }
        double finger = Double.isNaN(lastForce) ? fingerForce : Math.min(fingerForce, lastForce);
        return Math.max(0, Math.min(finger, holdForce));
    }
}
