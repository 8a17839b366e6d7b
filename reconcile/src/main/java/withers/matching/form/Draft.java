package withers.matching.form;

import java.util.List;

/** A person's name on its way from tokens to words. */
record Draft(
    Parts straight,
    Parts swapped,
    PersonName.Order order,
    PersonName.Generation generation,
    PersonName.Sex sex,
    boolean wholeFamily) {

  static Draft of(Parts straight, Parts swapped, PersonName.Order order) {
    return new Draft(
        straight,
        swapped,
        order,
        PersonName.Generation.NOT_STATED,
        PersonName.Sex.NOT_STATED,
        false);
  }

  static Draft stated(Parts straight) {
    return of(straight, straight.swapped(), PersonName.Order.STATED);
  }

  static Draft usual(Parts straight) {
    return of(straight, straight.swapped(), PersonName.Order.USUAL);
  }

  Draft with(PersonName.Generation generation, PersonName.Sex sex) {
    return new Draft(straight, swapped, order, generation, sex, wholeFamily);
  }

  /** With what is said beside the name, where the name itself says nothing. */
  Draft and(PersonName.Generation beside, PersonName.Sex title) {
    return with(
        generation == PersonName.Generation.NOT_STATED ? beside : generation,
        sex == PersonName.Sex.NOT_STATED ? title : sex);
  }

  Draft ofWholeFamily() {
    return new Draft(straight, swapped, order, generation, sex, true);
  }

  /** The same person's given names with somebody else's family name. */
  Draft asGivenWithFamilyOf(Draft other) {
    Parts shared = straight.asGiven().withFamily(other.straight);
    return new Draft(shared, shared.swapped(), other.order, generation, sex, false);
  }

  /** With family names added, such as one by birth. */
  Draft withFamilyNames(List<Token> more) {
    Parts wider =
        new Parts(
            straight.given(),
            straight.either(),
            Lists.joined(straight.family(), more),
            straight.particles());
    return new Draft(wider, wider.swapped(), order, generation, sex, wholeFamily);
  }

  /** With further given names, such as what somebody is called. */
  Draft withGivenNames(List<Token> more) {
    Parts wider =
        new Parts(
            Lists.joined(straight.given(), more),
            straight.either(),
            straight.family(),
            straight.particles());
    return new Draft(wider, wider.swapped(), order, generation, sex, wholeFamily);
  }

  boolean isOnlyGiven() {
    return straight.family().isEmpty() && !wholeFamily;
  }
}
