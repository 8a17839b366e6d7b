package withers.report.schedule.cli;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import withers.report.json.Json;

/**
 * What the schedule does, line by line: for people, or as a JSON object in each line. It holds what
 * commands say, and so no details of people.
 *
 * @param clock in the zone in which people are told times
 * @param isJson whether each line is a JSON object
 * @param lines takes the lines
 */
record ScheduleLog(Clock clock, boolean isJson, Consumer<String> lines) {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT);

  /** How much a line needs to be seen. */
  enum Level {
    INFO,
    ERROR
  }

  /**
   * What a line is about.
   *
   * @param job the job's name
   * @param start the due time for which it was started
   * @param command the command that speaks; null for the schedule itself
   * @param run the run that it made or told of; null when there is none
   * @param code the exit code; null while nothing has ended
   */
  record About(
      @Nullable String job,
      @Nullable Instant start,
      @Nullable String command,
      @Nullable String run,
      @Nullable Integer code) {
    static final About NOTHING = new About(null, null, null, null, null);

    static About job(String name) {
      return new About(name, null, null, null, null);
    }

    About start(Instant due) {
      return new About(job, due, command, run, code);
    }

    About command(String name) {
      return new About(job, start, name, run, code);
    }

    About ended(@Nullable String lastRun, int exitCode) {
      return new About(job, start, command, lastRun, exitCode);
    }
  }

  void info(About about, String text) {
    tell(Level.INFO, about, text);
  }

  void error(About about, String text) {
    tell(Level.ERROR, about, text);
  }

  private synchronized void tell(Level level, About about, String text) {
    lines.accept(isJson ? json(level, about, text) : plain(about, text));
  }

  private String plain(About about, String text) {
    String who = about.job() == null ? "schedule" : about.job();
    return "%s %s: %s".formatted(TIME.format(clock.instant().atZone(clock.getZone())), who, text);
  }

  private String json(Level level, About about, String text) {
    Map<String, Object> line = new LinkedHashMap<>();
    line.put("at", clock.instant().truncatedTo(ChronoUnit.MILLIS).toString());
    line.put("level", level.name().toLowerCase(Locale.ROOT));
    put(line, "job", about.job());
    put(line, "start", about.start() == null ? null : about.start().toString());
    put(line, "command", about.command());
    put(line, "run", about.run());
    put(line, "code", about.code());
    line.put("text", text);
    return Json.line(line);
  }

  private static void put(Map<String, Object> line, String name, @Nullable Object value) {
    if (value != null) {
      line.put(name, value);
    }
  }

  /** A time as people read it. */
  String time(Instant instant, ZoneId zone) {
    return "%s (%s)".formatted(TIME.format(instant.atZone(zone)), zone);
  }
}
