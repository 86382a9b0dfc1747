package gripwright.study;

import gripwright.closing.Conditions;
import gripwright.closing.Outcome;

/** One finished run of the trials. */
record Run(Conditions conditions, Outcome outcome) {
    boolean held() {
        return outcome == Outcome.HELD;
    }

    boolean decided() {
        return outcome.decided();
    }
}
