/** Files as they lie there: their bytes, digest and character set. */
@NullMarked
package withers.ingest.file;

import org.jspecify.annotations.NullMarked;
