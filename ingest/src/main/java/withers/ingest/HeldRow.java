package withers.ingest;

import java.util.Optional;
import java.util.function.Function;
import withers.id.RecordKey;
import withers.ingest.file.ExportFile;
import withers.ingest.known.KeyMark;
import withers.ingest.rows.Header;
import withers.ingest.rows.Row;
import withers.ingest.translate.Translation;

/**
 * A row of an export that was read and is held.
 *
 * @param key what its key is known by; empty when that could not be read
 */
record HeldRow(
    ExportFile file, Header header, UnreadRow row, Translation translation, Optional<KeyMark> key) {

  /**
   * Holds a row.
   *
   * @param marks tells what a key is known by
   */
  static HeldRow of(
      ExportFile file,
      Header header,
      Row row,
      Translation translation,
      Function<RecordKey, KeyMark> marks) {
    Optional<KeyMark> key = translation.named().map(marks);
    return new HeldRow(file, header, (UnreadRow) row, translation, key);
  }
}
