/** What a run found, as JSON: the canonical lines that are compared, and the whole result. */
@NullMarked
package withers.codec.finding;

import org.jspecify.annotations.NullMarked;
