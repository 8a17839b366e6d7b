/** Keeps rows that could not be taken, with the reason, for people to put right. */
@NullMarked
package withers.ingest.quarantine;

import org.jspecify.annotations.NullMarked;
