package gripwright.signal;

import gripwright.check.Check;

/**
 * At which rates detection limits are stated.
 *
 * @param falseAlarm of one reading at rest [-]
 * @param miss of one reading under the detection limit [-]
 * @param zeros readings averaged for the zero
 */
public record Rates(double falseAlarm, double miss, int zeros) {
    public Rates {
        Check.that(falseAlarm > 0 && falseAlarm < 1 && miss > 0 && miss < 1, "rates lie between 0 and 1");
        Check.that(zeros >= 1, "the zero needs at least one reading");
    }
}
