/**
 * Change detection: what a source says of its records now against what it said before. Pure; the
 * log is read and written elsewhere.
 */
@NullMarked
package withers.ingest.change;

import org.jspecify.annotations.NullMarked;
