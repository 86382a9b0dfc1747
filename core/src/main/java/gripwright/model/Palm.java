package gripwright.model;

import gripwright.check.Check;

/**
 * The palm: a plate with a rubber pad.
 *
 * <p>Hand frame: origin in the middle of the pad's front surface, x the closing direction, y across, z out of the palm
 * towards the object.
 *
 * @param sizeX along x [m]
 * @param sizeY along y [m]
 * @param bone thickness of the plate behind the pad [m]
 * @param pad its length is along x; it is as wide as the palm
 */
public record Palm(double sizeX, double sizeY, double bone, PadLayer pad) {
    public Palm {
        Check.positive(sizeX, "palm size along x", "m");
        Check.positive(sizeY, "palm size along y", "m");
        Check.positive(bone, "palm bone thickness", "m");
    }
}
