/** What the workspace's policy lets go. */
@NullMarked
package withers.report.retention;

import org.jspecify.annotations.NullMarked;
