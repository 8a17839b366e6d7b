/** The command that imports exports. */
@NullMarked
package withers.ingest.cli;

import org.jspecify.annotations.NullMarked;
