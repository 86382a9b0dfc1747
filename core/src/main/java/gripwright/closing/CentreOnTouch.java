package gripwright.closing;

import gripwright.model.Finger;
import gripwright.model.Grip;
import gripwright.model.Hand;
import java.util.Optional;

/**
 * All motors stop at the first touch. The arm then moves the hand away from the finger that felt it, along the closing
 * direction, until a finger of the other side feels it too, and half of that way back: the object stands in the middle
 * between the two sides, whatever its size. Then all motors tighten.
 */
final class CentreOnTouch extends Policy {
    /** A finger that closes farther than this from the closing direction [-, cosine] is on neither side. */
    private static final double SIDEWAYS = 0.3;

    @Override
    public String word() {
        return "centre";
    }

    @Override
    public String says() {
        return "all motors stop at the first touch; the arm moves the hand away from it until the other side feels it too,"
                + " then half the way back; then all tighten";
    }

    @Override
    public boolean feels() {
        return true;
    }

    /** +1 for a finger that closes along +x, -1 against, 0 for one that does neither or takes no part. */
    static int side(Hand hand, Grip grip, String finger) {
        for (Finger f : hand.fingers()) {
            if (f.name().equals(finger) && grip.fingers().contains(finger)) {
                double x = StrictMath.cos(f.closesToward() + grip.turned().getOrDefault(finger, 0.0));
                return x > SIDEWAYS ? 1 : x < -SIDEWAYS ? -1 : 0;
            }
        }
        return 0;
    }

    @Override
    public Optional<String> refusal(Hand hand, Grip grip, Sensing sensing) {
        boolean along = false;
        boolean against = false;
        for (Sensing.Strip strip : sensing.strips()) {
            int side = side(hand, grip, strip.place().on());
            along |= side > 0;
            against |= side < 0;
        }
        return along && against
                ? Optional.empty()
                : Optional.of("'centre' needs a sensing pad on a finger of each side in grip '" + grip.name() + "'; "
                        + (along || against ? "one side has none" : "neither side has one")
                        + ": add one in pads.yaml");
    }

    @Override
    Stepper.End beforeTightening(TouchRun run) {
        Stepper.End end = run.windUntilFelt(chip -> run.side(chip) != 0);
        int first = run.feltBy();
        if (end != Stepper.End.DONE) {
            return end;
        }
        if (first < 0) {
            run.say("nothing was felt; tightened where it stood");
            return end;
        }
        int side = run.side(first);
        double far = -side * run.room();
        end = run.moveHandUntilFelt(far, chip -> run.side(chip) == -side);
        if (end != Stepper.End.DONE) {
            return end;
        }
        double moved = run.shift();
        boolean found = run.feltBy() >= 0;
        run.say(found ? "" : "the other side felt nothing; the hand went back to where it came from");
        return run.moveHand(found ? moved / 2 : 0);
    }
}
