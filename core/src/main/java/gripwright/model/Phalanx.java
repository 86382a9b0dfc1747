package gripwright.model;

import gripwright.check.Check;

/**
 * One rigid bone of a finger with its pad.
 *
 * @param length from its joint to the next joint, or to the start of the tip [m]
 * @param width across the finger [m]
 * @param bone thickness of the bone [m]; its middle lies on the line through the joints
 * @param pad on the inner side; its length is centred on the phalanx
 */
public record Phalanx(double length, double width, double bone, PadLayer pad, Tip tip) {
    /** How a phalanx ends: the last one may carry its pad round the end. */
    public enum Tip {
        SQUARE,
        ROUND
    }

    public Phalanx {
        Check.positive(length, "phalanx length", "m");
        Check.positive(width, "phalanx width", "m");
        Check.positive(bone, "bone thickness", "m");
    }

    /** From the joint line to the pad's surface [m]. */
    public double padHeight() {
        return bone / 2 + pad.thickness();
    }
}
