package withers.report.text;

import java.text.MessageFormat;
import java.text.NumberFormat;
import java.time.LocalDate;
import java.time.chrono.IsoChronology;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.FormatStyle;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import withers.answers.SheetWords;

/**
 * The texts of lists, overview and mail. All of them stand in one bundle, {@code
 * withers/report/text/texts.properties}, so that a translation is one more file beside it. Safe for
 * several threads.
 */
public final class Texts {

  private static final String BUNDLE = "withers.report.text.texts";

  private final Locale locale;
  private final ResourceBundle bundle;
  private final SheetWords sheet;
  private final DateTimeFormatter longDay;
  private final DateTimeFormatter mediumDay;
  private final Map<String, Template> templates = new ConcurrentHashMap<>();

  private Texts(Locale locale) {
    this.locale = locale;
    this.sheet = SheetWords.in(locale);
    this.longDay = day(FormatStyle.LONG, locale);
    this.mediumDay = day(FormatStyle.MEDIUM, locale);
    this.bundle =
        ResourceBundle.getBundle(
            BUNDLE,
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  private static DateTimeFormatter day(FormatStyle style, Locale locale) {
    return DateTimeFormatter.ofPattern(
        DateTimeFormatterBuilder.getLocalizedDateTimePattern(
            style, null, IsoChronology.INSTANCE, locale),
        locale);
  }

  /**
   * The texts for a locale: in its language when there is a translation, else in English; dates and
   * numbers always as the locale writes them.
   */
  public static Texts in(Locale locale) {
    return new Texts(locale);
  }

  /**
   * A text with its arguments in place (see {@link MessageFormat}). Arguments are put in as they
   * are: a brace in a name stays a brace.
   *
   * @throws java.util.MissingResourceException if the bundle has no such text
   */
  public String say(String key, Object... arguments) {
    return templates.computeIfAbsent(key, this::template).with(arguments);
  }

  private Template template(String key) {
    return new Template(bundle.getString(key), locale);
  }

  /** The words of a sheet that are read when it comes back. */
  public SheetWords sheet() {
    return sheet;
  }

  /** The names of all texts. */
  public Set<String> keys() {
    return bundle.keySet();
  }

  /** A day in the locale's long form, such as "1 March 2026". */
  public String date(LocalDate day) {
    return longDay.format(day);
  }

  /** A day in the locale's medium form, such as "1 Mar 2026". */
  public String shortDate(LocalDate day) {
    return mediumDay.format(day);
  }

  /** A share from 0 to 1 as percent with one digit behind the point. */
  public String percent(double share) {
    NumberFormat percent = NumberFormat.getPercentInstance(locale);
    percent.setMinimumFractionDigits(1);
    percent.setMaximumFractionDigits(1);
    return percent.format(share);
  }

  /** How dates and numbers are written. */
  public Locale locale() {
    return locale;
  }

  /** A number of things, grouped as the locale groups digits. */
  public String count(long number) {
    return NumberFormat.getIntegerInstance(locale).format(number);
  }

  /** Several things in one phrase, such as "a, b and c"; empty for none. */
  public String together(List<String> things) {
    return joined(things, "together.last");
  }

  /** One of several things as one phrase: "a, b or c". */
  public String either(List<String> things) {
    return joined(things, "together.either");
  }

  private String joined(List<String> things, String how) {
    int last = things.size() - 1;
    if (last < 1) {
      return String.join("", things);
    }
    String comma = say("together.comma");
    return say(how, String.join(comma, things.subList(0, last)), things.get(last));
  }

  /** The language that the texts are in, as a BCP 47 tag. */
  public String language() {
    Locale translated = bundle.getLocale();
    return translated.equals(Locale.ROOT) ? "en" : translated.toLanguageTag();
  }
}
