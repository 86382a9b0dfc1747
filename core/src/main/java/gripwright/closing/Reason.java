package gripwright.closing;

import gripwright.model.GraspObject;
import gripwright.model.Hand;
import gripwright.model.Phalanx;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Says in a sentence, with the run's own numbers, why it ended as it did. */
final class Reason {
    /** Indentation over thickness up to which the linear pad is trusted [-]. */
    private static final double LINEAR = 0.15;

    private Reason() {}

    static String of(
            ClosingSummary s, Criteria c, GraspObject object, RunWatch watch, List<String> bodies, String trouble) {
        String name = "the " + object.name();
        return switch (s.outcome()) {
            case UNDECIDED -> "The calculation did not converge: " + trouble + ".";
            case LANDED_ON_IT ->
                "On its way in the hand pressed on " + (watch.landedOnTable ? "the table" : name) + " with "
                        + newtons(s.landingForce()) + ", more than " + newtons(c.landingForce()) + ".";
            case SQUEEZED -> squeezed(s, object, watch, bodies);
            case MISSED -> "Nothing touched " + name + ".";
            case THROWN_OUT -> "The closing drove " + name + " more than " + millimetres(c.thrown()) + " away.";
            case KNOCKED_OVER ->
                "The closing tipped " + name + " by " + degrees(s.tilt()) + " and did not hold it"
                        + first(watch, bodies) + ".";
            case PUSHED_AWAY ->
                "The closing pushed " + name + " " + millimetres(s.travel()) + " away (x "
                        + millimetres(s.travelX()) + ", y " + millimetres(s.travelY()) + ") and did not hold it"
                        + first(watch, bodies) + ".";
            case DROPPED -> dropped(s, c, name);
            case HELD ->
                capital(name) + " left the table with " + s.links() + " bodies pressing on it; it sank "
                        + millimetres(s.sink()) + " and was moved " + millimetres(s.travel()) + ", tipped "
                        + degrees(s.tilt()) + ".";
        };
    }

    private static String squeezed(ClosingSummary s, GraspObject object, RunWatch watch, List<String> bodies) {
        if (watch.squeezingBody >= 0 && object.squeezeForce().isPresent()) {
            return capital(bodies.get(watch.squeezingBody)) + " pressed with " + newtons(s.peakForce()) + "; the "
                    + object.name() + " bears " + newtons(object.squeezeForce().getAsDouble()) + ".";
        }
        return "A pad pressed with " + kilopascals(s.peakPressure()) + "; the " + object.name() + " bears "
                + kilopascals(object.squeezePressure().orElse(Double.NaN)) + ".";
    }

    private static String dropped(ClosingSummary s, Criteria c, String name) {
        if (s.links() < 2 && s.sink() == 0) {
            return (s.links() == 1 ? "Only one body of the hand pressed on " : "Nothing of the hand pressed on ") + name
                    + " when the motor stalled, so it stayed on the table.";
        }
        return s.sink() > c.sink()
                ? capital(name) + " was gripped and raised, then slipped down by more than " + millimetres(c.sink())
                        + "; the" + " closing had moved it " + millimetres(s.travel()) + "."
                : capital(name) + " still touched the table after the lift.";
    }

    /**
     * What to bear in mind about this run's numbers.
     *
     * <p>A pad as a bed of springs follows the linear rubber layer up to an indentation of about 15 % of its thickness
     * (own ring-collocation solution of the layer; a usual limit of linear rubber elasticity, common practice, no source).
     */
    static List<String> cautions(ClosingSummary s, Hand hand) {
        double softest = Stream.concat(
                        Stream.of(hand.palm().pad()),
                        hand.fingers().stream()
                                .flatMap(f -> f.phalanges().stream())
                                .map(Phalanx::pad))
                .mapToDouble(
                        pad -> pad.rubber().foundationFactor() * pad.rubber().modulus())
                .min()
                .orElse(Double.POSITIVE_INFINITY);
        double indentation = s.peakPressure() / softest;
        if (indentation <= LINEAR) {
            return List.of();
        }
        return List.of("At its worst point a pad was pressed in by about " + Math.round(100 * indentation)
                + " % of its thickness (" + kilopascals(s.peakPressure()) + "); beyond " + Math.round(100 * LINEAR)
                + " % the linear pad is a rough guide: it is softer here than rubber is.");
    }

    private static String first(RunWatch watch, List<String> bodies) {
        return watch.firstBody() < 0 ? "" : "; " + bodies.get(watch.firstBody()) + " touched first";
    }

    private static String capital(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    private static String rounded(double value, int digits) {
        double scale = StrictMath.pow(10, digits);
        double r = Math.rint(value * scale) / scale;
        return digits == 0 ? String.valueOf((long) r) : String.valueOf(r == 0 ? 0.0 : r);
    }

    static String newtons(double f) {
        return rounded(f, f < 10 ? 2 : 1) + " N";
    }

    static String millimetres(double x) {
        return rounded(1e3 * x, 1) + " mm";
    }

    static String degrees(double a) {
        return rounded(Math.toDegrees(a), 1) + " deg";
    }

    static String kilopascals(double p) {
        return rounded(p / 1e3, 1) + " kPa";
    }
}
