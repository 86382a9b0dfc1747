package gripwright.closing;

import gripwright.math.Vec3;

/**
 * Greatest acceleration of the hand in a direction, weight besides, found by halving.
 *
 * @param axis direction of the acceleration, world, length 1; the object is pressed the other way
 * @param survived greatest that was kept [m/s^2]
 * @param failed least that was not [m/s^2]; infinite = the greatest tried was kept
 * @param undecided true if at {@code failed} the calculation did not converge
 */
public record Endurance(Vec3 axis, double survived, double failed, boolean undecided) {}
