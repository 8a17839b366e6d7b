package withers.ingest;

import java.util.Optional;
import java.util.function.Supplier;
import withers.id.ImportId;

/** The id of the next attempt, which may be asked for before it is sure that there will be one. */
final class NextId {

  private final Supplier<ImportId> ids;
  private Optional<ImportId> next = Optional.empty();

  /**
   * @param ids gives a fresh id each time
   */
  NextId(Supplier<ImportId> ids) {
    this.ids = ids;
  }

  /** Tells it. */
  ImportId peek() {
    next = Optional.of(next.orElseGet(ids));
    return next.get();
  }

  /** Gives it to an attempt; the one after that has another. */
  ImportId take() {
    ImportId taken = peek();
    next = Optional.empty();
    return taken;
  }
}
