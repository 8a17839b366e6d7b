package withers.ingest.rows;

import java.util.List;
import java.util.stream.Collectors;
import withers.source.InputRefusedException;

/** What is said about a file that can't be taken. Never shows what is in a cell. */
public final class Refusals {

  private static final String AGAIN = "ask for it again";

  private Refusals() {}

  public static InputRefusedException empty(String file) {
    return refused("an export with a header and rows", "an empty file", file, AGAIN);
  }

  public static InputRefusedException binary(String file, String what) {
    return refused("a CSV file, which is text", what, file, "export the records as CSV");
  }

  public static InputRefusedException charset(String file, String charset, long line) {
    return refused(
        "text in " + charset,
        "bytes that are none",
        file + ", line " + line,
        "name the character set under format: charset in the profile, or export as UTF-8");
  }

  public static InputRefusedException openQuote(String file, long line) {
    return refused(
        "a closing quote",
        "the end of the file",
        file + ", row from line " + line,
        "the file is cut off, or a quote is missing; " + AGAIN);
  }

  public static InputRefusedException textAfterQuote(String file, long line) {
    return refused(
        "a delimiter or the end of the line after a closing quote",
        "other text",
        file + ", line " + line,
        "quotes inside a quoted cell must be doubled; export with quoting, or " + AGAIN);
  }

  public static InputRefusedException cutOff(String file, long line, int expected, int found) {
    return refused(
        "%d cells in the last row".formatted(expected),
        "%d and no end of line".formatted(found),
        file + ", line " + line,
        "the file is cut off; " + AGAIN);
  }

  public static InputRefusedException missingColumns(
      String file, List<String> missing, String advice) {
    String names = missing.stream().map("\"%s\""::formatted).collect(Collectors.joining(", "));
    return refused(
        missing.size() == 1 ? "a column " + names : "columns " + names,
        "none of that name in the header",
        file + ", line 1",
        advice);
  }

  public static InputRefusedException twice(String file, String header) {
    return refused(
        "one column \"%s\"".formatted(header),
        "several of that name in the header",
        file + ", line 1",
        "rename the others, or leave them out of the export");
  }

  private static InputRefusedException refused(
      String expected, String found, String place, String advice) {
    return new InputRefusedException(
        "Expected %s, but found %s (%s): %s. Nothing was changed."
            .formatted(expected, found, place, advice));
  }
}
