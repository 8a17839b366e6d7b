/** Receipts as JSON. */
@NullMarked
package withers.codec.receipt;

import org.jspecify.annotations.NullMarked;
