/** The event log: streams, batches, import markers, and what every implementation promises. */
@NullMarked
package withers.log;

import org.jspecify.annotations.NullMarked;
