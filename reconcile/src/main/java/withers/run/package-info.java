/**
 * A run: the log replayed partition by partition, what crosses partitions put together, every
 * animal judged, and the life of follow-ups carried on.
 */
@NullMarked
package withers.run;

import org.jspecify.annotations.NullMarked;
