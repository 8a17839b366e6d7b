package withers.codec;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** Stored forms that were approved once and must be read, and written, for good. */
final class Approved {

  private Approved() {}

  /** The text of an approved file, without the line end that closes it. */
  static String text(String name) {
    try (InputStream in = Approved.class.getResourceAsStream("/approved/" + name)) {
      assertThat(in).as("the approved file %s", name).isNotNull();
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      assertThat(text).endsWith("\n");
      return text.substring(0, text.length() - 1);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
