/** One run of a whole hand on one object: approach, closing, lift; joins mechanics, contact and drive. */
@NullMarked
package gripwright.closing;

import org.jspecify.annotations.NullMarked;
