package withers.ingest.sniff;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;

/** Finds out how a file is written, from the start of it. */
public final class Sniffer {

  /** As much of a file as is looked at, in bytes. */
  public static final int SAMPLE = 1 << 18;

  private static final String BYTE_ORDER_MARK = "\uFEFF";

  private Sniffer() {}

  /**
   * Finds everything out, the character set from the sample alone.
   *
   * @param sample the first bytes of a file
   * @param whole whether they are all that it has
   */
  public static Sniffed sniff(byte[] sample, boolean whole) {
    return sniff(sample, whole, CharsetSniffer.find(sample));
  }

  /**
   * Finds everything out but the character set, which is known already: from the whole file, or
   * from a person.
   */
  public static Sniffed sniff(byte[] sample, boolean whole, Finding<Charset> charset) {
    Charset likeliest = charset.best().map(Guess::value).orElse(StandardCharsets.UTF_8);
    return sniff(text(sample, likeliest), whole, charset);
  }

  /** Decodes a sample; what can't be read becomes U+FFFD, a byte order mark is left out. */
  public static String text(byte[] sample, Charset charset) {
    String text = new String(sample, charset);
    return text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
  }

  private static Sniffed sniff(String text, boolean whole, Finding<Charset> charset) {
    Finding<Delimiter> delimiters = DelimiterSniffer.find(text, whole);
    Delimiter delimiter = delimiters.best().map(Guess::value).orElse(Delimiter.COMMA);
    Finding<Quoting> quotings = QuotingSniffer.find(text, delimiter, whole);
    Quoting quoting = quotings.best().map(Guess::value).orElse(Quoting.DOUBLE);
    List<SampleRecord> records = SampleReader.read(text, new Dialect(delimiter, quoting), whole);
    Finding<Integer> header = HeaderSniffer.find(records);
    Map<Integer, LineKind> kinds =
        header.best().map(h -> HeaderSniffer.kinds(records, h.value())).orElse(Map.of());
    return new Sniffed(
        charset,
        delimiters,
        quotings,
        LineEnd.count(text),
        records,
        Widths.of(records),
        header,
        kinds);
  }
}
