package withers.report.chart;

import java.awt.Color;
import java.awt.Font;
import java.awt.FontFormatException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Objects;

/**
 * What charts are drawn with. A page puts the reader's colours in place of these by their classes;
 * a picture has them as they are, those of the pages in light.
 */
final class Ink {
  static final Color PAPER = new Color(0xfbf9f4);
  static final Color TEXT = new Color(0x20262b);
  static final Color BAR = new Color(0x0f5563);
  static final Color LINE = new Color(0x545d63);

  /** The class that a colour has on a page. */
  static final Map<Color, String> CLASSES = Map.of(TEXT, "t", BAR, "b", LINE, "l");

  /** Liberation Sans, packed with the program: no font of the machine decides about a chart. */
  static final Font FONT = font("/liberation/LiberationSans-Regular.ttf");

  private Ink() {}

  private static Font font(String name) {
    try (InputStream bytes = Objects.requireNonNull(Ink.class.getResourceAsStream(name), name)) {
      return Font.createFont(Font.TRUETYPE_FONT, bytes).deriveFont(13f);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (FontFormatException e) {
      throw new IllegalStateException("Expected a font, but found something else: " + name, e);
    }
  }
}
