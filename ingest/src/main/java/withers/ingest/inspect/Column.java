package withers.ingest.inspect;

import java.util.BitSet;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/** A column of a file: its header, its cells, and what they look like. Not safe for threads. */
final class Column {

  private static final int MOST_LOOKED_AT = 3_000;

  private final int place;
  private final String header;
  private final HeaderWords.Meaning meaning;
  private final List<String> cells;
  private final BitSet filled = new BitSet();
  private final Map<String, Integer> counts = new HashMap<>();
  private final Map<Shape, Double> shapes = new EnumMap<>(Shape.class);
  private final Map<CellWords.Topic, Double> topics = new EnumMap<>(CellWords.Topic.class);
  private final Map<String, Optional<DayText>> days = new HashMap<>();

  Column(int place, String header, HeaderWords.Meaning meaning, List<String> cells) {
    this.place = place;
    this.header = header;
    this.meaning = meaning;
    this.cells = cells;
    for (int row = 0; row < cells.size(); row++) {
      if (isFilled(cells.get(row))) {
        filled.set(row);
        counts.merge(cells.get(row), 1, Integer::sum);
      }
    }
  }

  /** Days of noughts and dashes alone say nothing. */
  private static boolean isFilled(String cell) {
    return cell.codePoints().anyMatch(c -> Character.isLetter(c) || c >= '1' && c <= '9');
  }

  static List<Column> of(Table table, HeaderWords words) {
    List<HeaderWords.Meaning> meanings = words.readAll(table.header());
    return IntStream.range(0, table.header().size())
        .mapToObj(
            place ->
                new Column(
                    place,
                    table.header().get(place),
                    meanings.get(place),
                    table.rows().stream().map(row -> row.get(place)).toList()))
        .toList();
  }

  int place() {
    return place;
  }

  String header() {
    return header;
  }

  HeaderWords.Meaning meaning() {
    return meaning;
  }

  int rows() {
    return cells.size();
  }

  String cell(int row) {
    return cells.get(row);
  }

  /** The rows in which it says something. */
  BitSet filledRows() {
    return filled;
  }

  boolean isFilled(int row) {
    return filled.get(row);
  }

  int filled() {
    return filled.cardinality();
  }

  boolean isEmpty() {
    return filled.isEmpty();
  }

  /** Share of rows in which it says something, 0 to 1. */
  double fill() {
    return rows() == 0 ? 0 : (double) filled() / rows();
  }

  /** Its different cells and how often each stands there. */
  Map<String, Integer> counts() {
    return Collections.unmodifiableMap(counts);
  }

  int distinct() {
    return counts.size();
  }

  /** Different cells among those that are filled, 0 to 1. */
  double variety() {
    return isEmpty() ? 0 : (double) distinct() / filled();
  }

  /** Share of the filled cells that look so, 0 to 1. */
  double share(Shape shape) {
    Double known = shapes.get(shape);
    if (known == null) {
      known = share(shape::fits);
      shapes.put(shape, known);
    }
    return known;
  }

  /** Share of the filled cells that are words of this list, 0 to 1. */
  double share(CellWords.Topic topic, CellWords words) {
    Double known = topics.get(topic);
    if (known == null) {
      known = share(cell -> words.read(topic, cell).isPresent());
      topics.put(topic, known);
    }
    return known;
  }

  private double share(Predicate<String> test) {
    int seen = 0;
    int fit = 0;
    int left = MOST_LOOKED_AT;
    for (Map.Entry<String, Integer> cell : counts.entrySet()) {
      if (left-- == 0) {
        break;
      }
      seen += cell.getValue();
      fit += test.test(cell.getKey()) ? cell.getValue() : 0;
    }
    return seen == 0 ? 0 : (double) fit / seen;
  }

  /** The cell of a row as a day, if it has the form of one. */
  Optional<DayText> day(int row) {
    return days.computeIfAbsent(cells.get(row), DayText::of);
  }

  /** Whether most of its cells look like chip numbers. */
  boolean holdsChips() {
    return chips() >= 0.5;
  }

  /** Share of cells that look like chip numbers of any kind, 0 to 1. */
  double chips() {
    return share(Shape.ISO_CHIP) + share(Shape.OTHER_CHIP);
  }

  boolean holdsDays() {
    return share(Shape.DAY) >= 0.7;
  }

  /** Header and counts, never a cell. */
  @Override
  public String toString() {
    return String.format(Locale.ROOT, "column %d \"%s\", %d filled", place + 1, header, filled());
  }
}
