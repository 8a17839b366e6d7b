/** Lists as comma-separated values (RFC 4180). */
@NullMarked
package withers.report.csv;

import org.jspecify.annotations.NullMarked;
