package withers.report.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class DrawingTest {
  private static final Chart CHART =
      new Chart(
          "trend",
          "Cats & <dogs>",
          "Today: 50 at first, 0 at last.",
          List.of("1 Sept 2026", "1 Oct 2026", "1 Nov 2026"),
          List.of(
              new Chart.Row("Today", List.of(50L, 46L, 0L)),
              new Chart.Row("When possible", List.of(1280L, 640L, 320L))));

  private final Drawing drawing = new Drawing(Locale.UK);

  @Test
  void the_same_chart_gives_the_same_bytes() {
    assertThat(drawing.svg(CHART)).isEqualTo(new Drawing(Locale.UK).svg(CHART)).isPresent();
    assertThat(drawing.png(CHART).orElseThrow())
        .isEqualTo(new Drawing(Locale.UK).png(CHART).orElseThrow());
  }

  /** Read back by the XML parser of the JDK. */
  @Test
  void every_name_day_and_number_is_text_in_it() throws Exception {
    assertThat(texts(parsed()))
        .containsExactlyInAnyOrder(
            "Today",
            "50",
            "46",
            "0",
            "When possible",
            "1,280",
            "640",
            "320",
            "1 Sept 2026",
            "1 Oct 2026",
            "1 Nov 2026");
  }

  @Test
  void has_a_title_and_a_description_for_who_can_t_see_it() throws Exception {
    Element svg = parsed().getDocumentElement();

    assertThat(svg.getAttribute("role")).isEqualTo("img");
    assertThat(svg.getAttribute("aria-labelledby")).isEqualTo("trend-title trend-about");
    assertThat(svg.getElementsByTagName("title").item(0).getTextContent()).isEqualTo(CHART.title());
    assertThat(svg.getElementsByTagName("desc").item(0).getTextContent())
        .isEqualTo(CHART.description());
  }

  @Test
  void each_bar_is_as_high_as_its_number() throws Exception {
    NodeList bars = parsed().getElementsByTagName("rect");

    assertThat(bars.getLength()).as("a bar of nothing is none").isEqualTo(5);
    assertThat(height(bars, 3) / height(bars, 2)).isBetween(0.49, 0.51);
    assertThat(height(bars, 4) / height(bars, 2)).isBetween(0.24, 0.26);
  }

  @Test
  void leaves_colours_fonts_and_links_to_the_page() {
    assertThat(drawing.svg(CHART).orElseThrow())
        .doesNotContain("style=", "font", "rgb", "url(", "http", "href", "<image", "<script");
  }

  @Test
  void writes_numbers_as_its_language_does() throws Exception {
    assertThat(new Drawing(Locale.GERMANY).svg(CHART).orElseThrow()).contains(">1.280<");
  }

  @Test
  void a_picture_has_two_dots_for_each_unit_and_is_no_blank_sheet() throws Exception {
    var picture = ImageIO.read(new ByteArrayInputStream(drawing.png(CHART).orElseThrow()));

    assertThat(picture.getWidth()).isEqualTo(2 * Plan.WIDTH);
    assertThat(picture.getRGB(0, 0)).isEqualTo(Ink.PAPER.getRGB());
    assertThat(IntStream.range(0, picture.getWidth()).map(x -> picture.getRGB(x, 100)))
        .contains(Ink.BAR.getRGB());
  }

  private Document parsed() throws Exception {
    byte[] svg = drawing.svg(CHART).orElseThrow().getBytes(StandardCharsets.UTF_8);
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(svg));
  }

  private static List<String> texts(Document document) {
    NodeList all = document.getElementsByTagName("text");
    return IntStream.range(0, all.getLength()).mapToObj(i -> all.item(i).getTextContent()).toList();
  }

  private static double height(NodeList bars, int index) {
    return Double.parseDouble(((Element) bars.item(index)).getAttribute("height"));
  }
}
