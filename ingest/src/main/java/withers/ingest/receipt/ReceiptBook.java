package withers.ingest.receipt;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import withers.id.ImportId;
import withers.ingest.ExportSet;
import withers.ingest.ImportReport;
import withers.ingest.file.ExportFile;

/** Puts receipts together while exports are taken one after another. */
public final class ReceiptBook {

  /**
   * A file that is to be read.
   *
   * @param shown as in {@link Receipt#file}
   */
  public record Entry(Path path, String shown, FileState state) {}

  private final Map<Path, Entry> entries = new HashMap<>();
  private final Map<Path, List<ExportSet>> expected = new HashMap<>();
  private final Map<Path, List<Receipt.Reading>> readings = new HashMap<>();
  private final Map<Path, List<String>> refusals = new HashMap<>();
  private final Instant begun;

  /**
   * @param files what is to be read
   * @param begun when that began
   */
  public ReceiptBook(List<Entry> files, Instant begun) {
    files.forEach(file -> entries.put(file.path(), file));
    this.begun = begun;
  }

  /** Notes that a file is part of this export. */
  public void expect(ExportSet set) {
    paths(set).forEach(path -> add(expected, path, set));
  }

  /** Notes why a file, or something in it, can't be taken. */
  public void refuse(Path path, String message) {
    add(refusals, path, message);
  }

  /** Notes why an export can't be taken. */
  public void refuse(ExportSet set, String message) {
    paths(set).forEach(path -> refuse(path, message));
    paths(set).forEach(path -> expected.getOrDefault(path, List.of()).remove(set));
  }

  /**
   * Notes what became of an export.
   *
   * @param marker the source's newest marker now
   */
  public void take(ImportReport report, Optional<ImportId> marker) {
    for (ExportFile file : report.set().files()) {
      add(readings, file.place().path(), reading(report, file, marker));
    }
    paths(report.set())
        .forEach(path -> expected.getOrDefault(path, List.of()).remove(report.set()));
  }

  private static Receipt.Reading reading(
      ImportReport report, ExportFile file, Optional<ImportId> marker) {
    ExportSet set = report.set();
    return new Receipt.Reading(
        set.profile().id(),
        set.exportDate(),
        Receipt.extent(set.extent()),
        file.name(),
        file.sha256(),
        report.rows().getOrDefault(file.sha256(), 0L),
        set.profile().digest(),
        report.result(),
        marker,
        report.tally(),
        report.quarantine().map(path -> path.getFileName().toString()));
  }

  /** The receipts of this export's files, but for those that are part of others still to come. */
  public List<Receipt> finished(ExportSet set, Instant now) {
    return paths(set).stream()
        .filter(path -> expected.getOrDefault(path, List.of()).isEmpty())
        .flatMap(path -> receipt(path, now).stream())
        .toList();
  }

  /** The receipts of files of which nothing could be taken. */
  public List<Receipt> refused(Instant now) {
    return refusals.keySet().stream()
        .filter(path -> !expected.containsKey(path))
        .flatMap(path -> receipt(path, now).stream())
        .toList();
  }

  private Optional<Receipt> receipt(Path path, Instant now) {
    return Optional.ofNullable(entries.get(path))
        .map(
            entry ->
                new Receipt(
                    entry.shown(),
                    entry.state(),
                    begun,
                    now,
                    readings.getOrDefault(path, List.of()),
                    refusals.getOrDefault(path, List.of())));
  }

  private static Set<Path> paths(ExportSet set) {
    return set.files().stream().map(file -> file.place().path()).collect(Collectors.toSet());
  }

  private static <T> void add(Map<Path, List<T>> map, Path path, T one) {
    map.computeIfAbsent(path, p -> new ArrayList<>()).add(one);
  }
}
