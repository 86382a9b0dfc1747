/** Immutable, validated descriptions: what a hand, a pad, an object or a need is. */
@NullMarked
package gripwright.model;

import org.jspecify.annotations.NullMarked;
