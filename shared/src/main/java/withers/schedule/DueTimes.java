package withers.schedule;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.zone.ZoneOffsetTransition;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * When a job is due: whenever the clocks of a zone show a time of a cron expression, once for each
 * time of each day. Where clocks are put forward, a time that they leap over is due when they leap;
 * several such times are one. Where clocks are put back, a time that they show twice is due the
 * first time.
 */
public record DueTimes(Cron cron, ZoneId zone) {

  /** The first due time after this instant; empty when none comes in eight years. */
  public Optional<Instant> after(Instant instant) {
    // Clocks that were put back show times again that were due before this instant.
    return times(reading(instant)).filter(due -> due.isAfter(instant)).findFirst();
  }

  /** The last due time up to this instant; empty when there was none in eight years. */
  public Optional<Instant> upTo(Instant instant) {
    return times(reading(instant))
        .takeWhile(due -> !due.isAfter(instant))
        .reduce((one, later) -> later)
        .or(() -> cron.upTo(reading(instant)).map(this::instant));
  }

  private Stream<Instant> times(LocalDateTime after) {
    return Stream.iterate(cron.after(after), Optional::isPresent, last -> last.flatMap(cron::after))
        .map(time -> instant(time.orElseThrow()));
  }

  private LocalDateTime reading(Instant instant) {
    return LocalDateTime.ofInstant(instant, zone);
  }

  /** Never falls when the time on the clock rises: no later time is due before an earlier one. */
  private Instant instant(LocalDateTime time) {
    ZoneOffsetTransition change = zone.getRules().getTransition(time);
    return change != null && change.isGap()
        ? change.getInstant()
        : time.atZone(zone).withEarlierOffsetAtOverlap().toInstant();
  }

  /** For people: {@code 30 2 * * * in Europe/Lisbon}. */
  @Override
  public String toString() {
    return "%s in %s".formatted(cron, zone);
  }
}
