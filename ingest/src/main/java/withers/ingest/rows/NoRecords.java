package withers.ingest.rows;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Knows rows that hold no record, and counts them: blank ones, the header once more, and rows of
 * sums that the profile names. Whether a row is one follows from the row, the header and the
 * profile alone.
 */
public final class NoRecords {

  private final Header header;
  private final List<String> names;
  private final Optional<Pattern> totals;
  private long repeatedHeaders;
  private long totalsRows;

  /**
   * @param totals words that name rows of sums
   */
  public NoRecords(Header header, List<String> totals) {
    this.header = header;
    this.names = header.names().stream().map(Header::spelling).toList();
    this.totals = totals.isEmpty() ? Optional.empty() : Optional.of(pattern(totals));
  }

  /** A word of these, and perhaps a sum. */
  private static Pattern pattern(List<String> words) {
    return Pattern.compile(
        words.stream()
            .map(Header::spelling)
            .map(Pattern::quote)
            .collect(Collectors.joining("|", "(?:", ")\\s*[:=]?[\\s\\d.,']*")));
  }

  /** Whether the row holds no record. */
  public boolean include(Row row) {
    String first = firstFilled(row);
    if (first.isEmpty()) {
      return true;
    }
    if (totals.isPresent() && isTotals(first)) {
      totalsRows++;
      return true;
    }
    if (isHeader(row)) {
      repeatedHeaders++;
      return true;
    }
    return false;
  }

  private static String firstFilled(Row row) {
    for (int i = 0; i < row.size(); i++) {
      String cell = row.cell(i);
      if (!cell.isEmpty()) {
        return cell;
      }
    }
    return "";
  }

  private boolean isTotals(String first) {
    return totals.filter(words -> words.matcher(Header.spelling(first)).matches()).isPresent();
  }

  private boolean isHeader(Row row) {
    if (row.size() != header.size()) {
      return false;
    }
    for (int i = 0; i < row.size(); i++) {
      if (!isName(row.cell(i), names.get(i))) {
        return false;
      }
    }
    return true;
  }

  /** Most rows part from the header at the first sign of their first cell. */
  private static boolean isName(String cell, String name) {
    if (cell.isEmpty() || name.isEmpty()) {
      return cell.isEmpty() && name.isEmpty();
    }
    return mayBe(cell.charAt(0), name.charAt(0))
        && mayBe(cell.charAt(cell.length() - 1), name.charAt(name.length() - 1))
        && Header.spelling(cell).equals(name);
  }

  private static boolean mayBe(char c, char lowerCase) {
    return c >= 0x80 || lowerCase >= 0x80 || Character.toLowerCase(c) == lowerCase;
  }

  /**
   * What was passed over so far, in words; empty when it was blank rows at most.
   *
   * @param before how many filled lines stand before the header
   */
  public Optional<String> told(long before) {
    List<String> kinds = new ArrayList<>();
    add(kinds, before, "line before the header", "lines before the header");
    add(kinds, repeatedHeaders, "repeated header", "repeated headers");
    add(kinds, totalsRows, "row of totals", "rows of totals");
    return kinds.isEmpty()
        ? Optional.empty()
        : Optional.of("%s: passed over %s".formatted(header.file(), String.join(", ", kinds)));
  }

  private static void add(List<String> kinds, long count, String one, String many) {
    if (count > 0) {
      kinds.add(String.format(Locale.ROOT, "%,d %s", count, count == 1 ? one : many));
    }
  }
}
