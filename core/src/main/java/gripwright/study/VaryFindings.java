package gripwright.study;

import gripwright.study.VaryResult.Difference;
import gripwright.study.VaryResult.Effect;
import gripwright.units.QuantityText;
import java.util.Optional;

/** The best single change of a hand, in sentences that carry their numbers. */
public final class VaryFindings {
    private VaryFindings() {}

    /** Which change, by how much on the samples it was chosen on, and by how much on fresh ones. */
    public static String best(VaryResult vary) {
        Optional<Effect> best = vary.best();
        if (best.isEmpty()) {
            return vary.effects().isEmpty()
                    ? "No change was finished before the stop."
                    : "No single change of the design raised the success on these runs.";
        }
        Effect e = best.get();
        return (e.success().low() > 0
                        ? "Best single change: " + e.words() + ": " + by(e) + "."
                        : "Most promising single change: " + e.words() + ": " + by(e)
                                + "; its interval includes none, so it can be luck.")
                + vary.again().map(VaryFindings::again).orElse("");
    }

    private static String again(Effect e) {
        Difference s = e.success();
        return " On fresh samples, which had no part in choosing it: " + by(e)
                + (s.low() > 0 ? "." : s.high() < 0 ? ": it does harm." : "; there its interval includes none.");
    }

    private static String by(Effect e) {
        Difference s = e.success();
        return points(s.value()) + " points of success (" + points(s.low()) + " to " + points(s.high()) + "), "
                + signed(1e4 * e.area().value()) + " cm2 of capture area";
    }

    /** Percentage points with a sign. */
    public static String points(double share) {
        return signed(1e2 * share);
    }

    /** One decimal with a sign. */
    public static String signed(double value) {
        double rounded = Math.rint(10 * value) / 10 + 0.0; // no "-0"
        return (rounded > 0 ? "+" : "") + QuantityText.number(rounded, 4);
    }
}
