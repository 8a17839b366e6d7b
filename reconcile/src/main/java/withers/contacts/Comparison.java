package withers.contacts;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

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

  public Comparison {
    disagreeing = List.copyOf(disagreeing);
  }

  static Comparison of(ComparableContact one, ComparableContact other) {
    Map<Field, Agreement> fields = new EnumMap<>(Field.class);
    Stream.of(Field.values()).forEach(field -> fields.put(field, one.agreement(field, other)));
    boolean reachable = agrees(fields, Field.PHONE) || agrees(fields, Field.EMAIL);
    return new Comparison(verdict(fields, reachable, one, other), disagreeing(fields), reachable);
  }

  /** The table of verdicts in docs/findings.md, line by line. */
  private static Verdict verdict(
      Map<Field, Agreement> fields,
      boolean reachable,
      ComparableContact one,
      ComparableContact other) {
    if (agrees(fields, Field.NAME)) {
      return disagreeing(fields).isEmpty() ? Verdict.SAME : Verdict.DETAILS_DIFFER;
    }
    if (fields.get(Field.NAME) == Agreement.MISSING) {
      return reachable ? Verdict.SAME : Verdict.CANNOT_TELL;
    }
    boolean household = reachable || one.sharesWord(other) && agrees(fields, Field.ADDRESS);
    return household ? Verdict.SAME_HOUSEHOLD : Verdict.DIFFERENT;
  }

  private static boolean agrees(Map<Field, Agreement> fields, Field field) {
    return fields.get(field) == Agreement.AGREES;
  }

  private static List<Field> disagreeing(Map<Field, Agreement> fields) {
    return fields.entrySet().stream()
        .filter(entry -> entry.getValue() == Agreement.DISAGREES)
        .map(Map.Entry::getKey)
        .toList();
  }
}
