package withers.ingest.xlsx;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import withers.source.InputRefusedException;

/** What is said about spreadsheets that can't be taken. */
final class XlsxRefusals {

  private static final int MOST_NAMED = 3;
  private static final int LONGEST_NAME = 31; // what spreadsheet programs allow: common practice

  private XlsxRefusals() {}

  static InputRefusedException broken(String file, Throwable cause) {
    InputRefusedException refused =
        refused(
            "a whole spreadsheet",
            "one that is damaged, or written in a way of its own",
            file,
            "open it, and save it as .xlsx or as CSV");
    refused.initCause(cause);
    return refused;
  }

  static InputRefusedException tooLarge(String file, String what, long most) {
    return refused(
        String.format(Locale.ROOT, "a spreadsheet with at most %,d %s", most, what),
        "more",
        file,
        "have it exported as CSV, or in several files");
  }

  static InputRefusedException noRows(String file) {
    return refused(
        "a sheet with a header and rows", "none that is shown", file, "ask for the export again");
  }

  static InputRefusedException severalSheets(String file, List<String> sheets) {
    return refused(
        "one sheet with rows",
        "%d: %s".formatted(sheets.size(), named(sheets)),
        file,
        "name the one to read under format: sheet in the profile");
  }

  static InputRefusedException noSuchSheet(String file, String sheet, List<String> sheets) {
    return refused(
        "a sheet \"%s\"".formatted(sheet),
        sheets.isEmpty() ? "no sheets" : "only " + named(sheets),
        file,
        "put the sheet's name right in the profile");
  }

  private static String named(List<String> sheets) {
    String names =
        sheets.stream()
            .limit(MOST_NAMED)
            .map(XlsxRefusals::shown)
            .collect(Collectors.joining(", "));
    return sheets.size() > MOST_NAMED ? names + " and others" : names;
  }

  /** A sheet's name is whatever its file says, which may be no name at all. */
  private static String shown(String sheet) {
    String printable = sheet.replaceAll("[\\p{Cc}\\p{Cf}\"]", "?");
    return printable.length() > LONGEST_NAME
        ? "\"%s...\"".formatted(printable.substring(0, LONGEST_NAME))
        : "\"%s\"".formatted(printable);
  }

  private static InputRefusedException refused(
      String expected, String found, String place, String advice) {
    return new InputRefusedException(
        "Expected %s, but found %s (%s): %s. Nothing was changed."
            .formatted(expected, found, place, advice));
  }
}
