/** Imports: exports in, events out, whole or not at all. */
@NullMarked
package withers.ingest;

import org.jspecify.annotations.NullMarked;
