/** Tables as Parquet, by DuckDB. Optional: found at run time if its jar is there. */
@org.jspecify.annotations.NullMarked
package gripwright.tables;
