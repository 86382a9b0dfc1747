package gripwright.closing;

import gripwright.math.Vec3;

/**
 * A load put on the held object.
 *
 * @param axis what the load is named after: direction of the weight or of the acceleration, world, length 1
 * @param kept what became of it
 * @param moved greatest displacement of the centre of mass in the hand [m]
 * @param turned greatest turn in the hand [rad]
 * @param atRest displacement at the end, at rest: under the load, or what is left of it if it went again [m]; NaN = never
 *     came to rest
 */
public record LoadResult(Vec3 axis, Kept kept, double moved, double turned, double atRest) {}
