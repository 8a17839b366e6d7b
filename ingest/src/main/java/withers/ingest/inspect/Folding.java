package withers.ingest.inspect;

import java.text.Normalizer;
import java.util.Locale;
import java.util.regex.Pattern;

/** The form in which words of headers and cells are compared. */
final class Folding {

  private static final Pattern MARKS = Pattern.compile("\\p{Mn}+");
  private static final Pattern HUMP = Pattern.compile("(?<=\\p{Ll})(?=\\p{Lu})");
  private static final Pattern BETWEEN = Pattern.compile("[^\\p{L}\\p{N}]+");
  private static final Pattern DIGITS = Pattern.compile("(?<=\\p{L})(?=\\p{N})");

  private Folding() {}

  /**
   * Small letters without accents, one blank between words: {@code N° d'Été} is {@code n d ete}.
   */
  static String words(String text) {
    String plain = MARKS.matcher(Normalizer.normalize(text, Normalizer.Form.NFKD)).replaceAll("");
    String small = plain.replace("ß", "ss").replace("ł", "l").replace("ø", "o");
    return BETWEEN.matcher(small).replaceAll(" ").strip().toLowerCase(Locale.ROOT);
  }

  /** The words of a header: {@code clientPhone2} is {@code client phone 2}. */
  static String header(String text) {
    String parted = HUMP.matcher(text).replaceAll(" ");
    return words(DIGITS.matcher(parted).replaceAll(" "));
  }
}
