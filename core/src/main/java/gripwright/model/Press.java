package gripwright.model;

import gripwright.check.Check;
import gripwright.math.Vec3;

/**
 * A job for a finger that a grip leaves free: press on one place of the held object, such as a button or a lever.
 *
 * <p>The drive does not pull a free finger, so the job says what does: a line of its own along the finger's guides.
 *
 * @param name such as "spray"
 * @param grip that holds the object meanwhile
 * @param finger that presses with its last phalanx; not one of the grip's
 * @param greatestTension of the finger's own line before its sheath [N]
 * @param point pressed on, in the frame of the object's shape [m]; what is pressed need not be part of the shape
 * @param direction of the press, in the same frame, length 1
 * @param force wanted along the direction [N]
 * @param travel by which the pressed place gives way along the direction, the object staying [m]
 */
public record Press(
        String name,
        String grip,
        String finger,
        double greatestTension,
        Vec3 point,
        Vec3 direction,
        double force,
        double travel) {
    public Press {
        Check.positive(greatestTension, "greatest tension of task " + name, "N");
        Check.positive(force, "force of task " + name, "N");
        Check.notNegative(travel, "travel of task " + name, "m");
        direction = direction.unit();
    }
}
