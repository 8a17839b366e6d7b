package withers.ingest.xlsx;

import java.io.IOException;
import java.io.InputStream;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import javax.xml.stream.XMLStreamException;

/**
 * The left end of the first row of a sheet that has anything in it, read without the rest of the
 * sheet.
 */
final class FirstRow {

  private final int width;
  private final Map<Integer, String> texts = new HashMap<>();
  private final Map<Integer, Integer> shared = new HashMap<>();
  private int column;
  private String type = "n";

  private FirstRow(int width) {
    this.width = width;
  }

  /**
   * Reads a sheet as far as its first row goes.
   *
   * @param width how many cells from the left are wanted
   */
  static FirstRow read(InputStream sheet, int width) throws IOException, XMLStreamException {
    FirstRow row = new FirstRow(width);
    try (PartReader part = new PartReader(sheet, Bounds.SHEET)) {
      while (part.next() && !row.isWhole(part)) {
        row.take(part);
      }
    }
    return row;
  }

  private boolean isWhole(PartReader part) {
    return part.ends("row") && !(texts.isEmpty() && shared.isEmpty());
  }

  private void take(PartReader part) {
    if (part.starts("row")) {
      column = -1;
    } else if (part.starts("c")) {
      column = part.attribute("r").map(CellPlace::read).map(CellPlace::column).orElse(column + 1);
      type = part.attribute("t").orElse("n");
    } else if (part.ends("v") || part.ends("t")) {
      value(part.text().toString());
    }
  }

  private void value(String text) {
    if (column < width && type.equals("s")) {
      shared.put(column, Integer.valueOf(text));
    } else if (column < width) {
      texts.merge(column, text, String::concat);
    }
  }

  /** Which of the texts that the workbook's cells share it holds. */
  Collection<Integer> shared() {
    return shared.values();
  }

  /**
   * Its cells, blanks around them left out; empty ones are empty.
   *
   * @param sharedTexts those that it holds
   */
  List<String> cells(Map<Integer, String> sharedTexts) {
    return IntStream.range(0, width)
        .mapToObj(
            at ->
                shared.containsKey(at)
                    ? sharedTexts.getOrDefault(shared.get(at), "")
                    : texts.getOrDefault(at, ""))
        .map(String::strip)
        .toList();
  }
}
