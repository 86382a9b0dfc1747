/** Numbers from outside, and what the program found beside them. */
@NullMarked
package gripwright.truth;

import org.jspecify.annotations.NullMarked;
