package withers.ingest;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.Optional;
import withers.id.ImportId;
import withers.ingest.change.ChangeDetector;
import withers.ingest.known.Preparation;
import withers.ingest.known.UnrecognisableException;

/**
 * Keeps an export for the next one: most of it while the last batch is being written, the rest when
 * the import is visible. The import stands, whatever becomes of this: the next one will read every
 * row.
 */
final class Keeping {

  /** A way of preparing it. */
  @FunctionalInterface
  interface Way {
    Preparation prepare(ChangeDetector detector) throws IOException;
  }

  private final Optional<Way> way;
  private Optional<Preparation> prepared = Optional.empty();
  private Optional<String> failure = Optional.empty();

  /**
   * @param way empty when it is not kept
   */
  Keeping(Optional<Way> way) {
    this.way = way;
  }

  /** Prepares it, after the detector's conclusion. */
  void prepare(ChangeDetector detector) {
    trying(
        () -> {
          if (way.isPresent()) {
            prepared = Optional.of(way.get().prepare(detector));
          }
        });
  }

  /**
   * Keeps it.
   *
   * @return why it was not kept, if it should have been
   */
  Optional<String> keep(ImportId parent, LocalDate date) {
    trying(
        () -> {
          if (prepared.isPresent()) {
            prepared.get().keep(parent, date);
          }
        });
    return failure;
  }

  @FunctionalInterface
  private interface Work {
    void run() throws IOException;
  }

  private void trying(Work work) {
    try {
      work.run();
    } catch (IOException | UncheckedIOException | UnrecognisableException e) {
      prepared = Optional.empty();
      failure = Optional.of(String.valueOf(e.getMessage()));
    }
  }
}
