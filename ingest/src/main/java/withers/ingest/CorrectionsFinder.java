package withers.ingest;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import withers.ingest.file.ExportFile;
import withers.ingest.profile.DatePattern;
import withers.ingest.profile.FileFormat;
import withers.ingest.profile.Profiles;
import withers.ingest.profile.SourceProfile;
import withers.ingest.profile.TextFormat;
import withers.ingest.quarantine.CorrectedRows;
import withers.ingest.quarantine.QuarantineSign;
import withers.ingest.rows.Rows;
import withers.ingest.sniff.Delimiter;
import withers.ingest.sniff.Quoting;
import withers.source.InputRefusedException;

/**
 * Finds out whose rows stand in a quarantine file that comes back.
 *
 * @param given the date that the command line gives
 */
record CorrectionsFinder(Profiles profiles, Optional<LocalDate> given) {

  /**
   * A quarantine file.
   *
   * @param format how it is written
   */
  record Corrections(SourceProfile profile, LocalDate date, FileFormat format, ExportFile file) {}

  /**
   * How a spreadsheet saved it.
   *
   * @param delimiter of text
   * @param sheet of a spreadsheet
   */
  private record Saved(Optional<Delimiter> delimiter, Optional<String> sheet) {

    static Optional<Saved> as(Path path) {
      Optional<Saved> text =
          QuarantineSign.delimiter(path).map(one -> new Saved(Optional.of(one), Optional.empty()));
      return text.or(
          () ->
              QuarantineSign.sheet(path)
                  .map(name -> new Saved(Optional.empty(), Optional.of(name))));
    }

    FileFormat format(Optional<Charset> charset, DatePattern date) {
      TextFormat text = new TextFormat(delimiter, Optional.of(Quoting.DOUBLE), charset);
      return new FileFormat(text, date).onSheet(sheet);
    }
  }

  /**
   * What a file is, if it is a quarantine file.
   *
   * @throws InputRefusedException when it is one that can't be taken
   */
  Optional<Corrections> find(Incoming incoming, Optional<SourceProfile> named) {
    return Saved.as(incoming.path()).map(saved -> read(incoming, saved, named));
  }

  private Corrections read(Incoming incoming, Saved saved, Optional<SourceProfile> named) {
    CorrectedRows.About about = about(incoming.path(), saved);
    SourceProfile profile = profile(incoming.name(), about);
    named
        .filter(other -> !other.id().equals(profile.id()))
        .ifPresent(other -> refuse("rows of " + other.id(), "rows of " + profile.id(), incoming));
    given
        .filter(date -> !date.equals(about.exportDate()))
        .ifPresent(date -> refuse(date + " as export date", "" + about.exportDate(), incoming));
    FileFormat format = saved.format(profile.format().text().charset(), profile.format().date());
    ExportFile file = ExportFile.inspect(incoming.path(), format);
    return new Corrections(profile, about.exportDate(), format, file);
  }

  /**
   * Source and date are plain letters and digits, the same in all character sets that it may be.
   */
  private static CorrectedRows.About about(Path path, Saved saved) {
    FileFormat any =
        saved.format(Optional.of(StandardCharsets.ISO_8859_1), DatePattern.of("yyyy-MM-dd"));
    ExportFile file = ExportFile.inspect(path, any);
    try (Rows rows = OpenExport.rows(file, any, List.of(), bytes -> {})) {
      return CorrectedRows.about(rows);
    }
  }

  private SourceProfile profile(String name, CorrectedRows.About about) {
    return profiles
        .find(about.source())
        .orElseThrow(
            () ->
                new InputRefusedException(
                    "Expected rows of a source with a profile, but found rows of %s (%s): restore sources/%s.yaml. Nothing was changed."
                        .formatted(about.source(), name, about.source())));
  }

  private static void refuse(String expected, String found, Incoming incoming) {
    throw new InputRefusedException(
        "Expected %s, but found %s (%s): a quarantine file states itself whose rows it holds, and of which date. Nothing was changed."
            .formatted(expected, found, incoming.name()));
  }
}
