package withers.ingest;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;
import withers.ingest.change.Export;
import withers.ingest.file.ExportFile;
import withers.ingest.profile.ExtentRule;
import withers.ingest.profile.SourceProfile;
import withers.source.Extent;

/**
 * The files that together are one export of one source: only all of them tell what is missing.
 *
 * @param dateColumn whether every row must state the export date itself
 */
public record ExportSet(
    SourceProfile profile,
    LocalDate exportDate,
    Extent extent,
    boolean dateColumn,
    List<ExportFile> files) {

  public ExportSet {
    files = List.copyOf(files);
  }

  Export export() {
    return new Export(
        profile.id(),
        exportDate,
        extent,
        profile.extent().window().map(ExtentRule.WindowRule::by),
        profile.disappearance());
  }

  /** The names of its files, for messages. */
  public String names() {
    return files.stream().map(ExportFile::name).collect(Collectors.joining(", "));
  }
}
