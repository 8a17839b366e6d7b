package withers.ingest.sniff;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Splits text into records, forgivingly: a flaw is noted, never thrown. A quote opens at the start
 * of a cell only, and is doubled to stand for itself (RFC 4180, section 2); lines end with LF, CR
 * LF or CR.
 */
public final class SampleReader {

  private final String text;
  private final char delimiter;
  private final Quoting quoting;
  private int at;
  private long line;
  private SampleRecord.Flaw flaw = SampleRecord.Flaw.NONE;

  private SampleReader(String text, Dialect dialect, int at, long line) {
    this.text = text;
    this.delimiter = dialect.delimiter().sign();
    this.quoting = dialect.quoting();
    this.at = at;
    this.line = line;
  }

  /**
   * All records of a text, blank lines among them.
   *
   * @param whole whether the text is all there is: otherwise its last record may be cut, and is
   *     left out
   */
  public static List<SampleRecord> read(String text, Dialect dialect, boolean whole) {
    SampleReader reader = new SampleReader(text, dialect, 0, 1);
    List<SampleRecord> records = new ArrayList<>();
    for (Optional<SampleRecord> next = reader.next(); next.isPresent(); next = reader.next()) {
      records.add(next.get());
    }
    return whole || records.size() < 2 ? records : records.subList(0, records.size() - 1);
  }

  /**
   * The record that starts at a place, read on its own.
   *
   * @param line the line there
   */
  public static Optional<SampleRecord> at(String text, int place, long line, Dialect dialect) {
    return new SampleReader(text, dialect, place, line).next();
  }

  /** Where the first lines start, quoted line ends counted like others; at most so many. */
  public static List<Integer> lineStarts(String text, int most) {
    List<Integer> starts = new ArrayList<>();
    int at = 0;
    while (at < text.length() && starts.size() < most) {
      starts.add(at);
      while (at < text.length() && LineEnd.lengthAt(text, at) == 0) {
        at++;
      }
      at += at < text.length() ? LineEnd.lengthAt(text, at) : 0;
    }
    return starts;
  }

  private Optional<SampleRecord> next() {
    if (at >= text.length()) {
      return Optional.empty();
    }
    long start = line;
    flaw = SampleRecord.Flaw.NONE;
    List<String> cells = new ArrayList<>();
    do {
      cells.add(cell());
    } while (takeDelimiter());
    takeLineEnd();
    return Optional.of(new SampleRecord(start, (int) (line - start), cells, flaw));
  }

  private boolean takeDelimiter() {
    if (at < text.length() && text.charAt(at) == delimiter) {
      at++;
      return true;
    }
    return false;
  }

  private void takeLineEnd() {
    if (at < text.length()) {
      at += LineEnd.lengthAt(text, at);
    }
    line++;
  }

  private String cell() {
    if (at < text.length() && quoting.is(text.charAt(at))) {
      at++;
      return quoted();
    }
    int start = at;
    skipPlain();
    return text.substring(start, at);
  }

  private void skipPlain() {
    while (at < text.length() && !endsCell(text.charAt(at))) {
      at++;
    }
  }

  private boolean endsCell(char c) {
    return c == delimiter || c == '\n' || c == '\r';
  }

  private String quoted() {
    StringBuilder cell = new StringBuilder();
    while (at < text.length()) {
      char c = text.charAt(at);
      if (quoting.is(c) && !isDoubled()) {
        at++;
        return cell.append(afterQuote()).toString();
      }
      append(cell, c);
    }
    flaw = SampleRecord.Flaw.OPEN_QUOTE;
    return cell.toString();
  }

  private boolean isDoubled() {
    return at + 1 < text.length() && quoting.is(text.charAt(at + 1));
  }

  private void append(StringBuilder cell, char c) {
    int length = quoting.is(c) ? 2 : LineEnd.lengthAt(text, at);
    if (length > 0 && !quoting.is(c)) {
      line++;
    }
    cell.append(text, quoting.is(c) ? at + 1 : at, at + Math.max(1, length));
    at += Math.max(1, length);
  }

  /** White space may stand between a closing quote and what ends the cell. */
  private String afterQuote() {
    int start = at;
    skipPlain();
    String rest = text.substring(start, at);
    if (rest.isBlank()) {
      return "";
    }
    flaw = SampleRecord.Flaw.TEXT_AFTER_QUOTE;
    return rest;
  }
}
