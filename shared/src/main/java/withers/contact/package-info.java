/**
 * People and how to reach them, kept in a vault outside the log; the log carries references only.
 */
@NullMarked
package withers.contact;

import org.jspecify.annotations.NullMarked;
