/** Where a program may be cut off: what it has done by then must not have to be done over. */
@NullMarked
package withers.point;

import org.jspecify.annotations.NullMarked;
