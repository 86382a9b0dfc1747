package gripwright.study;

import gripwright.model.Grip.Approach;
import gripwright.study.TrialsResult.Split;
import gripwright.study.TrialsResult.Split.Side;

/** Words for the directions and parts of the sampled range, as seen from the hand. */
final class Directions {
    private Directions() {}

    /**
     * Such as "towards the palm (+y)".
     *
     * @param sign 1 or -1
     */
    static String along(SampledInput axis, int sign, Approach approach) {
        String name = "(" + (sign > 0 ? "+" : "-") + axis.words() + ")";
        if (axis == SampledInput.X) {
            return (sign > 0 ? "along the closing direction " : "against the closing direction ") + name;
        }
        if (approach == Approach.SIDE) {
            // From the side the hand stands at +y.
            return (sign > 0 ? "towards the palm " : "away from the palm ") + name;
        }
        return "across the closing direction " + name;
    }

    /** Completes "it fails more often when ...". */
    static String when(Split split, String object, Approach approach) {
        SampledInput input = SampledInput.of(split.input());
        String amount = Phrases.twoDigits(split.threshold() * input.perUnit()) + " " + input.unit();
        Side side = split.side();
        return switch (input) {
            case X, Y ->
                "the " + object + " is more than " + amount + " off "
                        + (side == Side.EITHER ? axis(input, approach) : along(input, sign(side), approach));
            case TURN ->
                "the " + object + " is turned more than " + amount
                        + pick(side, " counter-clockwise seen from above", " clockwise seen from above", " either way");
            case HEIGHT ->
                "the hand is more than " + amount + pick(side, " too high", " too low", " too high or too low");
            case PAD_FRICTION, TABLE_FRICTION, MASS ->
                (input == SampledInput.MASS ? "the mass of the " + object : input.words())
                        + " is more than " + amount
                        + pick(side, " above its mean", " below its mean", " away from its mean");
            case PAD_STIFFNESS ->
                "the pads are more than " + amount
                        + pick(side, " stiffer than nominal", " softer than nominal", " off nominal stiffness");
            case SPRING_RATE ->
                "the joint springs are more than " + amount
                        + pick(side, " stiffer than nominal", " softer than nominal", " off their nominal rate");
        };
    }

    private static String axis(SampledInput axis, Approach approach) {
        if (axis == SampledInput.X) {
            return "along the closing direction (x), either way";
        }
        return approach == Approach.SIDE
                ? "towards or away from the palm (y)"
                : "across the closing direction (y), either way";
    }

    private static int sign(Side side) {
        return side == Side.ABOVE ? 1 : -1;
    }

    private static String pick(Side side, String above, String below, String either) {
        return switch (side) {
            case ABOVE -> above;
            case BELOW -> below;
            case EITHER -> either;
        };
    }
}
