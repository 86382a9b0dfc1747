/** Tables, pictures and pages from results. */
@NullMarked
package gripwright.report;

import org.jspecify.annotations.NullMarked;
