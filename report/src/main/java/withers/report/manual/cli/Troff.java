package withers.report.manual.cli;

import java.util.Arrays;
import java.util.stream.Collectors;

/**
 * A manual page in the making: requests of troff's {@code man} macros, with text that is escaped so
 * that it is shown as it was given. ASCII only, whatever the text holds.
 */
final class Troff {
  private final StringBuilder page = new StringBuilder();

  /** Asks for a macro; each argument is one, whatever white space it holds. */
  Troff macro(String name, String... arguments) {
    String words =
        Arrays.stream(arguments)
            .map(argument -> " \"" + escaped(argument) + "\"")
            .collect(Collectors.joining());
    return line("." + name + words);
  }

  /** Text of a paragraph; line breaks in it are white space. */
  Troff text(String text) {
    return literal(text.strip().replaceAll("\\s+", " "));
  }

  /** A line that is kept as it is, between the requests {@code nf} and {@code fi}. */
  Troff literal(String line) {
    String escaped = escaped(line);
    return line(escaped.matches("(?s)[.'].*") ? "\\&" + escaped : escaped);
  }

  /** The page so far. */
  @Override
  public String toString() {
    return page.toString();
  }

  private Troff line(String line) {
    page.append(line).append('\n');
    return this;
  }

  private static String escaped(String text) {
    return text.codePoints().mapToObj(Troff::escaped).collect(Collectors.joining());
  }

  /** The names are those of {@code groff_char(7)}: as signs of a keyboard, not of a typesetter. */
  private static String escaped(int sign) {
    return switch (sign) {
      case '\\' -> "\\e";
      case '-' -> "\\-";
      case '"' -> "\\(dq";
      case '\'' -> "\\(aq";
      case '`' -> "\\(ga";
      case '^' -> "\\(ha";
      case '~' -> "\\(ti";
      default -> sign < 0x7f ? Character.toString(sign) : "\\[u%04X]".formatted(sign);
    };
  }
}
