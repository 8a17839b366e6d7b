/** Work that is shared with other machines: one who orders it, and workers who do its parts. */
@NullMarked
package withers.work;

import org.jspecify.annotations.NullMarked;
