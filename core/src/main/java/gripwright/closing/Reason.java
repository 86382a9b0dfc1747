package gripwright.closing;

import gripwright.model.GraspObject;
import java.util.List;
import java.util.Locale;

/** Says in a sentence, with the run's own numbers, why it ended as it did. */
final class Reason {
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
            return "Only " + (s.links() == 1 ? "one body" : "no body") + " of the hand pressed on " + name
                    + " when the motor stalled; it was not lifted.";
        }
        return s.sink() > c.sink()
                ? capital(name) + " slipped down by more than " + millimetres(c.sink()) + " in the lift."
                : capital(name) + " still touched the table after the lift.";
    }

    private static String first(RunWatch watch, List<String> bodies) {
        return watch.touches.isEmpty()
                ? ""
                : "; " + bodies.get(watch.touches.get(0).body()) + " touched first";
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
