/** Reads CSV files, strictly: a broken file is refused whole, with the place of the break. */
@NullMarked
package withers.ingest.csv;

import org.jspecify.annotations.NullMarked;
