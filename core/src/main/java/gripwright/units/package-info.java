/** Turns text such as {@code 12 mm} into SI numbers and back; used at the edges only. */
@NullMarked
package gripwright.units;

import org.jspecify.annotations.NullMarked;
