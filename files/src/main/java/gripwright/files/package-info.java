/** Reads and writes the files of a project folder; with report the only place that knows file formats. */
@NullMarked
package gripwright.files;

import org.jspecify.annotations.NullMarked;
