/** A trace as JSON. */
@NullMarked
package withers.codec.trace;

import org.jspecify.annotations.NullMarked;
