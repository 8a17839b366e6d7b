package withers.ingest.known;

import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import withers.ingest.file.ExportFile;

/**
 * All that the reading of a record depends on besides its bytes: when any of it is another, what
 * was kept is of no use.
 *
 * @param profile digest of the profile
 * @param delimiter between fields
 * @param quote around fields; empty when there is none
 * @param charset of the files
 * @param surroundings what else has a say, such as settings, in any stable words
 * @param code digest of the program that reads
 */
public record Circumstances(
    String profile,
    char delimiter,
    Optional<Character> quote,
    Charset charset,
    String surroundings,
    String code) {

  private static final byte[] ASCII = ascii();

  private static byte[] ascii() {
    byte[] all = new byte[128];
    for (int i = 0; i < all.length; i++) {
      all[i] = (byte) i;
    }
    return all;
  }

  /**
   * Whether records can be told apart by their bytes: in UTF-8 and in sets of one byte for each
   * character, where ASCII is as it is.
   */
  boolean areSuitable() {
    boolean simple =
        charset.equals(StandardCharsets.UTF_8)
            || charset.canEncode() && charset.newEncoder().maxBytesPerChar() == 1;
    return simple
        && delimiter < ASCII.length
        && quote.orElse('"') < ASCII.length
        && Arrays.equals(new String(ASCII, charset).getBytes(charset), ASCII);
  }

  /** What splits files in them. */
  RecordScanner scanner(InputStream in, long offset, long line) {
    return new RecordScanner(in, delimiter, quote, offset, line);
  }

  /** Whether a file is text in their character set. */
  boolean areThoseOf(ExportFile file) {
    return file.content() == ExportFile.Content.TEXT && file.charset().equals(charset);
  }

  /** One line that is the same for the same circumstances only. */
  String inWords() {
    return String.join(
        "\n",
        profile,
        Integer.toString(delimiter),
        quote.toString(),
        charset.name(),
        code,
        surroundings);
  }
}
