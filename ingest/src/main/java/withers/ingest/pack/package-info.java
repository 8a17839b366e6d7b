/** Exports that lie packed: in gzip, or several in a zip archive. Reads them as if unpacked. */
@NullMarked
package withers.ingest.pack;

import org.jspecify.annotations.NullMarked;
