/** The stream of what was done with what is held on people, written and read. */
@NullMarked
package withers.auditing;

import org.jspecify.annotations.NullMarked;
