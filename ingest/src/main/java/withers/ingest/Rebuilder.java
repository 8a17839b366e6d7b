package withers.ingest;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import withers.chip.ChipNumberReader;
import withers.id.RecordKey;
import withers.ingest.change.Rebuilt;
import withers.ingest.file.ExportFile;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.Tally;
import withers.source.InputRefusedException;

/**
 * Rebuilds what a source has said so far, as far as an export needs it: for a short one of changes
 * alone, that is what was said of the records that it states. Safe for several threads.
 */
final class Rebuilder {

  /**
   * Of an export with more bytes for each event of its source, reading the keys first is dearer.
   */
  private static final long BYTES_FOR_EVENT = 16;

  private final ChipNumberReader numbers;
  private final long shortExport;

  /**
   * @param shortExport bytes of the longest export of which the keys are read first
   */
  Rebuilder(ChipNumberReader numbers, long shortExport) {
    this.numbers = numbers;
    this.shortExport = shortExport;
  }

  /** What an export is going to be compared with, as far as this log goes. */
  Rebuilt rebuild(ExportSet set, LogSnapshot now) {
    return keys(set, now)
        .flatMap(keys -> Rebuilt.of(now, set.export(), keys))
        .orElseGet(() -> Rebuilt.of(now, set.export()));
  }

  /** How many events a source has brought so far. */
  static long events(ExportSet set, LogSnapshot now) {
    return now.markers().stream()
        .filter(marker -> marker.chain().equals(set.profile().id()))
        .map(ImportMarker::tally)
        .mapToLong(Tally::events)
        .sum();
  }

  private Optional<Set<RecordKey>> keys(ExportSet set, LogSnapshot now) {
    long most = Math.min(shortExport, BYTES_FOR_EVENT * events(set, now));
    return Rebuilt.needsItsRecordsAlone(now, set.export())
            && set.joined().isEmpty()
            && isText(set, most)
        ? keys(set)
        : Optional.empty();
  }

  private static boolean isText(ExportSet set, long most) {
    return set.files().stream().allMatch(file -> file.content() == ExportFile.Content.TEXT)
        && set.files().stream().mapToLong(ExportFile::size).sum() <= most;
  }

  private Optional<Set<RecordKey>> keys(ExportSet set) {
    Set<RecordKey> keys = new HashSet<>();
    try {
      new ExportReader(set, numbers, Importer::noReference, bytes -> {})
          .read((file, header, row, translation) -> translation.named().ifPresent(keys::add));
      return Optional.of(keys);
    } catch (InputRefusedException broken) {
      return Optional.empty(); // what is to be said of it is said when its rows are taken
    }
  }
}
