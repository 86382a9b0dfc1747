package gripwright.closing;

import gripwright.math.Vec3;

/**
 * One integration point of a pad.
 *
 * @param body index into {@link Frame#bodies()}
 * @param place in the body's frame [m]
 * @param normal out of the pad in the body's frame [-]
 * @param area it stands for [m^2]
 */
public record PadPoint(int body, Vec3 place, Vec3 normal, double area) {}
