/** Findings in, lists out, and the application around it all. */
@NullMarked
package withers.report;

import org.jspecify.annotations.NullMarked;
