package withers.log;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import withers.id.ImportId;
import withers.id.SourceId;
import withers.source.Extent;
import withers.source.SourceDescription;

/**
 * The line that makes an import visible, whole or not at all. Markers of one source form a chain:
 * each names the newest one that it has seen.
 *
 * @param parent the source's newest marker when the import compared itself with the log; empty for
 *     the first
 * @param chain what the marker continues: a source's imports, or the follow-ups' runs
 * @param source who sent it and what it covers; empty for a run
 * @param exportDate when the source said so; for a run, the day it judged
 * @param extent how much of its records the source sent
 * @param files what was read
 * @param tally what became of its rows
 * @param withheld export dates of this source whose disappearances are withheld, as known after
 *     this import
 * @param confirmed export dates of this source whose disappearances an operator has confirmed
 * @param recordedAt when this program committed it; never part of a finding
 */
public record ImportMarker(
    ImportId id,
    Optional<ImportId> parent,
    SourceId chain,
    Optional<SourceDescription> source,
    LocalDate exportDate,
    Extent extent,
    List<FileRead> files,
    Tally tally,
    SortedSet<LocalDate> withheld,
    SortedSet<LocalDate> confirmed,
    Instant recordedAt) {

  public ImportMarker {
    files = List.copyOf(files);
    withheld = java.util.Collections.unmodifiableSortedSet(new TreeSet<>(withheld));
    confirmed = java.util.Collections.unmodifiableSortedSet(new TreeSet<>(confirmed));
  }

  /**
   * A file of an import.
   *
   * @param name the file's name without folders
   * @param sha256 digest of its bytes, lower-case hexadecimal
   * @param profile digest of what it was read with: the profile and, in an export set, the files
   *     that were joined to it
   */
  public record FileRead(String name, String sha256, long rows, String profile) {}
}
