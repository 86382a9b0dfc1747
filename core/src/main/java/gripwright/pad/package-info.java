/** Barometer chips under cast rubber: what their dies feel, how well, and how fast they can be read. */
@NullMarked
package gripwright.pad;

import org.jspecify.annotations.NullMarked;
