package gripwright.closing;

import gripwright.math.Vec3;
import java.util.List;

/**
 * One pull along, or turn about, a direction through the object's centre of mass, weight and all.
 *
 * @param axis direction of the pull or of the moment (right-handed), world, length 1
 * @param turning true = turned about the axis, false = pulled along it
 * @param peak greatest force [N] or torque [N m] of the test
 * @param peakAt displacement in the hand there [m or rad]
 * @param nearlyAt displacement at which 99 % of the peak were first reached [m or rad]
 * @param reached displacement at the end of the test [m or rad]
 * @param lostAt displacement up to which a body still pressed [m or rad]; NaN = still so at the end
 * @param kind how the hold gave way
 * @param first bodies that gave way first: all their pressed points slid, or they lost contact; empty = none did
 * @param firstLoad force or torque then [N or N m]; NaN = none did
 * @param curve displacement and load along the way
 * @param trouble what did not converge; empty unless UNDECIDED
 */
public record PullResult(
        Vec3 axis,
        boolean turning,
        double peak,
        double peakAt,
        double nearlyAt,
        double reached,
        double lostAt,
        Kind kind,
        List<String> first,
        double firstLoad,
        List<Sample> curve,
        String trouble) {
    /** How it gave way. */
    public enum Kind {
        /** Nearly all of the peak came well before the end of the travel: from there on it slid or was levered out. */
        SLIPS("slips"),
        /** The load still rose at the end of the travel: the hand gives, the grip does not let go. */
        YIELDS("yields"),
        /** Stronger than the test pulls. */
        BEYOND("holds more"),
        UNDECIDED("undecided");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** The word shown to people. */
        public String words() {
            return words;
        }
    }

    /** @param moved displacement [m or rad] @param load [N or N m] */
    public record Sample(double moved, double load) {}

    public PullResult {
        first = List.copyOf(first);
        curve = List.copyOf(curve);
    }

    /** Load when a displacement was first reached, between two looks in a straight line; NaN if it was not reached. */
    public double loadAt(double displacement) {
        for (int i = 1; i < curve.size(); i++) {
            Sample a = curve.get(i - 1);
            Sample b = curve.get(i);
            if (b.moved() >= displacement && b.moved() > a.moved()) {
                double share = Math.max(0, (displacement - a.moved()) / (b.moved() - a.moved()));
                return a.load() + share * (b.load() - a.load());
            }
        }
        return Double.NaN;
    }
}
