/** Charts, drawn by JFreeChart: as SVG for pages, as PNG for mail. */
@NullMarked
package withers.report.chart;

import org.jspecify.annotations.NullMarked;
