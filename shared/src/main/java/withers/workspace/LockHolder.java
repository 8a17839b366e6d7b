package withers.workspace;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;

/**
 * Who holds a workspace, in words for those who have to wait. Nothing but words: the lock itself is
 * the system's.
 */
final class LockHolder {
  private static final String UNKNOWN = "another process";

  private LockHolder() {}

  static String describe(String activity, ZonedDateTime since) {
    return "%s, running \"%s\" since %s".formatted(ThisProcess.name(), activity, time(since));
  }

  private static String time(ZonedDateTime since) {
    return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(since.truncatedTo(ChronoUnit.SECONDS));
  }

  /** What the holder wrote; a holder that has only just begun may not have written yet. */
  static String read(Path file) {
    try {
      String words = Files.readString(file, StandardCharsets.UTF_8).strip();
      return words.isEmpty() ? UNKNOWN : words;
    } catch (IOException unreadable) {
      return UNKNOWN;
    }
  }
}
