package withers.report.text;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A text with places for arguments, as {@link MessageFormat} reads it. Lists are made of millions
 * of texts, most of which put texts into a text: these are joined here, which takes a fraction of
 * what the format takes. Safe for several threads.
 */
final class Template {
  private static final String MARK = "\0";

  private final MessageFormat format;

  /** Text, the number of an argument, text, and so on; none where an argument has a format. */
  private final String[] parts;

  private final int[] arguments;

  Template(String pattern, Locale locale) {
    this.format = new MessageFormat(pattern, locale);
    this.parts = isPlain(pattern) ? parts() : new String[0];
    this.arguments =
        IntStream.range(0, parts.length / 2).map(i -> Integer.parseInt(parts[2 * i + 1])).toArray();
  }

  private boolean isPlain(String pattern) {
    return !pattern.contains(MARK)
        && Stream.of(format.getFormatsByArgumentIndex()).allMatch(Objects::isNull);
  }

  /**
   * What the format itself makes of the pattern: its quotes and braces are nobody else's to read.
   */
  private String[] parts() {
    Object[] marks =
        IntStream.range(0, format.getFormatsByArgumentIndex().length)
            .mapToObj(i -> MARK + i + MARK)
            .toArray();
    return format.format(marks).split(MARK, -1);
  }

  String with(Object... values) {
    if (parts.length > 0 && areTexts(values)) {
      return joined(values);
    }
    synchronized (format) { // one is not made for several threads
      return format.format(values);
    }
  }

  private boolean areTexts(Object... values) {
    for (int argument : arguments) {
      if (argument >= values.length || !(values[argument] instanceof String)) {
        return false;
      }
    }
    return true;
  }

  private String joined(Object... values) {
    StringBuilder text = new StringBuilder(parts[0]);
    for (int i = 0; i < arguments.length; i++) {
      text.append(values[arguments[i]]).append(parts[2 * i + 2]);
    }
    return text.toString();
  }
}
