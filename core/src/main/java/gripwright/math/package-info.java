/** Small vectors, rotations, dense solvers and seeded random streams; no knowledge of hands. */
@NullMarked
package gripwright.math;

import org.jspecify.annotations.NullMarked;
