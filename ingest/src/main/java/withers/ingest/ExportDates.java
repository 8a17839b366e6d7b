package withers.ingest;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import withers.ingest.file.ExportFile;
import withers.ingest.profile.DatePattern;
import withers.ingest.profile.ExportDateRule;
import withers.ingest.profile.ExtentRule;
import withers.ingest.profile.SourceProfile;
import withers.source.Extent;
import withers.source.InputRefusedException;

/**
 * Finds the date and the extent of an export.
 *
 * @param given the date that the command line gives; it outranks what a file says
 * @param window the window that the command line gives
 */
record ExportDates(Optional<LocalDate> given, Optional<Extent.Window> window) {

  private static final String IN_NAMES = "yyyy-MM-dd";

  LocalDate date(SourceProfile profile, ExportFile file) {
    return given.orElseGet(
        () ->
            switch (profile.exportDate().from()) {
              case FILE_NAME -> inName(profile, file);
              case COLUMN -> inColumn(profile, file);
              case COMMAND ->
                  throw missing(
                      file, "--export-date", "its profile says that the file doesn't tell it");
            });
  }

  private static LocalDate inName(SourceProfile profile, ExportFile file) {
    List<LocalDate> dates = datesInName(profile, file);
    if (dates.isEmpty()) {
      throw refused(
          "a date written as %s in the file's name".formatted(pattern(profile)),
          "none",
          file,
          "rename the file, or give --export-date");
    }
    return dates.get(dates.size() - 1);
  }

  private static LocalDate inColumn(SourceProfile profile, ExportFile file) {
    return ExportReader.statedDate(profile, file)
        .orElseThrow(
            () ->
                refused(
                    "rows that state the export date", "none", file, "ask for the export again"));
  }

  Extent extent(SourceProfile profile, ExportFile file) {
    return switch (profile.extent().kind()) {
      case FULL -> new Extent.Full();
      case CHANGES -> new Extent.Changes();
      case WINDOW -> window.<Extent>map(given -> given).orElseGet(() -> window(profile, file));
    };
  }

  private static Extent window(SourceProfile profile, ExportFile file) {
    boolean inName =
        profile
            .extent()
            .window()
            .filter(w -> w.bounds() == ExtentRule.Bounds.FILE_NAME)
            .isPresent();
    if (!inName) {
      throw missing(file, "--window", "its profile says that the file doesn't tell it");
    }
    List<LocalDate> dates = datesInName(profile, file);
    if (dates.size() < 2 || dates.get(1).isBefore(dates.get(0))) {
      throw refused(
          "the first and last day of the window, written as %s, in the file's name"
              .formatted(pattern(profile)),
          dates.size() < 2 ? dates.size() + " of them" : "the last before the first",
          file,
          "rename the file, or give --window");
    }
    return new Extent.Window(dates.get(0), dates.get(1));
  }

  private static List<LocalDate> datesInName(SourceProfile profile, ExportFile file) {
    return DatePattern.of(pattern(profile)).findIn(file.name());
  }

  private static String pattern(SourceProfile profile) {
    return profile.exportDate().from() == ExportDateRule.From.FILE_NAME
        ? profile.exportDate().detail()
        : IN_NAMES;
  }

  private static InputRefusedException missing(ExportFile file, String option, String why) {
    return refused(option, "none", file, why);
  }

  private static InputRefusedException refused(
      String expected, String found, ExportFile file, String advice) {
    return new InputRefusedException(
        "Expected %s, but found %s (%s): %s. Nothing was changed."
            .formatted(expected, found, file.name(), advice));
  }
}
