/** Takes readings from a port, a connection, standard input or a file into an append-only log. */
@org.jspecify.annotations.NullMarked
package gripwright.record;
