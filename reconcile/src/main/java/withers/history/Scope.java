package withers.history;

import java.time.LocalDate;
import java.util.Optional;

/**
 * Which statements a run hears.
 *
 * @param asOf the day that is judged: what is dated later is not true yet
 * @param knownBy exports dated later are left out; empty means that all are heard
 */
public record Scope(LocalDate asOf, Optional<LocalDate> knownBy) {

  public static Scope asOf(LocalDate day) {
    return new Scope(day, Optional.empty());
  }

  /** Whether an export of this date is heard. */
  public boolean hears(LocalDate exportDate) {
    return knownBy.isEmpty() || !exportDate.isAfter(knownBy.get());
  }
}
