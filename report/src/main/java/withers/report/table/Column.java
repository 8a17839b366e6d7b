package withers.report.table;

import java.util.Optional;
import java.util.stream.Stream;
import withers.answers.AnswerColumn;
import withers.report.text.Texts;
import withers.report.text.Words;

/** The columns of a list's table, in their order. */
public enum Column {
  REFERENCE(11, AnswerColumn.REFERENCE),
  WHEN(13),
  MARK(10),
  ANIMAL(20),
  CHIPS(18),
  RECORD(13),
  TASK(26),
  WRONG(44),
  SO_FAR(40),
  CALL(28),
  PHONE(20),
  EMAIL(26),
  ADDRESS(30),
  DO(60),
  OUTCOME(34, AnswerColumn.OUTCOME),
  ON(13, AnswerColumn.ON),
  BY(18, AnswerColumn.BY),
  AGAIN(13, AnswerColumn.AGAIN),
  CHANNEL(16, AnswerColumn.CHANNEL),
  NOTE(30, AnswerColumn.NOTE),
  EVIDENCE(60),
  CAUTIONS(44),
  LIST(22, AnswerColumn.LIST);

  private final int width;
  private final Optional<AnswerColumn> read;

  Column(int width) {
    this.width = width;
    this.read = Optional.empty();
  }

  Column(int width, AnswerColumn read) {
    this.width = width;
    this.read = Optional.of(read);
  }

  /** The columns that the reader of a list fills in, in their order. */
  public static Stream<Column> written() {
    return Stream.of(values()).filter(Column::isWritten);
  }

  /** A sensible width, in characters. */
  public int width() {
    return width;
  }

  /** Which column it is when the sheet comes back; empty when it is not read then. */
  public Optional<AnswerColumn> read() {
    return read;
  }

  /** Whether the reader of the list fills it in. */
  public boolean isWritten() {
    return read.filter(AnswerColumn::isWritten).isPresent();
  }

  /** The heading that people read. */
  public String heading(Texts texts) {
    return read.map(texts.sheet()::heading).orElseGet(() -> texts.say("column." + Words.of(this)));
  }
}
