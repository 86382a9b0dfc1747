/** What a log of pads says: clocks, forces, models of taxels, noise, and forces back from readings. */
@NullMarked
package gripwright.signal;

import org.jspecify.annotations.NullMarked;
