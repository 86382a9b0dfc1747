/** Results as JSON text; the published schemas are in docs/schema. */
@NullMarked
package gripwright.files.json;

import org.jspecify.annotations.NullMarked;
