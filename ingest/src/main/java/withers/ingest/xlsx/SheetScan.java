package withers.ingest.xlsx;

import java.io.IOException;
import java.io.InputStream;
import java.util.Set;
import javax.xml.stream.XMLStreamException;

/**
 * Goes through a sheet before it is read, and makes sure that reading it needs no more memory and
 * time than its rows are worth.
 */
final class SheetScan {

  private static final Set<String> TYPES = Set.of("b", "e", "n", "s", "str", "inlineStr");

  private final int sharedTexts;
  private final MergedCells merged = new MergedCells();
  private int lastRow;
  private int cells;
  private int formulaRanges;
  private String type = "n";
  private boolean hasRows;

  private SheetScan(int sharedTexts) {
    this.sharedTexts = sharedTexts;
  }

  /** Whether a sheet has any cell that says something. */
  static boolean hasRows(InputStream sheet) throws IOException, XMLStreamException {
    SheetScan scan = new SheetScan(Integer.MAX_VALUE);
    try (PartReader part = new PartReader(sheet, Bounds.SHEET)) {
      while (!scan.hasRows && part.next()) {
        scan.take(part);
      }
    }
    return scan.hasRows;
  }

  /**
   * Goes through a sheet to its end.
   *
   * @param sharedTexts how many texts the workbook's cells share
   * @return the merged cells
   * @throws IllegalArgumentException when something is out of bounds
   */
  static MergedCells check(InputStream sheet, int sharedTexts)
      throws IOException, XMLStreamException {
    SheetScan scan = new SheetScan(sharedTexts);
    try (PartReader part = new PartReader(sheet, Bounds.SHEET)) {
      while (part.next()) {
        scan.take(part);
      }
    }
    return scan.merged;
  }

  /** How many texts a workbook's cells share. */
  static int countTexts(InputStream texts) throws IOException, XMLStreamException {
    int count = 0;
    int length = 0;
    try (PartReader part = new PartReader(texts, Bounds.SHARED_TEXTS)) {
      while (part.next()) {
        length = part.starts("si") ? 0 : length + part.text().length();
        require(length <= 2 * Bounds.TEXT, "characters of a text");
        count += part.starts("si") ? 1 : 0;
      }
    }
    return count;
  }

  private void take(PartReader part) {
    if (part.starts("row")) {
      row(part);
    } else if (part.starts("c")) {
      cell(part);
    } else if (part.ends("v")) {
      value(part.text());
    } else if (part.ends("t")) {
      require(part.text().length() <= Bounds.TEXT, "characters of a text");
      hasRows |= part.text().length() > 0;
    } else if (part.starts("f")) {
      formulaRanges += part.attribute("t").filter("array"::equals).isPresent() ? 1 : 0;
      require(formulaRanges <= Bounds.FORMULA_RANGES, "formulas for several cells");
    } else if (part.ends("f")) {
      require(part.text().length() <= Bounds.TEXT, "characters of a formula");
    } else if (part.starts("mergeCell")) {
      part.attribute("ref").ifPresent(merged::add);
    }
  }

  private void row(PartReader part) {
    int row = part.attribute("r").map(CellPlace::row).orElse(lastRow + 1);
    require(row > lastRow && row <= Bounds.ROWS, "rows, in their order");
    lastRow = row;
    cells = 0;
  }

  private void cell(PartReader part) {
    cells++;
    require(cells <= Bounds.COLUMNS, "cells in a row");
    part.attribute("r").ifPresent(CellPlace::read);
    type = part.attribute("t").orElse("n");
    require(TYPES.contains(type), "known types of cells");
  }

  private void value(CharSequence text) {
    hasRows |= text.length() > 0;
    require(text.length() <= (type.equals("str") ? Bounds.TEXT : Bounds.NUMBER), "digits");
    if (type.equals("s") && text.length() > 0) {
      int index = Integer.parseInt(text.toString());
      require(index >= 0 && index < sharedTexts, "texts that cells share");
    }
  }

  private static void require(boolean holds, String what) {
    if (!holds) {
      throw new IllegalArgumentException("Out of bounds: " + what);
    }
  }
}
