package withers.ingest.sniff;

import java.util.List;
import java.util.OptionalLong;

/**
 * Finds the quote. The quotation mark is the standard's, and taken where nothing speaks against it;
 * the apostrophe and no quotes at all need evidence.
 */
public final class QuotingSniffer {

  /**
   * Share of records with cells in apostrophes from which on these are a habit, if not one alone.
   */
  private static final int HABIT = 50;

  private QuotingSniffer() {}

  /**
   * What may stand around the cells of a text with this delimiter.
   *
   * @param whole whether the text is all there is
   */
  public static Finding<Quoting> find(String text, Delimiter delimiter, boolean whole) {
    List<SampleRecord> plain = records(text, delimiter, Quoting.NONE, whole);
    long inApostrophes = plain.stream().filter(r -> isQuoted(r, '\'')).count();
    int share = share(plain, inApostrophes);
    if (inApostrophes > 1 && share >= HABIT) {
      return apostrophes(text, delimiter, whole, plain, share);
    }
    if (text.indexOf('"') < 0) {
      return Finding.certain(Quoting.DOUBLE, "no cell is quoted");
    }
    List<SampleRecord> quoted = records(text, delimiter, Quoting.DOUBLE, whole);
    long flaws = quoted.stream().filter(record -> !record.isSound()).count();
    return flaws == 0
        ? Finding.certain(Quoting.DOUBLE, "every quotation mark stands where RFC 4180 has it")
        : perhapsNone(flaws, Widths.of(plain).share());
  }

  private static List<SampleRecord> records(
      String text, Delimiter delimiter, Quoting quoting, boolean whole) {
    return SampleReader.read(text, new Dialect(delimiter, quoting), whole).stream()
        .filter(record -> !record.isBlank())
        .toList();
  }

  private static Finding<Quoting> apostrophes(
      String text, Delimiter delimiter, boolean whole, List<SampleRecord> plain, int share) {
    String evidence = share + " % of the records have cells in apostrophes";
    boolean header = hasQuotedHeader(plain, records(text, delimiter, Quoting.SINGLE, whole));
    return header
        ? Finding.certain(Quoting.SINGLE, evidence + ", and so are the names of all columns")
        : new Finding<>(
            List.of(
                new Guess<>(Quoting.SINGLE, 50, evidence),
                new Guess<>(Quoting.DOUBLE, 50, "the names of the columns are in none")));
  }

  /** Whether all cells of the first record of full width are in apostrophes. */
  private static boolean hasQuotedHeader(List<SampleRecord> plain, List<SampleRecord> unquoted) {
    int width = Widths.of(unquoted).commonest();
    OptionalLong line =
        unquoted.stream()
            .filter(record -> record.width() == width)
            .mapToLong(SampleRecord::line)
            .findFirst();
    return plain.stream()
        .filter(record -> line.isPresent() && record.line() == line.getAsLong())
        .allMatch(record -> record.cells().stream().allMatch(cell -> isQuoted(cell, '\'')));
  }

  private static Finding<Quoting> perhapsNone(long flaws, int share) {
    String evidence =
        "%,d records have quotation marks where RFC 4180 allows none; without quoting %d %% have one width"
            .formatted(flaws, share);
    int none = share / 2;
    return new Finding<>(
        List.of(
            new Guess<>(Quoting.DOUBLE, 50, evidence), new Guess<>(Quoting.NONE, none, evidence)));
  }

  private static boolean isQuoted(SampleRecord record, char quote) {
    return record.cells().stream().anyMatch(cell -> isQuoted(cell, quote));
  }

  private static boolean isQuoted(String cell, char quote) {
    int last = cell.length() - 1;
    return last > 0 && cell.charAt(0) == quote && cell.charAt(last) == quote;
  }

  private static int share(List<SampleRecord> records, long count) {
    return records.isEmpty() ? 0 : (int) (count * 100 / records.size());
  }
}
