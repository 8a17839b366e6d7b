/** Many things held in few bytes, and made again when they are asked for. */
@NullMarked
package withers.packed;

import org.jspecify.annotations.NullMarked;
