/** Names that keep their meaning for good: sources, records, organisations, imports. */
@NullMarked
package withers.id;

import org.jspecify.annotations.NullMarked;
