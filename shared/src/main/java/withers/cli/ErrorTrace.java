package withers.cli;

import java.util.Arrays;
import java.util.stream.Stream;

/**
 * The way to an error: classes, methods and lines, without messages, since those could hold
 * people's details.
 */
final class ErrorTrace {
  private static final int MOST_CAUSES = 10;

  private ErrorTrace() {}

  static Stream<String> of(Throwable thrown) {
    return Stream.iterate(thrown, cause -> cause != null, Throwable::getCause)
        .limit(MOST_CAUSES)
        .flatMap(ErrorTrace::one);
  }

  private static Stream<String> one(Throwable thrown) {
    return Stream.concat(
        Stream.of(thrown.getClass().getName()),
        Arrays.stream(thrown.getStackTrace()).map(frame -> "    at " + frame));
  }

  /** The innermost place of this project on the way: {@code Workspace.java, line 12}. */
  static String origin(Throwable thrown) {
    return Arrays.stream(thrown.getStackTrace())
        .filter(frame -> frame.getClassName().startsWith("withers."))
        .findFirst()
        .map(frame -> "%s, line %d".formatted(frame.getFileName(), frame.getLineNumber()))
        .orElse("outside the project");
  }
}
