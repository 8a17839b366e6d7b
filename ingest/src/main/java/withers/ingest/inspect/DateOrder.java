package withers.ingest.inspect;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * How a file writes days, and what tells it.
 *
 * @param form the commonest form
 * @param isPadded whether every day and month has two digits
 * @param dayFirst cells that only have a day in first place, such as 13/02
 * @param monthFirst cells that only have a day in second place, such as 02/13
 * @param cells how many cells of this form there are
 * @param others how many cells are days in another form
 */
record DateOrder(
    DayText.Form form, boolean isPadded, int dayFirst, int monthFirst, int cells, int others) {

  /** Whether the cells tell which is the day. */
  enum Verdict {
    /** The form tells, as years in front do. */
    BY_FORM,
    BY_EVIDENCE,
    /** No cell tells: all numbers are twelve or less. */
    OPEN,
    /** Cells contradict each other, or those that tell are strangely few. */
    CONTRADICTED
  }

  private static final DayText.Form ISO = new DayText.Form("yyyy-N-D");
  // More than half of all days are beyond the twelfth; far fewer need another explanation.
  private static final double FEWEST_TELLING = 0.2;
  private static final double MOST_CONTRADICTING = 0.01;

  static DateOrder of(List<Column> columns) {
    Map<DayText.Form, Integer> forms = new HashMap<>();
    List<Column> days = columns.stream().filter(Column::holdsDays).toList();
    days.forEach(column -> forEach(column, (text, n) -> forms.merge(text.form(), n, Integer::sum)));
    DayText.Form form =
        forms.entrySet().stream()
            .max(
                Map.Entry.<DayText.Form, Integer>comparingByValue()
                    .thenComparing(entry -> entry.getKey().pattern()))
            .map(Map.Entry::getKey)
            .orElse(ISO);
    int all = forms.values().stream().mapToInt(Integer::intValue).sum();
    return count(days, form, all);
  }

  @FunctionalInterface
  private interface Visitor {
    void see(DayText text, int times);
  }

  private static void forEach(Column column, Visitor visitor) {
    column.counts().forEach((cell, n) -> DayText.of(cell).ifPresent(text -> visitor.see(text, n)));
  }

  private static DateOrder count(List<Column> days, DayText.Form form, int all) {
    int[] counts = new int[4];
    for (Column column : days) {
      forEach(
          column,
          (text, n) -> {
            if (text.form().equals(form)) {
              counts[0] += n;
              counts[1] += text.first() > 12 ? n : 0;
              counts[2] += text.second() > 12 ? n : 0;
              counts[3] += text.isPadded() ? 0 : n;
            }
          });
    }
    return new DateOrder(form, counts[3] == 0, counts[1], counts[2], counts[0], all - counts[0]);
  }

  Verdict verdict() {
    if (!form.isOpen()) {
      return Verdict.BY_FORM;
    }
    int telling = dayFirst + monthFirst;
    if (telling == 0) {
      return Verdict.OPEN;
    }
    boolean contradicted = Math.min(dayFirst, monthFirst) > MOST_CONTRADICTING * telling;
    boolean few = telling < FEWEST_TELLING * cells && cells >= 10;
    return contradicted || few || form.hasShortYear() ? Verdict.CONTRADICTED : Verdict.BY_EVIDENCE;
  }

  /** The order that the cells tell; where they don't, day first is tried first. */
  DayText.Order order() {
    return monthFirst > dayFirst ? DayText.Order.MONTH_FIRST : DayText.Order.DAY_FIRST;
  }

  /** The pattern in the letters that profiles use. */
  String pattern() {
    return pattern(order());
  }

  String pattern(DayText.Order order) {
    return form.letters(order, isPadded);
  }

  boolean isSure() {
    Verdict verdict = verdict();
    return (verdict == Verdict.BY_FORM || verdict == Verdict.BY_EVIDENCE) && !form.hasShortYear();
  }

  /** Why, in words. */
  String reason() {
    return switch (verdict()) {
      case BY_FORM ->
          say("%,d cells are written so, and so written they can be read in one way only", cells);
      case BY_EVIDENCE ->
          say(
              "of %,d cells %,d have a number above 12 in the day's place and %,d in the month's",
              cells, Math.max(dayFirst, monthFirst), Math.min(dayFirst, monthFirst));
      case OPEN -> say("none of %,d cells has a number above 12, so nothing tells", cells);
      case CONTRADICTED ->
          say(
              "of %,d cells %,d have a number above 12 in first place and %,d in second",
              cells, dayFirst, monthFirst);
    };
  }

  private static String say(String text, Object... numbers) {
    return String.format(Locale.ROOT, text, numbers);
  }
}
