package gripwright.closing;

import gripwright.model.Grip;
import gripwright.model.Hand;
import java.util.Optional;

/**
 * What the motors and the arm do before all motors tighten to their stall. A new one is one file beside this and one
 * line in {@link Policies}.
 */
public abstract class Policy {
    Policy() {}

    /** What it is called on the command line and in files. */
    public abstract String word();

    /** What it does, in a sentence. */
    public abstract String says();

    /** Whether it needs chips. */
    public abstract boolean feels();

    /** Why a hand cannot do this with a grip, and what would help; empty if it can. */
    public Optional<String> refusal(Hand hand, Grip grip, Sensing sensing) {
        return Optional.empty();
    }

    /** Brings the arrived, open hand to where all motors tighten; DONE stands for "go on". */
    abstract Stepper.End beforeTightening(TouchRun run);
}
