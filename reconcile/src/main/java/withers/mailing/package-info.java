/** What organisations have been told by mail, and when they are to be told again. Pure. */
@NullMarked
package withers.mailing;

import org.jspecify.annotations.NullMarked;
