package withers.ingest.join;

import withers.ingest.rows.Typed;

/** A cell of a joined row. The text form never shows what is in it. */
record JoinedCell(String text, Typed typed) {

  static final JoinedCell EMPTY = new JoinedCell("", Typed.TEXT);

  static JoinedCell without(Typed typed) {
    return new JoinedCell("", typed);
  }

  @Override
  public String toString() {
    return "JoinedCell[" + typed.kind() + "]";
  }
}
