package withers.corpus;

import java.util.List;

/**
 * What two people have to do with each other, with percent in the two corpora; the table of
 * docs/matching.md.
 */
public enum Kind {
  SAME_PERSON(Truth.SAME_PERSON, 47, 45),
  ONLY_GIVEN_NAME_LEFT(Truth.SAME_PERSON, 1, 1),
  PARTNER(Truth.SAME_HOUSEHOLD, 9, 8),
  RELATIVE(Truth.SAME_HOUSEHOLD, 5, 6),
  CHILD_OF_THE_SAME_NAME(Truth.SAME_HOUSEHOLD, 1.5, 2),
  TWIN(Truth.SAME_HOUSEHOLD, 1, 1),
  HOUSEMATE(Truth.SAME_HOUSEHOLD, 2.5, 3),
  STRANGER(Truth.DIFFERENT, 10, 9),
  SAME_FAMILY_NAME(Truth.DIFFERENT, 7, 7),
  NAMESAKE(Truth.DIFFERENT, 4, 5),
  SAME_ADDRESS(Truth.DIFFERENT, 3, 3),
  NEIGHBOUR(Truth.DIFFERENT, 3, 3),
  SAME_LANDLINE(Truth.DIFFERENT, 1.5, 2),
  NEARLY_NAMED(Truth.DIFFERENT, 2, 2),
  SAME_GIVEN_NAME_AND_STREET(Truth.DIFFERENT, 1.5, 1),
  VILLAGER(Truth.DIFFERENT, 1, 2);

  static final List<Kind> ALL = List.of(values());

  private final Truth truth;
  private final double tuning;
  private final double heldOut;

  Kind(Truth truth, double tuning, double heldOut) {
    this.truth = truth;
    this.tuning = tuning;
    this.heldOut = heldOut;
  }

  public Truth truth() {
    return truth;
  }

  double weight(Mix mix) {
    return mix == Mix.TUNING ? tuning : heldOut;
  }
}
