/** One number looked up: what is known of it, whom to call next, and why. */
@NullMarked
package withers.trace;

import org.jspecify.annotations.NullMarked;
