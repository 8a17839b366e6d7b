package withers.ingest;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/**
 * Seeded exports of one source as text: mostly as the month before, and with everything in them
 * that makes it hard to say so: quotes, line ends of all kinds, blank lines, rows in another order,
 * twice, gone, back, changed, with the key of another, and such as can't be read.
 */
final class RandomFiles {

  /**
   * One export.
   *
   * @param texts of its files
   */
  record Export(LocalDate date, List<String> texts) {}

  private static final LocalDate START = LocalDate.of(2031, 1, 31);
  private static final String HEADER = "No,Chip,Animal,Seen,Client";
  private static final List<String> NUMBERS =
      List.of("999010000000017", "999010000000018", "999 010 000 000 025", "9.9901E+14", "1234");
  private static final List<String> ANIMALS =
      List.of("Pip", "\"Pip\"", "\"Pip, the second\"", "\"Pip\nof \"\"the\"\" pier\"", "P\"ip", "");
  private static final List<String> DAYS = List.of("2031-01-03", "2031-01-04", "", "yesterday");
  private static final List<String> CLIENTS = List.of("Ada", "Bela", "Ada ", "Zoë", "\"\r\nCleo\"");
  private static final List<String> LINE_ENDS = List.of("\n", "\r\n", "\r");

  private final Random random;
  private final int keys;

  RandomFiles(long seed) {
    this.random = new Random(seed);
    this.keys = random.nextInt(3) == 0 ? 40 : 1 + random.nextInt(6);
  }

  List<Export> exports() {
    List<Export> exports = new ArrayList<>();
    List<String> rows = new ArrayList<>();
    for (int k = 0; k < keys; k++) {
      rows.add(row(k));
    }
    List<String> gone = new ArrayList<>();
    int count = 3 + random.nextInt(5);
    for (int i = 0; i < count; i++) {
      exports.add(new Export(date(i), texts(rows)));
      change(rows, gone);
    }
    return exports;
  }

  /** Mostly the next month; now and then the same day again, or an earlier one. */
  private LocalDate date(int export) {
    return START.plusMonths(export - (random.nextInt(8) == 0 ? random.nextInt(3) : 0));
  }

  private void change(List<String> rows, List<String> gone) {
    int changes = random.nextInt(5);
    for (int i = 0; i < changes; i++) {
      change(rows, gone, random.nextInt(9));
    }
  }

  private void change(List<String> rows, List<String> gone, int kind) {
    int at = random.nextInt(rows.size() + 1);
    if (kind == 0 || rows.isEmpty() || at == rows.size()) {
      rows.add(at, gone.isEmpty() || random.nextBoolean() ? row(someKey()) : oneOf(gone));
    } else if (kind == 1) {
      gone.add(rows.remove(at));
    } else if (kind == 2) {
      Collections.swap(rows, at, random.nextInt(rows.size()));
    } else if (kind == 3) {
      rows.add(random.nextInt(rows.size()), rows.get(at));
    } else if (kind == 4 && random.nextInt(4) == 0) {
      Collections.shuffle(rows, random);
    } else if (kind == 5 && random.nextInt(4) == 0) {
      rows.subList(at / 2, at).clear();
    } else {
      rows.set(at, row(keyOf(rows.get(at))));
    }
  }

  private int someKey() {
    return random.nextInt(keys + 3);
  }

  private int keyOf(String row) {
    return Integer.parseInt(row.substring(1, row.indexOf(',')));
  }

  private String row(int key) {
    String row =
        String.join(
            ",",
            "K" + key,
            oneOf(NUMBERS),
            oneOf(ANIMALS),
            oneOf(DAYS.subList(0, random.nextInt(4) == 0 ? 4 : 3)),
            oneOf(CLIENTS));
    return random.nextInt(15) == 0 ? row + ",more" : row;
  }

  private List<String> texts(List<String> rows) {
    int cut = random.nextInt(4) == 0 ? random.nextInt(rows.size() + 1) : 0;
    String lineEnd = oneOf(LINE_ENDS);
    return cut == 0
        ? List.of(text(rows, lineEnd))
        : List.of(
            text(rows.subList(0, cut), lineEnd), text(rows.subList(cut, rows.size()), lineEnd));
  }

  private String text(List<String> rows, String lineEnd) {
    StringBuilder text = new StringBuilder(random.nextInt(30) == 0 ? "\uFEFF" : "");
    text.append(HEADER).append(lineEnd);
    for (String row : rows) {
      text.append(random.nextInt(20) == 0 ? "  " + lineEnd : "").append(row).append(lineEnd);
    }
    text.append(random.nextInt(10) == 0 ? lineEnd : "");
    boolean isCut = random.nextInt(6) == 0 && text.charAt(text.length() - 1) == '\n';
    return isCut ? text.substring(0, text.length() - 1) : text.toString();
  }

  private String oneOf(List<String> texts) {
    return texts.get(random.nextInt(texts.size()));
  }
}
