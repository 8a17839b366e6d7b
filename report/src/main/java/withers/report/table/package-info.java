/** A list as a table of texts that no spreadsheet takes for a formula. */
@NullMarked
package withers.report.table;

import org.jspecify.annotations.NullMarked;
