/**
 * Recognises the records that an export has in common with its source's last one from their bytes,
 * so that they need not be parsed. What it keeps for that is disposable.
 */
@NullMarked
package withers.ingest.known;

import org.jspecify.annotations.NullMarked;
