package gripwright.pad;

import gripwright.check.Check;

/**
 * One chip under a round pad, as a body of revolution about the middle of the chip [m]. The board is z = 0.
 *
 * @param overBoard rubber over the board
 * @param chipRadius of the circle with the area of the chip's outline; 0 for a die flush with the board
 * @param chipHeight of the lid's outer face over the board; 0 for a die flush with the board
 * @param portRadius of the hole in the lid; of the die if it is flush with the board
 * @param lid thickness of the lid
 * @param cavityRadius of the room under the lid
 * @param cavityHeight of the room under the lid; its floor is the die
 * @param outerRadius where the pad ends
 */
public record PadGeometry(
        double overBoard,
        double chipRadius,
        double chipHeight,
        double portRadius,
        double lid,
        double cavityRadius,
        double cavityHeight,
        double outerRadius) {
    /** Edge far enough not to matter: 5 times the rubber's height changes the peak by under 0.1 %. */
    private static final double FAR = 5;

    public PadGeometry {
        Check.positive(overBoard, "rubber over the board", "m");
        Check.positive(portRadius, "port radius", "m");
        Check.that(
                outerRadius > Math.max(portRadius, Math.max(chipRadius, cavityRadius)),
                "the pad ends at a radius of " + outerRadius + " m; it must be wider than chip, cavity and port");
        Check.that(
                chipHeight >= 0 && chipHeight < overBoard,
                "the chip is " + chipHeight + " m high under " + overBoard + " m of rubber; it must be lower");
        if (chipHeight > 0) {
            Check.positive(lid, "lid", "m");
            Check.positive(cavityRadius, "cavity radius", "m");
            Check.positive(cavityHeight, "cavity height", "m");
            Check.that(
                    cavityHeight + lid < chipHeight,
                    "lid and cavity are " + (lid + cavityHeight) + " m high in a chip of " + chipHeight
                            + " m; they must be lower together");
            Check.that(
                    portRadius < chipRadius && cavityRadius < chipRadius,
                    "port (" + portRadius + " m) and cavity (" + cavityRadius + " m) must lie within the chip's radius "
                            + chipRadius + " m");
            Check.that(
                    portRadius < cavityRadius,
                    "the port's radius " + portRadius + " m must be below the cavity's, " + cavityRadius + " m");
        }
    }

    /** A die of that radius flush with the board. */
    public static PadGeometry flush(double thickness, double dieRadius) {
        return new PadGeometry(thickness, 0, 0, dieRadius, 0, 0, 0, FAR * thickness);
    }

    /** A chip under so much rubber, the pad's edge far away. */
    public static PadGeometry of(Chip chip, double overBoard) {
        return new PadGeometry(
                overBoard,
                chip.equalAreaRadius(),
                chip.height(),
                chip.portRadius(),
                chip.lid(),
                chip.cavityRadius(),
                chip.cavityHeight(),
                FAR * overBoard);
    }

    public PadGeometry endingAt(double radius) {
        return new PadGeometry(overBoard, chipRadius, chipHeight, portRadius, lid, cavityRadius, cavityHeight, radius);
    }

    /** Rubber over the lid. */
    public double overChip() {
        return overBoard - chipHeight;
    }
}
