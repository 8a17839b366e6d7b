package withers.demo;

/** Tells which kind of life each animal has. */
final class Lives {

  private Lives() {}

  /**
   * The records of one animal.
   *
   * @param persons how many people live on the coast
   */
  static Ledger of(long seed, int number, int persons) {
    return told(new Life(seed, number, persons));
  }

  /** The same for one with which something is wrong, as far as the kind of its life lets it. */
  static Ledger troubled(long seed, int number, int persons) {
    return told(new Life(seed, number, persons, Trouble::some));
  }

  private static Ledger told(Life life) {
    int kind = life.dice.below(100);
    if (kind < 36) {
      new ClinicLife(life).live();
    } else if (kind < 71) {
      new ShelterLife(life).live();
    } else if (kind < 91) {
      new SellerLife(life).live();
    } else {
      RareLives.live(life);
    }
    return life.ledger;
  }
}
