package withers.ingest.csv;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import withers.ingest.sniff.Delimiter;

/**
 * A CSV file as it may come in, made from a seed.
 *
 * @param columns names of its columns
 * @param lineEnd what ends its lines; empty when they end differently
 * @param lines the header's text, then that of each row, with what ends it and blank lines after it
 */
record SeededCsv(Delimiter delimiter, List<String> columns, String lineEnd, List<String> lines) {

  private static final List<String> WORDS =
      List.of(
          "",
          "",
          "Pip",
          "999010000000017",
          "2031-01-05",
          "Ada Example",
          "(212) 555-0100",
          "Łódź, north",
          "5;6",
          "a|b",
          "tab\tbed",
          "say \"woof\"",
          "\"Kelp\"",
          "'Tar'",
          "two\nlines",
          "return\r\nfeed",
          " spaced ",
          "O'Example",
          "犬",
          "🐕",
          "\"",
          ",",
          "4,5",
          "#1",
          "\\",
          "NULL");
  private static final List<String> ENDS = List.of("\n", "\r\n", "\r");

  static SeededCsv of(long seed) {
    Random random = new Random(seed);
    Delimiter delimiter = Delimiter.values()[random.nextInt(4)];
    String lineEnd = random.nextInt(3) == 0 ? "" : ENDS.get(random.nextInt(2));
    int width = 2 + random.nextInt(6);
    List<String> columns = IntStream.range(0, width).mapToObj(i -> "Column " + i).toList();
    List<String> lines = new ArrayList<>();
    String mark = random.nextInt(4) == 0 ? "\uFEFF" : "";
    boolean quoteAll = random.nextInt(4) == 0;
    lines.add(mark + line(columns, delimiter, quoteAll, lineEnd, random));
    int rows = 1 + random.nextInt(20);
    for (int i = 0; i < rows; i++) {
      List<String> cells = cells(width, lineEnd, random);
      String blank = random.nextInt(12) == 0 ? end(lineEnd, random) : "";
      lines.add(line(cells, delimiter, quoteAll, lineEnd, random) + blank);
    }
    return new SeededCsv(delimiter, columns, lineEnd, lines);
  }

  byte[] bytes() {
    return String.join("", lines).getBytes(StandardCharsets.UTF_8);
  }

  /** The header and one of the rows, from 1. */
  byte[] only(int row) {
    return (lines.get(0) + lines.get(row)).getBytes(StandardCharsets.UTF_8);
  }

  private static List<String> cells(int width, String lineEnd, Random random) {
    List<String> cells = new ArrayList<>();
    for (int i = 0; i < width; i++) {
      String word = WORDS.get(random.nextInt(WORDS.size()));
      cells.add(lineEnd.isEmpty() ? word : word.replaceAll("\\R", lineEnd));
    }
    return cells;
  }

  private static String line(
      List<String> cells, Delimiter delimiter, boolean quoteAll, String lineEnd, Random random) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < cells.size(); i++) {
      String cell = cells.get(i);
      boolean quoted =
          quoteAll || random.nextInt(8) == 0 || needsQuotes(cell, delimiter) || cells.size() == 1;
      text.append(i == 0 ? "" : String.valueOf(delimiter.sign()))
          .append(quoted ? '"' + cell.replace("\"", "\"\"") + '"' : cell);
    }
    return text.append(end(lineEnd, random)).toString();
  }

  private static boolean needsQuotes(String cell, Delimiter delimiter) {
    return cell.indexOf(delimiter.sign()) >= 0
        || cell.startsWith("\"")
        || cell.contains("\n")
        || cell.contains("\r");
  }

  private static String end(String lineEnd, Random random) {
    return lineEnd.isEmpty() ? ENDS.get(random.nextInt(ENDS.size())) : lineEnd;
  }
}
