/** Waiting for what other threads do. */
@NullMarked
package withers.waiting;

import org.jspecify.annotations.NullMarked;
