/** Shapes of objects as signed distance with derivatives, and where they touch a table. */
@NullMarked
package gripwright.shape;

import org.jspecify.annotations.NullMarked;
