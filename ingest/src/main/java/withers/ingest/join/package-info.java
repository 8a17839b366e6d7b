/** Joins the files of an export set: the rows of one, with what others say of the same keys. */
@NullMarked
package withers.ingest.join;

import org.jspecify.annotations.NullMarked;
