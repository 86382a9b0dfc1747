/** How fast the parts are, and whether a change left the answers alone. */
@NullMarked
package gripwright.benchmarks;

import org.jspecify.annotations.NullMarked;
