package withers.ingest.profile;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * How days are written: the pattern letters of {@link DateTimeFormatter}, read strictly, so that 31
 * February is no day. Safe for several threads.
 */
public final class DatePattern {

  private static final LocalDate EXAMPLE = LocalDate.of(2026, 1, 31);
  private static final Pattern DIGIT_RUN = Pattern.compile("[A-Za-z]+");

  private final String letters;
  private final DateTimeFormatter formatter;
  private final Optional<NumericDate> numeric;

  private DatePattern(String letters, DateTimeFormatter formatter) {
    this.letters = letters;
    this.formatter = formatter;
    this.numeric = NumericDate.of(letters);
  }

  /**
   * A pattern.
   *
   * @throws IllegalArgumentException when it is none, or leaves day, month or year open
   */
  public static DatePattern of(String letters) {
    try {
      DateTimeFormatter formatter =
          DateTimeFormatter.ofPattern(letters.replace('y', 'u'), Locale.ENGLISH)
              .withResolverStyle(ResolverStyle.STRICT);
      if (EXAMPLE.equals(LocalDate.parse(EXAMPLE.atStartOfDay().format(formatter), formatter))) {
        return new DatePattern(letters, formatter);
      }
    } catch (DateTimeException | IllegalArgumentException wrong) {
      throw refused(letters, wrong);
    }
    throw refused(letters, null);
  }

  private static IllegalArgumentException refused(String letters, @Nullable Exception cause) {
    return new IllegalArgumentException(
        "Expected a pattern of day, month and year such as dd/MM/yyyy, but found \"%s\""
            .formatted(letters),
        cause);
  }

  /** Reads a day; empty when the text is none of this pattern. */
  public Optional<LocalDate> read(String text) {
    return numeric.isPresent() ? numeric.get().read(text) : parsed(text);
  }

  /** A day in this pattern; one that it can't tell, such as 1950 in two digits, as yyyy-MM-dd. */
  public String write(LocalDate day) {
    String text = day.atStartOfDay().format(formatter);
    return read(text).filter(day::equals).isPresent() ? text : day.toString();
  }

  private Optional<LocalDate> parsed(String text) {
    try {
      return Optional.of(LocalDate.parse(text, formatter));
    } catch (DateTimeException noDay) {
      return Optional.empty();
    }
  }

  /** Every day of this pattern in a longer text, such as a file's name, in order. */
  public List<LocalDate> findIn(String text) {
    List<LocalDate> days = new ArrayList<>();
    Matcher matcher = search().matcher(text);
    int from = 0;
    while (matcher.find(from)) {
      Optional<LocalDate> day = read(matcher.group());
      day.ifPresent(days::add);
      from = day.isPresent() ? matcher.end() : matcher.start() + 1;
    }
    return days;
  }

  private Pattern search() {
    StringBuilder regex = new StringBuilder();
    Matcher runs = DIGIT_RUN.matcher(letters);
    int end = 0;
    while (runs.find()) {
      regex.append(Pattern.quote(letters.substring(end, runs.start())));
      regex.append(
          runs.group().length() > 2 && runs.group().charAt(0) == 'M'
              ? "\\p{L}+"
              : digits(runs.group()));
      end = runs.end();
    }
    return Pattern.compile(regex + Pattern.quote(letters.substring(end)));
  }

  private static String digits(String run) {
    return run.length() == 1 ? "[0-9]{1,2}" : "[0-9]{" + run.length() + "}";
  }

  /** How the last of January 2026 would be written. */
  public String example() {
    return EXAMPLE.atStartOfDay().format(formatter);
  }

  /** The letters as given. */
  @Override
  public String toString() {
    return letters;
  }
}
