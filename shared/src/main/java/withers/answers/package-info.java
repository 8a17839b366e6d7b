/**
 * The words of the sheet that an organisation fills in: written to it, and read when it comes back.
 */
@NullMarked
package withers.answers;

import org.jspecify.annotations.NullMarked;
