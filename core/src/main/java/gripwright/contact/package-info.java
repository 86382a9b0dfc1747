/** Where and how hard bodies touch: rubber pads, bone, table, finger against finger; friction. */
@NullMarked
package gripwright.contact;

import org.jspecify.annotations.NullMarked;
