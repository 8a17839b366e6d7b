package withers.log.kafka;

import withers.id.ImportId;

/**
 * One attempt at an import: what a marker makes visible.
 *
 * @param number of the record that began it; {@link #WITHOUT_CHUNKS} when none did
 */
record Attempt(ImportId importId, long number) {

  /** Of an import that brought nothing. */
  static final long WITHOUT_CHUNKS = -1;
}
