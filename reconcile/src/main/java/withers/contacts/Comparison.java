package withers.contacts;

import java.util.List;
import java.util.stream.Stream;
import withers.matching.Verdict;

/**
 * The verdict on two contacts, and how it came about.
 *
 * @param disagreeing the fields that both state and that disagree, in their natural order
 * @param reachable whether a phone or e-mail agrees
 */
public record Comparison(Verdict verdict, List<Field> disagreeing, boolean reachable) {

  static final Comparison SAME = new Comparison(Verdict.SAME, List.of(), true);
  static final Comparison DIFFERENT = new Comparison(Verdict.DIFFERENT, List.of(), false);
  static final Comparison CANNOT_TELL = new Comparison(Verdict.CANNOT_TELL, List.of(), false);

  private static final List<Field> FIELDS = List.of(Field.values());

  public Comparison {
    disagreeing = List.copyOf(disagreeing);
  }

  static Comparison of(ComparableContact one, ComparableContact other) {
    List<Field> agreeing = those(Agreement.AGREES, one, other).toList();
    List<Field> disagreeing = those(Agreement.DISAGREES, one, other).toList();
    boolean reachable = agreeing.contains(Field.PHONE) || agreeing.contains(Field.EMAIL);
    boolean near = reachable || agreeing.contains(Field.ADDRESS) && one.sharesWord(other);
    return new Comparison(verdict(agreeing, disagreeing, reachable, near), disagreeing, reachable);
  }

  /** The table of verdicts in docs/findings.md, line by line. */
  private static Verdict verdict(
      List<Field> agreeing, List<Field> disagreeing, boolean reachable, boolean near) {
    if (agreeing.contains(Field.NAME)) {
      return disagreeing.isEmpty() ? Verdict.SAME : Verdict.DETAILS_DIFFER;
    }
    if (disagreeing.contains(Field.NAME)) {
      return near ? Verdict.SAME_HOUSEHOLD : Verdict.DIFFERENT;
    }
    return reachable ? Verdict.SAME : Verdict.CANNOT_TELL;
  }

  private static Stream<Field> those(
      Agreement how, ComparableContact one, ComparableContact other) {
    return FIELDS.stream().filter(field -> one.agreement(field, other) == how);
  }
}
