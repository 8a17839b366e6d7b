/** The inbox: which files lie there, which of them are whole, and which are new. */
@NullMarked
package withers.ingest.inbox;

import org.jspecify.annotations.NullMarked;
