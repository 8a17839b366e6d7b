/** Facts that organisations state about chips and animals, each with its origin. */
@NullMarked
package withers.fact;

import org.jspecify.annotations.NullMarked;
