package withers.ingest.join;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import withers.ingest.rows.Typed;

/**
 * Rows in large arrays: millions of them, a few bytes each beside their text. A place is a page and
 * an offset in it.
 */
final class CellPages {

  private static final int PAGE = 1 << 20;
  private static final byte[] NONE = new byte[0];

  private final List<byte[]> pages = new ArrayList<>();
  private int used = PAGE;
  private long bytes;

  /** A row as bytes, with its length. */
  static byte[] encode(List<JoinedCell> cells) {
    List<byte[]> parts = new ArrayList<>(2 * cells.size());
    int length = Integer.BYTES;
    for (JoinedCell cell : cells) {
      byte[] text = cell.text().getBytes(StandardCharsets.UTF_8);
      byte[] found = found(cell.typed()).getBytes(StandardCharsets.UTF_8);
      parts.add(text);
      parts.add(found);
      length += 1 + 2 * Integer.BYTES + text.length + found.length;
    }
    ByteBuffer row = ByteBuffer.allocate(length).putInt(length);
    for (int i = 0; i < cells.size(); i++) {
      row.put((byte) cells.get(i).typed().kind().ordinal());
      put(row, parts.get(2 * i));
      put(row, parts.get(2 * i + 1));
    }
    return row.array();
  }

  private static void put(ByteBuffer row, byte[] part) {
    row.putInt(part.length).put(part);
  }

  private static String found(Typed typed) {
    return typed.day().map(LocalDate::toString).orElse(typed.isUnreadable() ? typed.found() : "");
  }

  /** Adds a row, and returns its place. */
  long add(byte[] row) {
    if (used + row.length > PAGE) {
      pages.add(row.length > PAGE ? NONE : new byte[PAGE]);
      used = 0;
    }
    int page = pages.size() - 1;
    bytes += row.length;
    if (row.length > PAGE) {
      pages.set(page, row);
      used = PAGE;
      return place(page, 0);
    }
    System.arraycopy(row, 0, pages.get(page), used, row.length);
    used += row.length;
    return place(page, used - row.length);
  }

  private static long place(int page, int offset) {
    return ((long) page << Integer.SIZE) | offset;
  }

  /** How many bytes all rows have. */
  long bytes() {
    return bytes;
  }

  private ByteBuffer at(long place) {
    byte[] page = pages.get((int) (place >> Integer.SIZE));
    int offset = (int) place;
    int length = ByteBuffer.wrap(page).getInt(offset);
    return ByteBuffer.wrap(page, offset + Integer.BYTES, length - Integer.BYTES);
  }

  /** Whether the row at a place is this one. */
  boolean holds(long place, byte[] row) {
    ByteBuffer other = ByteBuffer.wrap(row, Integer.BYTES, row.length - Integer.BYTES);
    return at(place).equals(other);
  }

  /** Whether the first cell of the row at a place has this text. */
  boolean startsWith(long place, byte[] text) {
    ByteBuffer row = at(place);
    row.get();
    byte[] first = new byte[row.getInt()];
    row.get(first);
    return Arrays.equals(first, text);
  }

  /** The row at a place. */
  List<JoinedCell> read(long place) {
    List<JoinedCell> cells = new ArrayList<>();
    for (ByteBuffer row = at(place); row.hasRemaining(); ) {
      Typed.Kind kind = Typed.Kind.values()[row.get()];
      String text = text(row);
      cells.add(new JoinedCell(text, typed(kind, text(row))));
    }
    return cells;
  }

  private static String text(ByteBuffer row) {
    byte[] text = new byte[row.getInt()];
    row.get(text);
    return new String(text, StandardCharsets.UTF_8);
  }

  private static Typed typed(Typed.Kind kind, String found) {
    return switch (kind) {
      case TEXT -> Typed.TEXT;
      case FRACTION -> Typed.FRACTION;
      case DAY -> Typed.day(LocalDate.parse(found));
      case UNREADABLE, REFERENCE_UNKNOWN, REFERENCE_AMBIGUOUS -> Typed.unreadable(found);
    };
  }
}
