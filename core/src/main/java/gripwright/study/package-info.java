/** Many runs and what they say together: capture maps and virtual trials. */
@NullMarked
package gripwright.study;

import org.jspecify.annotations.NullMarked;
