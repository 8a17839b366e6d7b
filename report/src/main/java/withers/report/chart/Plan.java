package withers.report.chart;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.text.NumberFormat;
import java.util.Locale;
import java.util.Map;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.CategoryAxis;
import org.jfree.chart.axis.CategoryLabelPositions;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.labels.StandardCategoryItemLabelGenerator;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.chart.plot.CombinedDomainCategoryPlot;
import org.jfree.chart.renderer.category.BarRenderer;
import org.jfree.chart.renderer.category.StandardBarPainter;
import org.jfree.chart.text.TextUtils;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.category.DefaultCategoryDataset;

/**
 * A chart as JFreeChart draws it: a row of bars for each row, with its name before it and each
 * number above its bar, so that no colour has to tell anything.
 */
final class Plan {
  static final int WIDTH = 440;
  private static final int ROW = 62;
  private static final int LABELS = 92;
  private static final int NAMES = 128;
  private static final double ROOM_FOR_NUMBERS = 0.55;
  private static final double WIDEST_BAR = 0.09;

  static {
    TextUtils.setUseDrawRotatedStringWorkaround(false); // it would draw words as outlines
  }

  private final Chart chart;
  private final Locale locale;

  Plan(Chart chart, Locale locale) {
    this.chart = chart;
    this.locale = locale;
  }

  int height() {
    return chart.rows().size() * ROW + LABELS;
  }

  /** Draws it into a space of its width and height. */
  void draw(Graphics2D graphics) {
    JFreeChart drawn = new JFreeChart(null, Ink.FONT, plot(), false);
    drawn.setBackgroundPaint(null);
    drawn.setPadding(RectangleInsets.ZERO_INSETS);
    drawn.setRenderingHints(hints());
    drawn.setAntiAlias(true);
    drawn.setTextAntiAlias(true);
    drawn.draw(graphics, new Rectangle2D.Double(0, 0, WIDTH, height()));
  }

  /** The library puts the second one back as it was, so it has to be something. */
  private static RenderingHints hints() {
    return new RenderingHints(
        Map.of(
            RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON,
            RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE));
  }

  private CombinedDomainCategoryPlot plot() {
    CombinedDomainCategoryPlot all = new CombinedDomainCategoryPlot(runs());
    all.setGap(0);
    all.setInsets(RectangleInsets.ZERO_INSETS);
    AxisSpace names = new AxisSpace();
    names.setLeft(NAMES);
    all.setFixedRangeAxisSpace(names);
    chart.rows().forEach(row -> all.add(row(row)));
    return all;
  }

  private static CategoryAxis runs() {
    CategoryAxis axis = new CategoryAxis();
    axis.setCategoryLabelPositions(CategoryLabelPositions.UP_90);
    axis.setTickLabelFont(Ink.FONT);
    axis.setTickLabelPaint(Ink.TEXT);
    axis.setAxisLineVisible(false);
    axis.setTickMarksVisible(false);
    axis.setMaximumCategoryLabelLines(1);
    axis.setMaximumCategoryLabelWidthRatio(LABELS);
    return axis;
  }

  private CategoryPlot row(Chart.Row row) {
    DefaultCategoryDataset numbers = new DefaultCategoryDataset();
    for (int i = 0; i < chart.columns().size(); i++) {
      numbers.addValue(row.values().get(i), row.name(), chart.columns().get(i));
    }
    CategoryPlot plot = new CategoryPlot(numbers, null, scale(row), bars());
    plot.setBackgroundPaint(null);
    plot.setOutlineVisible(false);
    plot.setRangeGridlinesVisible(false);
    plot.setRangeZeroBaselineVisible(true);
    plot.setRangeZeroBaselinePaint(Ink.LINE);
    plot.setRangeZeroBaselineStroke(new BasicStroke(1f));
    return plot;
  }

  private static NumberAxis scale(Chart.Row row) {
    long highest = row.values().stream().mapToLong(Long::longValue).max().orElse(0);
    NumberAxis axis = new NumberAxis(row.name());
    axis.setRange(0, Math.max(1, highest) * (1 + ROOM_FOR_NUMBERS));
    axis.setLabelFont(Ink.FONT);
    axis.setLabelPaint(Ink.TEXT);
    axis.setLabelAngle(Math.PI / 2);
    axis.setTickLabelsVisible(false);
    axis.setTickMarksVisible(false);
    axis.setAxisLineVisible(false);
    return axis;
  }

  private BarRenderer bars() {
    BarRenderer bars = new BarRenderer();
    bars.setBarPainter(new StandardBarPainter());
    bars.setShadowVisible(false);
    bars.setDrawBarOutline(false);
    bars.setSeriesPaint(0, Ink.BAR);
    bars.setMaximumBarWidth(WIDEST_BAR);
    bars.setDefaultItemLabelGenerator(
        new StandardCategoryItemLabelGenerator("{2}", NumberFormat.getIntegerInstance(locale)));
    bars.setDefaultItemLabelsVisible(true);
    bars.setDefaultItemLabelFont(Ink.FONT);
    bars.setDefaultItemLabelPaint(Ink.TEXT);
    return bars;
  }
}
