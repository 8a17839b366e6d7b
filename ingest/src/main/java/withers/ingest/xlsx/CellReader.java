package withers.ingest.xlsx;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dhatim.fastexcel.reader.Cell;
import withers.ingest.profile.DatePattern;
import withers.ingest.rows.Typed;

/** Reads cells. Not safe for several threads. */
final class CellReader {

  /**
   * What a cell holds.
   *
   * @param text never shown where it may be a person's
   */
  record Content(String text, Typed typed) {
    static final Content EMPTY = new Content("", Typed.TEXT);

    static Content text(String text) {
      return new Content(unescaped(text).strip(), Typed.TEXT);
    }
  }

  private static final String NO_VALUE = "=?";
  private static final BigDecimal HIGHEST = BigDecimal.valueOf(Integer.MAX_VALUE);

  /** The values of an error (ISO/IEC 29500-1, 18.17.2.7), and those that came later. */
  private static final Pattern ERROR =
      Pattern.compile(
          "#(NULL!|DIV/0!|VALUE!|REF!|NAME\\?|NUM!|N/A|GETTING_DATA|SPILL!|CALC!|FIELD!|BLOCKED!|UNKNOWN!|CONNECT!|BUSY!)");

  /** A character that XML can't hold (ISO/IEC 29500-1, 22.9.2.19). */
  private static final Pattern ESCAPE = Pattern.compile("_x([0-9A-Fa-f]{4})_");

  private final DateFormats formats = new DateFormats();
  private final DateSerials serials;
  private final DatePattern pattern;

  /**
   * @param pattern how days are shown, so that a row that is put right can be read by the profile
   */
  CellReader(DateSerials serials, DatePattern pattern) {
    this.serials = serials;
    this.pattern = pattern;
  }

  Content read(Cell cell) {
    return switch (cell.getType()) {
      case EMPTY -> Content.EMPTY;
      case STRING -> Content.text(cell.getText());
      case BOOLEAN -> truth(cell.getValue());
      case ERROR -> error(cell);
      case NUMBER -> number(cell, cell.getValue());
      case FORMULA -> result(cell);
    };
  }

  /** The value that was last worked out; formulas are not worked out here. */
  private Content result(Cell cell) {
    Optional<String> raw = Optional.ofNullable(cell.getRawValue());
    if (raw.isEmpty()) {
      return new Content(NO_VALUE, Typed.unreadable("a formula whose value was not saved"));
    }
    if (cell.getValue() instanceof Boolean) {
      return truth(cell.getValue());
    }
    if (cell.getValue() instanceof BigDecimal) {
      return number(cell, cell.getValue());
    }
    return ERROR.matcher(raw.get()).matches() ? error(cell) : Content.text(raw.get());
  }

  private static Content truth(Object value) {
    return new Content(Boolean.TRUE.equals(value) ? "TRUE" : "FALSE", Typed.TEXT);
  }

  private static Content error(Cell cell) {
    String raw = Optional.ofNullable(cell.getRawValue()).orElse("");
    return new Content(
        raw, Typed.unreadable(ERROR.matcher(raw).matches() ? "the error " + raw : "no number"));
  }

  private Content number(Cell cell, Object value) {
    if (!(value instanceof BigDecimal number)) {
      return Content.EMPTY;
    }
    int format = Optional.ofNullable(cell.getDataFormatId()).orElse(0);
    String code = Optional.ofNullable(cell.getDataFormatString()).orElse("");
    NumberText text = NumberText.of(number);
    return formats.isDay(format, code)
        ? day(number, text.text())
        : new Content(text.text(), text.typed());
  }

  /** The hour of a day is passed over. */
  private Content day(BigDecimal number, String text) {
    long serial =
        number.min(HIGHEST).max(HIGHEST.negate()).setScale(0, RoundingMode.FLOOR).longValue();
    Typed typed = serials.day(serial);
    String shown = typed.day().map(pattern::write).orElse(typed.isUnreadable() ? text : "");
    return new Content(shown, typed);
  }

  private static String unescaped(String text) {
    return text.contains("_x")
        ? ESCAPE
            .matcher(text)
            .replaceAll(
                match ->
                    Matcher.quoteReplacement(
                        String.valueOf((char) Integer.parseInt(match.group(1), 16))))
        : text;
  }
}
