/**
 * The bench: a project in a browser, question by question. A local HTTP server over the same study code as the command
 * line. Nothing here knows how a closing is computed; browser code lies in the resources.
 */
@NullMarked
package gripwright.bench;

import org.jspecify.annotations.NullMarked;
