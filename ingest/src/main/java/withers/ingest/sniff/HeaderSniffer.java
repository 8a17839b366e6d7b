package withers.ingest.sniff;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Finds the header, and what is no record. */
public final class HeaderSniffer {

  /** The header is looked for among so many records. */
  public static final int DEEPEST = 30;

  /** Words that sums start with, in a few languages; our own list. */
  private static final Set<String> TOTALS =
      Set.of(
          "total",
          "totals",
          "grand total",
          "subtotal",
          "sum",
          "count",
          "number of records",
          "gesamt",
          "summe",
          "anzahl",
          "insgesamt",
          "totaal",
          "aantal",
          "totale",
          "totali",
          "somme",
          "nombre",
          "suma",
          "razem",
          "ogółem",
          "celkem",
          "soucet",
          "součet",
          "összesen",
          "yhteensä",
          "i alt",
          "summa",
          "итого",
          "всего",
          "σύνολο");

  private HeaderSniffer() {}

  /**
   * Which of these records may be the header, by its place from 0.
   *
   * @param records the first of a file
   */
  public static Finding<Integer> find(List<SampleRecord> records) {
    int width = Widths.of(records).commonest();
    List<Guess<Integer>> guesses = new ArrayList<>();
    for (int i = 0; i < Math.min(DEEPEST, records.size()); i++) {
      guess(records.get(i), i, width, guesses.isEmpty()).ifPresent(guesses::add);
    }
    return new Finding<>(guesses);
  }

  private static Optional<Guess<Integer>> guess(
      SampleRecord record, int place, int width, boolean first) {
    boolean names = HeaderCells.are(record.cells());
    boolean fits = record.width() == width;
    if (!names || !fits) {
      return Optional.empty();
    }
    boolean filled = record.cells().stream().noneMatch(String::isBlank);
    int confidence = 40 + (first ? 40 : 0) + (filled ? 20 : 0);
    String evidence =
        "line %d holds names%s, as many as most records have cells%s"
            .formatted(
                record.line(),
                first ? " and is the first to do so" : "",
                filled ? "" : ", some of them empty");
    return Optional.of(new Guess<>(place, confidence, evidence));
  }

  /**
   * What each record may be, by its place; a guess, to be shown and not to be acted upon.
   *
   * @param header the header's place
   */
  public static Map<Integer, LineKind> kinds(List<SampleRecord> records, int header) {
    Map<Integer, LineKind> kinds = new TreeMap<>();
    for (int i = 0; i < records.size(); i++) {
      kinds.put(i, kind(records, i, header));
    }
    return kinds;
  }

  private static LineKind kind(List<SampleRecord> records, int place, int header) {
    SampleRecord record = records.get(place);
    if (record.isBlank()) {
      return LineKind.BLANK;
    }
    if (place <= header) {
      return place == header ? LineKind.HEADER : LineKind.TITLE;
    }
    if (spelt(record).toList().equals(spelt(records.get(header)).toList())) {
      return LineKind.REPEATED_HEADER;
    }
    return looksLikeTotals(record) ? LineKind.TOTALS : LineKind.RECORD;
  }

  /** Whether a record's first filled cell starts with a word for sums, and most cells are empty. */
  public static boolean looksLikeTotals(SampleRecord record) {
    List<String> filled = spelt(record).filter(cell -> !cell.isEmpty()).toList();
    return !filled.isEmpty()
        && (record.width() < 3 || filled.size() * 2 <= record.width())
        && TOTALS.contains(wordsOf(filled.get(0)));
  }

  private static String wordsOf(String cell) {
    return cell.replaceAll("[\\d.,:=\\s]+$", "").strip();
  }

  private static Stream<String> spelt(SampleRecord record) {
    return record.cells().stream().map(cell -> cell.strip().toLowerCase(Locale.ROOT));
  }
}
