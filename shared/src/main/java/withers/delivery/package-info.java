/** What became of lists that were sent by mail, as events of their own stream. */
@NullMarked
package withers.delivery;

import org.jspecify.annotations.NullMarked;
