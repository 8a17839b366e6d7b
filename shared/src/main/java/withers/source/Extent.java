package withers.source;

import java.time.LocalDate;

/** How much of its records a source put into an export, and so what a missing record means. */
public sealed interface Extent {

  /** Everything that the source holds: a record that is missing is no longer listed. */
  record Full() implements Extent {}

  /** Everything dated from the first to the last day, both included. */
  record Window(LocalDate from, LocalDate to) implements Extent {
    public Window {
      if (to.isBefore(from)) {
        throw new IllegalArgumentException(
            "Expected a window that ends on or after its start, but found " + from + " to " + to);
      }
    }
  }

  /** Only what changed since the last export: a record that is missing is unchanged. */
  record Changes() implements Extent {}
}
