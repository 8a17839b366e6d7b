/** Lists' sheets that come back: what stands in them becomes answers of follow-ups. */
@NullMarked
package withers.ingest.answers;

import org.jspecify.annotations.NullMarked;
