package withers.report.html;

import java.util.Optional;
import withers.report.chart.Chart;

/**
 * A chart on a page, with the table of its figures.
 *
 * @param markup the element that shows it; empty where it can't be drawn, or is a picture
 * @param picture the address of a picture of it
 */
public record Figure(Chart chart, Optional<String> markup, Optional<String> picture) {}
