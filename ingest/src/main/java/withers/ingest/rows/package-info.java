/** Rows under a header: what every reader of a kind of file makes, and all that others need. */
@NullMarked
package withers.ingest.rows;

import org.jspecify.annotations.NullMarked;
