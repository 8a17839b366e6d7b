/**
 * Finds out how an unknown file is written: character set, delimiter, quoting, header. Pure
 * functions over bytes and text; each finding carries its evidence, and what else it might be.
 */
@NullMarked
package withers.ingest.sniff;

import org.jspecify.annotations.NullMarked;
