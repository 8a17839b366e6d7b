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

  /** A NUL character, which no export's text holds. */
  public static InputRefusedException nul(String file, long line) {
    return refused(
        "a CSV file, which is text",
        "a NUL character, as in binary files and broken text",
        file + ", line " + line,
        "export the records as CSV, or " + AGAIN);
  }

  /**
   * No UTF-8, and nobody knows what else.
   *
   * @param guesses what it may be, in words; empty when nothing else makes sense
   */
  public static InputRefusedException charsetInDoubt(String file, long line, String guesses) {
    String perhaps =
        guesses.isEmpty()
            ? "what it is could not be found out; "
            : "it may be in %s, but that is not sure; ".formatted(guesses);
    return refused(
        "text in UTF-8",
        "bytes that are none",
        file + ", line " + line,
        perhaps
            + "write the right character set under format: charset in the profile, or export as UTF-8");
  }

  /** Several delimiters give a header with all columns. */
  public static InputRefusedException delimiterInDoubt(String file, String readings, String words) {
    return refused(
        "one way to tell the columns apart",
        readings,
        file,
        "write format: delimiter: %s in the profile, whichever is right".formatted(words));
  }

  /** The columns are there, but with another delimiter than the profile's. */
  public static InputRefusedException otherDelimiter(
      String file, long line, String expected, String found) {
    return refused(
        "columns separated by " + expected + ", as the profile says",
        "them separated by " + found,
        file + ", line " + line,
        "if the export's layout has changed, write format: delimiter: %s in the profile"
            .formatted(found));
  }

  /** Cells stand in apostrophes, which may be quotes or part of them. */
  public static InputRefusedException quotingInDoubt(String file, String evidence) {
    return refused(
        "one way to read cells in apostrophes",
        "two: without the apostrophes, or with them (%s)".formatted(evidence),
        file,
        "write format: quote: single in the profile to read them without, format: quote: double to"
            + " read them with");
  }

  /** A cell or row beyond all measure, most likely for a quote that is never closed. */
  public static InputRefusedException tooLong(String file, long line, String what, int most) {
    return refused(
        "%s of at most %,d characters".formatted(what, most),
        "a longer one",
        file + ", row from line " + line,
        "a quote may be opened there and never closed; " + AGAIN);
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
        "the file is cut off; %s. If the row holds totals, write its first words under format: totals in the profile"
            .formatted(AGAIN));
  }

  public static InputRefusedException missingColumns(
      String file, long line, List<String> missing, String advice) {
    String names = missing.stream().map("\"%s\""::formatted).collect(Collectors.joining(", "));
    return refused(
        missing.size() == 1 ? "a column " + names : "columns " + names,
        "none of that name in the header",
        file + ", line " + line,
        advice);
  }

  public static InputRefusedException twice(String file, long line, String header) {
    return refused(
        "one column \"%s\"".formatted(header),
        "several of that name in the header",
        file + ", line " + line,
        "name the one that is meant by its place among them, such as \"%s#2\", in the profile"
            .formatted(header));
  }

  private static InputRefusedException refused(
      String expected, String found, String place, String advice) {
    return new InputRefusedException(
        "Expected %s, but found %s (%s): %s. Nothing was changed."
            .formatted(expected, found, place, advice));
  }
}
