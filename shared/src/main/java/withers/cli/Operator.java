package withers.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** The person at the terminal, if there is one. */
@FunctionalInterface
public interface Operator {

  /** Nobody is there: a schedule, or a script. */
  Operator NOBODY = Optional::empty;

  /**
   * A system property: {@code true} when standard input and standard error are a terminal. Java
   * can't tell, so the launcher does.
   */
  String PRESENT = "withers.asks";

  /**
   * The next line that the person types, empty text at the end of input; empty when nobody is
   * there.
   */
  Optional<String> answer();

  /** Whether there is anybody. */
  default boolean isThere() {
    return this != NOBODY;
  }

  /** Whoever started this process. */
  static Operator ofThisProcess() {
    if (!Boolean.getBoolean(PRESENT)) {
      return NOBODY;
    }
    // One for all questions: what was typed ahead waits in it.
    BufferedReader typed =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    return () -> next(typed);
  }

  private static Optional<String> next(BufferedReader typed) {
    try {
      String line = typed.readLine();
      return Optional.of(line == null ? "" : line);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
