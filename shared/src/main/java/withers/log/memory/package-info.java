/** The event log in memory, for tests and trials: every promise but durability. */
@NullMarked
package withers.log.memory;

import org.jspecify.annotations.NullMarked;
