package withers.ingest.sniff;

import java.util.List;

/**
 * A record of a sample. Its text form shows nothing that is in it.
 *
 * @param line the line on which it starts, from 1
 * @param lines how many lines it takes up, from 1
 * @param cells what stands in it, without quotes and as it is otherwise
 * @param flaw what is wrong with its quotes
 */
public record SampleRecord(long line, int lines, List<String> cells, Flaw flaw) {

  /** What can be wrong with a record's quotes. */
  public enum Flaw {
    NONE,
    /** Text follows a closing quote. */
    TEXT_AFTER_QUOTE,
    /** A quote is opened and not closed within the sample. */
    OPEN_QUOTE
  }

  public SampleRecord {
    cells = List.copyOf(cells);
  }

  public int width() {
    return cells.size();
  }

  public boolean isBlank() {
    return cells.stream().allMatch(String::isBlank);
  }

  /** Whether nothing stands in its cells from this place on, from 0. */
  public boolean isBlankFrom(int place) {
    return cells.stream().skip(place).allMatch(String::isBlank);
  }

  public boolean isSound() {
    return flaw == Flaw.NONE;
  }

  @Override
  public String toString() {
    return "SampleRecord[line %d, %d cells, %s]".formatted(line, cells.size(), flaw);
  }
}
