/** Motor, winch, tendons, differentials and their friction. */
@NullMarked
package gripwright.drive;

import org.jspecify.annotations.NullMarked;
