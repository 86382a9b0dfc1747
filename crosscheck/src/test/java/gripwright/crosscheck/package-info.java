/** The same closings on general-purpose rigid-body engines, and the pages of agreement and accuracy. Tests only. */
@NullMarked
package gripwright.crosscheck;

import org.jspecify.annotations.NullMarked;
