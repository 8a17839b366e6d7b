/**
 * Looks at an export that no profile describes and proposes one: which kind of records, which
 * column holds what and why, and what only the operator can answer. Pure: cells in, proposal out.
 */
@NullMarked
package withers.ingest.inspect;

import org.jspecify.annotations.NullMarked;
