/** Finger kinematics, joint springs and stops. */
@NullMarked
package gripwright.mechanics;

import org.jspecify.annotations.NullMarked;
