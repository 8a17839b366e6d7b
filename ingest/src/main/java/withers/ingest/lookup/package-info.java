/** What registries answered when somebody asked them, recorded by hand. */
@NullMarked
package withers.ingest.lookup;

import org.jspecify.annotations.NullMarked;
