package withers.ingest.answers;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.ingest.profile.DatePattern;

/** Days as people type them into a text, read only where they can mean one day. */
final class TypedDay {

  private static final List<DatePattern> CLEAR =
      Stream.of("yyyy-M-d", "yyyy/M/d", "yyyy.M.d", "d MMM yyyy", "d MMMM yyyy", "d.M.yyyy")
          .map(DatePattern::of)
          .toList();

  private static final List<DatePattern> EITHER =
      Stream.of("d/M/yyyy", "M/d/yyyy", "d-M-yyyy", "M-d-yyyy").map(DatePattern::of).toList();

  private TypedDay() {}

  /** The day; empty when it is none, or may be two. */
  static Optional<LocalDate> read(String text) {
    return CLEAR.stream()
        .flatMap(pattern -> pattern.read(text).stream())
        .findFirst()
        .or(() -> only(text));
  }

  private static Optional<LocalDate> only(String text) {
    List<LocalDate> days =
        EITHER.stream().flatMap(pattern -> pattern.read(text).stream()).distinct().toList();
    return days.size() == 1 ? Optional.of(days.get(0)) : Optional.empty();
  }
}
