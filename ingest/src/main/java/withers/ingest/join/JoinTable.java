package withers.ingest.join;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import withers.ingest.profile.Join;
import withers.ingest.rows.Header;
import withers.ingest.rows.Row;
import withers.ingest.rows.Rows;
import withers.ingest.rows.Typed;
import withers.source.InputRefusedException;

/**
 * The rows of joined files by their keys, in memory: only the columns that the profile uses. Two
 * rows of one key that say the same are one; where they say something else, the key is ambiguous.
 */
public final class JoinTable {

  /** The most rows that joined files may have. */
  static final int MOST_ROWS = 5_000_000;

  private static final long FREE = -1;
  private static final long AMBIGUOUS = 1L << 62;
  private static final int FIRST_SLOTS = 1 << 10;
  private static final Typed UNKNOWN =
      new Typed(Typed.Kind.REFERENCE_UNKNOWN, Optional.empty(), "none in the joined file");
  private static final Typed SEVERAL =
      new Typed(
          Typed.Kind.REFERENCE_AMBIGUOUS,
          Optional.empty(),
          "several in the joined file, and they say something else");
  private static final Typed RAGGED =
      Typed.unreadable("a joined row with too many or too few cells");

  private final Join join;
  private final List<String> columns;
  private final long mostBytes;
  private final CellPages pages = new CellPages();
  private long[] slots = new long[FIRST_SLOTS];
  private int keys;

  /**
   * An empty table.
   *
   * @param columns the headers of the columns that are used, in the joined file's own words
   * @param mostBytes how much memory its texts may take
   */
  public JoinTable(Join join, List<String> columns, long mostBytes) {
    this.join = join;
    this.columns = List.copyOf(columns);
    this.mostBytes = mostBytes;
    Arrays.fill(slots, FREE);
  }

  /**
   * Takes all rows of a joined file. Rows without a key are passed over: nothing can refer to them.
   *
   * @return how many rows it has
   * @throws InputRefusedException when it lacks a column, or is too large
   */
  public long take(Rows rows) {
    Header header = rows.header();
    header.require(wanted());
    long count = 0;
    for (Optional<Row> row = rows.next(); row.isPresent(); row = rows.next()) {
      count++;
      take(header, row.get());
      requireBounds(header.file());
    }
    return count;
  }

  private void requireBounds(String file) {
    if (keys > MOST_ROWS) {
      throw new InputRefusedException(
          "Expected a joined file of at most %,d rows, but found more (%s): have the export written with all columns in one file. Nothing was changed."
              .formatted(MOST_ROWS, file));
    }
    if (pages.bytes() > mostBytes) {
      throw new InputRefusedException(
          "Expected joined rows of at most %,d MB, half of the memory that Java was given, but found more (%s): give it more with WITHERS_JAVA_OPTS=-Xmx.... Nothing was changed."
              .formatted(mostBytes >> 20, file));
    }
  }

  private void take(Header header, Row row) {
    int place = header.place(join.key());
    String key = place < row.size() ? row.cell(place) : "";
    if (key.isEmpty() || row.typed(place).isUnreadable()) {
      return;
    }
    List<JoinedCell> cells = new ArrayList<>(columns.size() + 1);
    cells.add(new JoinedCell(key, Typed.TEXT));
    for (String column : columns) {
      cells.add(row.size() == header.size() ? cell(row, header.place(column)) : ragged());
    }
    put(key, CellPages.encode(cells));
  }

  private static JoinedCell cell(Row row, int place) {
    return new JoinedCell(row.cell(place), row.typed(place));
  }

  private static JoinedCell ragged() {
    return JoinedCell.without(RAGGED);
  }

  private void put(String key, byte[] row) {
    int slot = slot(key);
    if (slots[slot] == FREE) {
      slots[slot] = pages.add(row);
      keys++;
      growIfFull();
    } else if (!pages.holds(slots[slot] & ~AMBIGUOUS, row)) {
      slots[slot] |= AMBIGUOUS;
    }
  }

  /** The slot of a key, or the free one where it belongs. */
  private int slot(String key) {
    byte[] text = key.getBytes(StandardCharsets.UTF_8);
    int slot = start(text);
    while (slots[slot] != FREE && !pages.startsWith(slots[slot] & ~AMBIGUOUS, text)) {
      slot = (slot + 1) & (slots.length - 1);
    }
    return slot;
  }

  /** Fowler, Noll and Vo's hash 1a of 64 bits; the high bits of its product are mixed best. */
  private int start(byte[] text) {
    long hash = 0xCBF29CE484222325L;
    for (byte b : text) {
      hash = (hash ^ (b & 0xFF)) * 0x100000001B3L;
    }
    hash *= 0x9E3779B97F4A7C15L;
    return (int) (hash >>> (Long.SIZE - Integer.numberOfTrailingZeros(slots.length)));
  }

  private void growIfFull() {
    if (keys * 2L < slots.length) {
      return;
    }
    long[] before = slots;
    slots = new long[before.length * 2];
    Arrays.fill(slots, FREE);
    for (long place : before) {
      if (place != FREE) {
        slots[slot(pages.read(place & ~AMBIGUOUS).get(0).text())] = place;
      }
    }
  }

  /** The columns' cells of the row that is referred to. */
  List<JoinedCell> find(String reference, Typed typed) {
    if (typed.isUnreadable()) {
      return all(JoinedCell.without(typed));
    }
    if (reference.isEmpty()) {
      return all(JoinedCell.EMPTY);
    }
    long place = slots[slot(reference)];
    if (place == FREE) {
      return all(
          join.missing() == Join.Missing.EMPTY ? JoinedCell.EMPTY : JoinedCell.without(UNKNOWN));
    }
    if ((place & AMBIGUOUS) != 0) {
      return all(JoinedCell.without(SEVERAL));
    }
    List<JoinedCell> row = pages.read(place);
    return row.subList(1, row.size());
  }

  private List<JoinedCell> all(JoinedCell cell) {
    return columns.stream().map(column -> cell).toList();
  }

  /** The headers that a joined file must have. */
  public List<String> wanted() {
    List<String> wanted = new ArrayList<>(columns);
    wanted.add(join.key());
    return wanted;
  }

  /** The header of the export's column that refers to its rows. */
  String on() {
    return join.on();
  }

  /** Its columns' headers as the export's. */
  List<String> headers() {
    return columns.stream().map(column -> join.name() + "." + column).toList();
  }
}
