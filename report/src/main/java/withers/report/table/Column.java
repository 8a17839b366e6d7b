package withers.report.table;

import withers.report.text.Texts;
import withers.report.text.Words;

/** The columns of a list's table, in their order. */
public enum Column {
  REFERENCE(11),
  WHEN(13),
  MARK(10),
  ANIMAL(20),
  CHIPS(18),
  RECORD(13),
  TASK(26),
  WRONG(44),
  CALL(28),
  PHONE(20),
  EMAIL(26),
  ADDRESS(30),
  DO(60),
  EVIDENCE(60),
  CAUTIONS(44);

  private final int width;

  Column(int width) {
    this.width = width;
  }

  /** A sensible width, in characters. */
  public int width() {
    return width;
  }

  /** The heading that people read. */
  public String heading(Texts texts) {
    return texts.say("column." + Words.of(this));
  }
}
