package withers.ingest.receipt;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import withers.id.ImportId;
import withers.id.SourceId;
import withers.ingest.ImportReport;
import withers.log.Tally;
import withers.source.Extent;

/**
 * What became of a file. It follows from the log and the file, and can be lost: then the file is
 * read once more. Holds nothing about people.
 *
 * @param file the file's path in the inbox, or its whole path when it lies elsewhere
 * @param state how the file looked before it was read
 * @param begun when reading began
 * @param ended when its last export was committed, or found to say nothing new
 * @param readings one for each export that the file is part of: an archive can be part of several
 * @param refusals why something in it could not be taken; then it is read again next time
 */
public record Receipt(
    String file,
    FileState state,
    Instant begun,
    Instant ended,
    List<Reading> readings,
    List<String> refusals) {

  /**
   * A part of an export.
   *
   * @param extent as {@link #extent} writes it
   * @param name the file's own name, an archive's entry with both
   * @param sha256 digest of the bytes, unpacked, lower-case hexadecimal
   * @param rows rows of this file; 0 when it was imported before
   * @param profile digest of the profile that it was read with
   * @param marker the source's newest marker by then: while the log holds that, it holds this
   * @param tally what became of all rows of the export
   * @param quarantine name of the file that holds the export's rejected rows
   */
  public record Reading(
      SourceId source,
      LocalDate exportDate,
      String extent,
      String name,
      String sha256,
      long rows,
      String profile,
      ImportReport.Result result,
      Optional<ImportId> marker,
      Tally tally,
      Optional<String> quarantine) {}

  public Receipt {
    readings = List.copyOf(readings);
    refusals = List.copyOf(refusals);
  }

  /** An extent in a word, with the days of a window. */
  public static String extent(Extent extent) {
    if (extent instanceof Extent.Window window) {
      return "window " + window.from() + ".." + window.to();
    }
    return extent instanceof Extent.Full ? "full" : "changes";
  }
}
