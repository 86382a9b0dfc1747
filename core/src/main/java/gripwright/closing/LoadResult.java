package gripwright.closing;

import gripwright.math.Vec3;

/**
 * A load put on the held object.
 *
 * @param axis what the load is named after: direction of the weight or of the acceleration, world, length 1
 * @param kept what became of it
 * @param moved greatest displacement of the centre of mass in the hand [m]
 * @param turned greatest turn in the hand [rad]
 * @param left displacement that is left once the load is gone again [m]; NaN if it does not go
 */
public record LoadResult(Vec3 axis, Kept kept, double moved, double turned, double left) {}
