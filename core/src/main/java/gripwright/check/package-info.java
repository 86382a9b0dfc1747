/** Argument checks whose messages hold name, value, unit and rule. */
@NullMarked
package gripwright.check;

import org.jspecify.annotations.NullMarked;
