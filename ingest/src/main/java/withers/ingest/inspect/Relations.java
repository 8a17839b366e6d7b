package withers.ingest.inspect;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiPredicate;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;

/** How columns agree with each other, row by row; each answer is worked out once. */
final class Relations {

  /** From this share on a column counts as always filled, 0 to 1. */
  static final double ALWAYS = 0.985;

  private static final int MOST_ROWS = 5_000;
  private static final int YOUNG_DAYS = 300;

  /**
   * How the days of one column lie to those of another.
   *
   * @param rows how many rows have both
   * @param inOrder share of them in which the first is not after the second
   * @param apart share of them in which the two are different
   * @param young share of them in which the second follows within months, as a sale follows a birth
   */
  record Order(int rows, double inOrder, double apart, double young) {}

  private record Question(String kind, int one, int two) {}

  private final DayScore days;
  private final Map<Question, Object> answers = new HashMap<>();

  Relations(DayScore days) {
    this.days = days;
  }

  @SuppressWarnings("unchecked") // each kind of question has one type of answer
  private <T> T once(String kind, Column one, Column two, Supplier<T> work) {
    Question question = new Question(kind, one.place(), two.place());
    Object known = answers.get(question);
    if (known == null) {
      known = work.get();
      answers.put(question, known);
    }
    return (T) known;
  }

  Order order(Column one, Column two) {
    return once("order", one, two, () -> order(days.pairs(one, two)));
  }

  private static Order order(List<Map.Entry<LocalDate, LocalDate>> pairs) {
    int inOrder = 0;
    int apart = 0;
    int young = 0;
    for (Map.Entry<LocalDate, LocalDate> pair : pairs) {
      long between = ChronoUnit.DAYS.between(pair.getKey(), pair.getValue());
      inOrder += between >= 0 ? 1 : 0;
      apart += between != 0 ? 1 : 0;
      young += between > 20 && between < YOUNG_DAYS ? 1 : 0;
    }
    double all = Math.max(1, pairs.size());
    return new Order(pairs.size(), inOrder / all, apart / all, young / all);
  }

  /** Rows in which both say something, among those in which either does; 1 when both always do. */
  double filledTogether(Column one, Column two) {
    return once("together", one, two, () -> together(one, two));
  }

  private static double together(Column one, Column two) {
    BitSet both = (BitSet) one.filledRows().clone();
    both.and(two.filledRows());
    BitSet either = (BitSet) one.filledRows().clone();
    either.or(two.filledRows());
    return either.isEmpty() ? 1 : (double) both.cardinality() / either.cardinality();
  }

  /** Share of the rows in which the first says something that the second does too. */
  double within(Column one, Column two) {
    return once(
        "within",
        one,
        two,
        () -> {
          BitSet both = (BitSet) one.filledRows().clone();
          both.and(two.filledRows());
          return one.isEmpty() ? 1 : (double) both.cardinality() / one.filled();
        });
  }

  /** Share of rows in which the e-mail's part before the at sign starts with the name. */
  double mailStartsWith(Column mail, Column name) {
    return once(
        "starts", mail, name, () -> share(mail, name, (m, n) -> local(m).startsWith(letters(n))));
  }

  /** Share of rows in which the e-mail's part before the at sign holds the name, but not first. */
  double mailGoesOnWith(Column mail, Column name) {
    return once(
        "goes on", mail, name, () -> share(mail, name, (m, n) -> local(m).indexOf(letters(n)) > 0));
  }

  /** Share of rows in which a word of the name is in the e-mail. */
  double mailShares(Column mail, Column name) {
    return once("shares", mail, name, () -> share(mail, name, Relations::shareAWord));
  }

  private static boolean shareAWord(String mail, String name) {
    String local = local(mail);
    for (String word : Folding.words(name).split(" ")) {
      if (word.length() > 2 && local.contains(word)) {
        return true;
      }
    }
    return false;
  }

  private static String local(String mail) {
    int at = mail.indexOf('@');
    return letters(at < 0 ? mail : mail.substring(0, at));
  }

  /** Letters only; one that was lost in an export can't spoil a comparison's start. */
  private static String letters(String text) {
    String letters = Folding.words(text).replaceAll("[^\\p{L}]", "");
    return letters.isEmpty() ? "\u0000" : letters;
  }

  /** Share of rows in which both say the same. */
  double same(Column one, Column two) {
    return once("same", one, two, () -> share(one, two, String::equals));
  }

  private static double share(Column one, Column two, BiPredicate<String, String> test) {
    int seen = 0;
    int fit = 0;
    for (int row = 0; row < one.rows() && seen < MOST_ROWS; row++) {
      if (one.isFilled(row) && two.isFilled(row)) {
        seen++;
        fit += test.test(one.cell(row), two.cell(row)) ? 1 : 0;
      }
    }
    return seen == 0 ? 0 : (double) fit / seen;
  }

  /**
   * How well the first column tells the second.
   *
   * @param repeats rows whose cell in the first column stood there before
   * @param kept share of those in which the second column's cell is the one met first
   */
  record Dependence(int repeats, double kept) {}

  Dependence dependence(Column one, Column two) {
    return once("depends", one, two, () -> dependence(one, two, text -> text));
  }

  /** The same for the letters, or else the first two digits, with which a postcode starts. */
  Dependence areaDependence(Column postcode, Column town) {
    return once("area", postcode, town, () -> dependence(postcode, town, Relations::area));
  }

  private static String area(String postcode) {
    String letters = postcode.replaceAll("[^\\p{L}].*", "");
    return letters.isEmpty() ? postcode.substring(0, Math.min(2, postcode.length())) : letters;
  }

  private static Dependence dependence(Column one, Column two, UnaryOperator<String> part) {
    Map<String, String> first = new HashMap<>();
    int repeats = 0;
    int kept = 0;
    for (int row = 0; row < one.rows(); row++) {
      if (one.isFilled(row) && two.isFilled(row)) {
        String met = first.putIfAbsent(part.apply(one.cell(row)), two.cell(row));
        repeats += met == null ? 0 : 1;
        kept += two.cell(row).equals(met) ? 1 : 0;
      }
    }
    return new Dependence(repeats, repeats == 0 ? 0 : (double) kept / repeats);
  }
}
