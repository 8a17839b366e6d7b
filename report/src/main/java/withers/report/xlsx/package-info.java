/** Lists as Excel workbooks (Office Open XML). */
@NullMarked
package withers.report.xlsx;

import org.jspecify.annotations.NullMarked;
