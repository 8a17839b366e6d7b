package withers.report.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.text.MessageFormat;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.ResourceBundle;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

/** {@link MessageFormat} itself is what a template is compared with. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class TemplateTest {
  private static final List<Object> ARGUMENTS =
      List.of("", "Rook", "{0}", "it's", "\0", "Zoë", 0, 1, 2_500, 7L, 0.5);

  @Test
  void every_text_says_with_any_arguments_what_the_format_says() {
    ResourceBundle texts = ResourceBundle.getBundle("withers.report.text.texts", Locale.ROOT);
    Random random = new Random(20260901);

    for (String key : texts.keySet()) {
      for (int round = 0; round < 20; round++) {
        assertSame(texts.getString(key), key + ", round " + round, some(random));
      }
    }
  }

  @Test
  void quotes_braces_formats_and_places_without_an_argument_are_read_as_the_format_reads_them() {
    for (String pattern :
        List.of(
            "",
            "{0}",
            "{0}{0}",
            "{1} of {0}",
            "{2}",
            "it''s {0}",
            "'{0}' is {0}",
            "{0,number} {1}",
            "{0,choice,0#none|1#one|1<{0}} of {1}",
            "\0{0}\0")) {
      assertSame(pattern, pattern);
      assertSame(pattern, pattern, "one");
      assertSame(pattern, pattern, "one", "two");
      assertSame(pattern, pattern, 1, "two");
      assertSame(pattern, pattern, 2_500, "two", "three");
    }
  }

  private static Object[] some(Random random) {
    return IntStream.range(0, random.nextInt(7))
        .mapToObj(i -> ARGUMENTS.get(random.nextInt(ARGUMENTS.size())))
        .toArray();
  }

  private static void assertSame(String pattern, String name, Object... arguments) {
    for (Locale locale : List.of(Locale.UK, Locale.GERMANY)) {
      String expected = formatted(pattern, locale, arguments);
      assertThat(said(pattern, locale, arguments)).as(name).isEqualTo(expected);
    }
  }

  /** What cannot be formatted, such as a text where a number has to be, fails in either. */
  private static String formatted(String pattern, Locale locale, Object... arguments) {
    try {
      return new MessageFormat(pattern, locale).format(arguments);
    } catch (IllegalArgumentException refused) {
      return "refused";
    }
  }

  private static String said(String pattern, Locale locale, Object... arguments) {
    try {
      return new Template(pattern, locale).with(arguments);
    } catch (IllegalArgumentException refused) {
      return "refused";
    }
  }
}
