package withers.report.chart;

import java.awt.font.FontRenderContext;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.apache.batik.svggen.StyleHandler;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.Text;

/**
 * A chart as an {@code svg} element of a page. Colours are classes, fonts are the page's, and
 * nothing in it leads anywhere: what clips or defines something is left out.
 */
final class SvgElement {
  private static final String SVG = "http://www.w3.org/2000/svg";
  private static final List<String> KEPT =
      List.of("class", "transform", "x", "y", "width", "height", "d", "x1", "x2", "y1", "y2");

  private static final FontRenderContext METRICS = new FontRenderContext(null, true, true);

  private final Chart chart;
  private final Plan plan;
  private final StringBuilder text = new StringBuilder();

  SvgElement(Chart chart, Plan plan) {
    this.chart = chart;
    this.plan = plan;
  }

  String text() {
    SVGGeneratorContext context = SVGGeneratorContext.createDefault(document());
    context.setStyleHandler(new Classes());
    SVGGraphics2D graphics = new SVGGraphics2D(context, false);
    plan.draw(graphics);
    text.append(
        "<svg class=\"chart\" role=\"img\" aria-labelledby=\"%1$s-title %1$s-about\" viewBox=\"0 0 %2$d %3$d\">"
            .formatted(chart.id(), Plan.WIDTH, plan.height()));
    named("title", "title", chart.title());
    named("desc", "about", chart.description());
    children(graphics.getRoot());
    return text.append("</svg>").toString();
  }

  private void named(String tag, String part, String content) {
    text.append("<%s id=\"%s-%s\">".formatted(tag, chart.id(), part));
    text.append(escaped(content)).append("</%s>".formatted(tag));
  }

  private static Document document() {
    try {
      return DocumentBuilderFactory.newInstance()
          .newDocumentBuilder()
          .getDOMImplementation()
          .createDocument(SVG, "svg", null);
    } catch (ParserConfigurationException e) {
      throw new IllegalStateException("Every Java has a DOM", e);
    }
  }

  private void children(Node parent) {
    for (Node child = parent.getFirstChild(); child != null; child = child.getNextSibling()) {
      if (child instanceof Text words) {
        text.append(escaped(words.getData()));
      } else if (child instanceof Element element && !element.getTagName().equals("defs")) {
        element(element);
      }
    }
  }

  private void element(Element element) {
    text.append('<').append(element.getTagName());
    for (String name : KEPT) {
      if (element.hasAttribute(name)) {
        String value = escaped(element.getAttribute(name));
        text.append(' ').append(name).append("=\"").append(value).append('"');
      }
    }
    if (element.getTagName().equals("text")) {
      text.append(length(element.getTextContent()));
    }
    text.append('>');
    children(element);
    text.append("</").append(element.getTagName()).append('>');
  }

  /** As long as it was laid out for, in whichever font the reader's machine has. */
  private static String length(String words) {
    double length = Ink.FONT.getStringBounds(words, METRICS).getWidth();
    return " textLength=\"%s\" lengthAdjust=\"spacingAndGlyphs\""
        .formatted(Math.round(length * 10) / 10.0);
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace("\"", "&quot;");
  }

  /** Keeps of an element's style which colour it is drawn in. */
  private static final class Classes implements StyleHandler {
    @Override
    @SuppressWarnings("rawtypes") // as the library declares it
    public void setStyle(Element element, Map style, SVGGeneratorContext context) {
      Optional<String> ink = ink(style.get("fill")).or(() -> ink(style.get("stroke")));
      ink.ifPresent(name -> element.setAttributeNS(null, "class", name));
    }

    private static Optional<String> ink(@Nullable Object colour) {
      return Ink.CLASSES.entrySet().stream()
          .filter(one -> rgb(one.getKey()).equals(colour))
          .map(Map.Entry::getValue)
          .findFirst();
    }

    private static String rgb(java.awt.Color colour) {
      return "rgb(%d,%d,%d)".formatted(colour.getRed(), colour.getGreen(), colour.getBlue());
    }
  }
}
