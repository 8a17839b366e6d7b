/** Copying a log to another, of whatever kind. */
@NullMarked
package withers.log.copy;

import org.jspecify.annotations.NullMarked;
