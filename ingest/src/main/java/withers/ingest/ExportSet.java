package withers.ingest;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.ingest.change.Export;
import withers.ingest.file.ExportFile;
import withers.ingest.profile.ExtentRule;
import withers.ingest.profile.FileFormat;
import withers.ingest.profile.SourceProfile;
import withers.source.Extent;

/**
 * The files that together are one export of one source: only all of them tell what is missing.
 *
 * @param dateColumn whether every row must state the export date itself
 * @param joined files that say more about the rows, in the order in which they are joined
 * @param corrections how it is written, when it is no export but a quarantine file whose rows were
 *     put right: they are read as if the export of their date had said so
 */
public record ExportSet(
    SourceProfile profile,
    LocalDate exportDate,
    Extent extent,
    boolean dateColumn,
    Optional<FileFormat> corrections,
    List<ExportFile> files,
    List<JoinedFile> joined) {

  public ExportSet {
    files = List.copyOf(files);
    joined = List.copyOf(joined);
  }

  /**
   * A digest of all that decides, beside a file's own bytes, what its rows say: the profile and the
   * joined files. Another digest, another reading. Lower-case hexadecimal.
   */
  public String reading() {
    return joined.isEmpty() ? profile.digest() : Digests.of(parts());
  }

  private List<String> parts() {
    return Stream.concat(
            Stream.of(profile.digest()),
            joined.stream().map(one -> one.join().name() + " " + one.file().sha256()).sorted())
        .toList();
  }

  /** Whether it is a quarantine file: it may be small, and any number of its rows still wrong. */
  public boolean isCorrections() {
    return corrections.isPresent();
  }

  FileFormat format() {
    return corrections.orElse(profile.format());
  }

  /** The columns that its header must have; a quarantine file's are its own matter. */
  List<String> headers() {
    return isCorrections() ? List.of() : profile.ownHeaders();
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
