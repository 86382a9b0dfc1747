package gripwright.study;

import gripwright.check.Check;
import gripwright.closing.Outcome;
import java.util.Optional;

/**
 * One trial of a built hand, or several alike.
 *
 * @param number on the sheet
 * @param hand label of hand or setting
 * @param placed where the object stood; empty if nobody measured it
 * @param outcome undecided = a trial that says nothing about the hand
 * @param pair label shared by trials of other hands at the same place; empty if none
 * @param count of trials like this one, 0 or more; more than 1 only without a pair
 */
public record FieldTrial(
        int number,
        String hand,
        String object,
        String grip,
        Optional<Placed> placed,
        Outcome outcome,
        Optional<TrialReason> reason,
        String note,
        String pair,
        int count) {
    public FieldTrial {
        Check.that(count >= 0, "count is " + count + "; it must be 0 or more");
        Check.that(
                reason.isEmpty() || reason.get().fits(outcome),
                "trial " + number + " is " + outcome.words() + ", with a reason that does not fit");
    }

    public boolean held() {
        return outcome == Outcome.HELD;
    }

    public boolean decided() {
        return outcome.decided();
    }
}
