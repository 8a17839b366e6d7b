package withers.corpus;

import java.util.List;

/**
 * What two people have to do with each other, with percent in the three corpora; the table of
 * docs/matching.md.
 */
public enum Kind {
  SAME_PERSON(Truth.SAME_PERSON, 47, 45, 78),
  ONLY_GIVEN_NAME_LEFT(Truth.SAME_PERSON, 1, 1, 0.5),
  PARTNER(Truth.SAME_HOUSEHOLD, 9, 8, 6.8),
  RELATIVE(Truth.SAME_HOUSEHOLD, 5, 6, 3),
  CHILD_OF_THE_SAME_NAME(Truth.SAME_HOUSEHOLD, 1.5, 2, 0.2),
  TWIN(Truth.SAME_HOUSEHOLD, 1, 1, 0.2),
  HOUSEMATE(Truth.SAME_HOUSEHOLD, 2.5, 3, 1),
  STRANGER(Truth.DIFFERENT, 10, 9, 7),
  SAME_FAMILY_NAME(Truth.DIFFERENT, 7, 7, 1.2),
  NAMESAKE(Truth.DIFFERENT, 4, 5, 0.3),
  SAME_ADDRESS(Truth.DIFFERENT, 3, 3, 0.6),
  NEIGHBOUR(Truth.DIFFERENT, 3, 3, 0.4),
  SAME_LANDLINE(Truth.DIFFERENT, 1.5, 2, 0.3),
  NEARLY_NAMED(Truth.DIFFERENT, 2, 2, 0.2),
  SAME_GIVEN_NAME_AND_STREET(Truth.DIFFERENT, 1.5, 1, 0.1),
  VILLAGER(Truth.DIFFERENT, 1, 2, 0.2);

  static final List<Kind> ALL = List.of(values());

  private final Truth truth;
  private final double tuning;
  private final double heldOut;
  private final double everyday;

  Kind(Truth truth, double tuning, double heldOut, double everyday) {
    this.truth = truth;
    this.tuning = tuning;
    this.heldOut = heldOut;
    this.everyday = everyday;
  }

  public Truth truth() {
    return truth;
  }

  double weight(Mix mix) {
    return switch (mix) {
      case TUNING -> tuning;
      case HELD_OUT -> heldOut;
      case EVERYDAY -> everyday;
    };
  }
}
