package withers.ingest.answers;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import withers.answers.AnswerColumn;
import withers.answers.SheetWords;
import withers.ingest.rows.Row;
import withers.ingest.rows.Typed;
import withers.ingest.translate.Reject;
import withers.text.HarmlessText;

/** The cells of a row by their columns; what is not there is empty. */
record AnswerRow(AnswerHeader header, List<SheetWords> words, Row row) {

  /** Why a row can't be taken. */
  static final class RefusedException extends Exception {
    private static final long serialVersionUID = 1L;
    private final transient Reject reject;

    RefusedException(Reject reject) {
      super(reject.message());
      this.reject = reject;
    }

    Reject reject() {
      return reject;
    }
  }

  /** A cell's text, without the apostrophe that guards it. */
  String text(AnswerColumn column) {
    String text = place(column).map(row::cell).orElse("").strip();
    return text.startsWith(HarmlessText.GUARD) ? text.substring(1).strip() : text;
  }

  /** Whether somebody has filled anything in that is read. */
  boolean tellsAnything() {
    return Stream.of(AnswerColumn.values())
        .filter(column -> column.isTelling() && column != AnswerColumn.BY)
        .anyMatch(column -> !text(column).isEmpty() || typed(column).isUnreadable());
  }

  /** One of the words to choose from. */
  <T> Optional<T> word(AnswerColumn column, Function<SheetWords, Optional<T>> read)
      throws RefusedException {
    String text = text(column);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    Optional<T> found = words.stream().flatMap(one -> read.apply(one).stream()).findFirst();
    if (found.isEmpty()) {
      throw refused(
          Reject.Code.WORD_UNKNOWN,
          column,
          "Expected one of the words that the list's sheet offers, but found another: choose one, or leave the cell empty");
    }
    return found;
  }

  /** A day. */
  Optional<LocalDate> day(AnswerColumn column) throws RefusedException {
    String text = text(column);
    Optional<LocalDate> day = typed(column).day().or(() -> TypedDay.read(text));
    if (day.isEmpty() && (!text.isEmpty() || typed(column).isUnreadable())) {
      throw refused(
          Reject.Code.DAY_REFUSED,
          column,
          "Expected a day that can be only one, such as 2031-03-05, but found something else");
    }
    return day;
  }

  /** Why the row can't be taken, because of a column. */
  RefusedException refused(Reject.Code code, AnswerColumn column, String message) {
    return new RefusedException(new Reject(code, words.get(0).heading(column), message));
  }

  private Optional<Integer> place(AnswerColumn column) {
    return Optional.ofNullable(header.places().get(column)).filter(place -> place < row.size());
  }

  private Typed typed(AnswerColumn column) {
    return place(column).map(row::typed).orElse(Typed.TEXT);
  }
}
