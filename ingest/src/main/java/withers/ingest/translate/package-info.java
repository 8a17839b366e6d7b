/** Turns a row into what it states, by its source's profile. Pure. */
@NullMarked
package withers.ingest.translate;

import org.jspecify.annotations.NullMarked;
