/** Intervals, proportions and sampling plans. */
@NullMarked
package gripwright.stats;

import org.jspecify.annotations.NullMarked;
