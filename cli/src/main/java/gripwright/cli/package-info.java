/** The command line: words in, words and exit codes out. */
@NullMarked
package gripwright.cli;

import org.jspecify.annotations.NullMarked;
