package withers.report.chart;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import javax.imageio.ImageIO;

/**
 * Draws charts. The same chart gives the same bytes. Needs no screen, but the libraries with which
 * Java measures text: where they are missing there is no drawing, and the figures have to do. Each
 * picture is drawn once. For one thread.
 */
public final class Drawing {
  /** So many dots of a picture for each unit of length: for screens with small dots. */
  private static final int DENSITY = 2;

  private final Locale locale;
  private final Map<Chart, Optional<byte[]>> pictures = new HashMap<>();

  /**
   * @param locale how numbers are written
   */
  public Drawing(Locale locale) {
    this.locale = locale;
  }

  /** The chart as an element for a page. */
  public Optional<String> svg(Chart chart) {
    return tried(() -> new SvgElement(chart, new Plan(chart, locale)).text());
  }

  /** The chart as a picture. */
  public Optional<byte[]> png(Chart chart) {
    return pictures
        .computeIfAbsent(chart, one -> tried(() -> picture(new Plan(one, locale))))
        .map(byte[]::clone);
  }

  /** A Java without fontconfig or FreeType says so with errors of these kinds. */
  private static <T> Optional<T> tried(Supplier<T> drawing) {
    try {
      return Optional.of(drawing.get());
    } catch (LinkageError | InternalError lacking) {
      return Optional.empty();
    }
  }

  private static byte[] picture(Plan plan) {
    BufferedImage image =
        new BufferedImage(
            Plan.WIDTH * DENSITY, plan.height() * DENSITY, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = image.createGraphics();
    graphics.setBackground(Ink.PAPER);
    graphics.clearRect(0, 0, image.getWidth(), image.getHeight());
    graphics.scale(DENSITY, DENSITY);
    plan.draw(graphics);
    graphics.dispose();
    return png(image);
  }

  private static byte[] png(BufferedImage image) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      ImageIO.write(image, "png", bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }
}
