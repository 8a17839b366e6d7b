/** Copies of a workspace: how they are taken, checked and brought back. */
@NullMarked
package withers.report.backup;

import org.jspecify.annotations.NullMarked;
