/** Receipts: what became of each file that was read. */
@NullMarked
package withers.ingest.receipt;

import org.jspecify.annotations.NullMarked;
