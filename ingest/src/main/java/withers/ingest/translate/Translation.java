package withers.ingest.translate;

import java.util.List;
import java.util.Optional;
import withers.contact.Referenced;
import withers.fact.ChipEvent;
import withers.id.RecordKey;

/** What became of a row. */
public sealed interface Translation {

  /** The key of its record; empty when it could not be read. */
  Optional<RecordKey> named();

  /**
   * What it states.
   *
   * @param statements at least one, at most one for each slot and subject
   * @param contacts the people and organisations behind the references in them
   */
  record Stated(RecordKey key, List<ChipEvent> statements, List<Referenced> contacts)
      implements Translation {

    @Override
    public Optional<RecordKey> named() {
      return Optional.of(key);
    }
  }

  /**
   * Why it can't be taken.
   *
   * @param key its key, when that could be read
   */
  record Rejected(Optional<RecordKey> key, Reject reject) implements Translation {

    @Override
    public Optional<RecordKey> named() {
      return key;
    }
  }
}
